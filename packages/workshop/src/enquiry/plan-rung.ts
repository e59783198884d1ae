import { randomUUID } from 'node:crypto';
import type { Combination } from '@pullbook/core/combination';
import { OPEN_AUDIENCE } from '@pullbook/core/pull';
import type { Enquiry, Rung } from '@pullbook/core/reach';
import { accepted, type Remark, type Result, remark } from '@pullbook/core/remark';
import type { Trial } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import { refuse } from '../refuse.ts';
import { settingsOf } from '../settings.ts';
import { trialPulls } from '../start-trial.ts';
import { workedPlan } from '../worked-plan.ts';
import { spaced } from './asked-words.ts';
import { combinationOfRung } from './combination-of-rung.ts';
import { foretoldByRung } from './foretold-by-rung.ts';
import { gainByRung } from './gain-by-rung.ts';
import { enquiryOf } from './kept-enquiry.ts';
import { rungNamed, shortChanges } from './rung-names.ts';

/** What a rung became. */
export interface PlannedRung {
  enquiryId: string;
  rungId: string;
  /** `wasThere`: the book had that hardware already, not pulled yet. */
  combination: { id: string; name: string; wasThere: boolean };
  trial: { id: string; question: string };
  /** Pulls that the trial is planned to have, in their order, by key; empty: no plan fits. */
  pulls: string[];
  predictions: number;
}

/**
 * Makes a rung of an answer a trial, in one step: the combination with its changes, the trial against the one it was asked of with
 * the pulls to make, and what the rung foretells, kept before the pull. Hardware that the book has and that was not pulled yet is taken
 * as it is. Refused where the rung became a trial already, or was pulled.
 */
export async function planRung(
  book: Book,
  enquiryNamed: string,
  rungGiven: string,
  { question = '', now = new Date() }: { question?: string | undefined; now?: Date | undefined } = {},
): Promise<Result<PlannedRung>> {
  const found = await enquiryOf(book, enquiryNamed);
  if (!found.ok) return found;
  const { enquiry, remarks: noLonger, sources, stamp } = found.value;
  const named = rungNamed(enquiry.answer.answer.rungs, rungGiven);
  if (!named.ok) return named;
  const { rung } = named.value;
  const before = enquiry.became.find(({ rungId }) => rungId === rung.id);
  if (before !== undefined) {
    const name = sources.find(({ id }) => id === before.trialId)?.name ?? before.trialId;
    return refuse(
      'planned-already',
      `This rung became the trial "${name}" on ${before.at.slice(0, 10)}. Open that, or undo it first (History, or "pullbook undo").`,
    );
  }
  const base = await book.combination(enquiry.combinationId);
  if (base === null) throw new Error(`the combination of enquiry ${enquiry.id} is not there`);
  const ofRung = await combinationOfRung(book, base, rung, now);
  if (!ofRung.ok) return ofRung;
  const { combination, wasThere } = ofRung.value;
  const trial = await trialOfRung(book, { enquiry, rung, base, combination }, question, now);
  if (!trial.ok) return trial;
  const at = now.toISOString();
  const predictions = foretoldByRung(enquiry, named.value, { trialId: trial.value.id, key: 'B', at });
  const became = { rungId: rung.id, combinationId: combination.id, trialId: trial.value.id, at };
  await book.addPlanned(
    {
      combination: wasThere ? null : combination,
      trial: trial.value,
      predictions,
      enquiryId: enquiry.id,
      became: [...enquiry.became, became],
    },
    stamp,
  );
  return accepted(
    {
      enquiryId: enquiry.id,
      rungId: rung.id,
      combination: { id: combination.id, name: combination.name, wasThere },
      trial: { id: trial.value.id, question: trial.value.question },
      pulls: (trial.value.plan?.pulls ?? []).map(({ key }) => key),
      predictions: predictions.length,
    },
    [...noLonger, ...short(enquiry, rung), ...ofRung.remarks, ...trial.remarks],
  );
}

interface AboutRung {
  enquiry: Enquiry;
  rung: Rung;
  base: Combination;
  combination: Combination;
}

async function trialOfRung(
  book: Book,
  { enquiry, rung, base, combination }: AboutRung,
  question: string,
  now: Date,
): Promise<Result<Trial>> {
  const change = shortChanges(rung, ' with ');
  const combinations = [
    { key: 'A', combinationId: base.id, shortName: base.name },
    { key: 'B', combinationId: combination.id, shortName: shortChanges(rung) },
  ];
  const pulls = await trialPulls(book, combinations, undefined);
  if (!pulls.ok) return pulls;
  const { target } = enquiry.answer.answer;
  const trial: Trial = {
    id: randomUUID(),
    question: question.trim() || `What does ${change} add towards ${spaced(enquiry.asked.power)}?`,
    kind: 'comparison',
    combinations,
    pulls: pulls.value,
    correction: enquiry.answer.standard.id,
    averagesWindowRpm: target.what === 'average power' ? target.windowRpm : null,
    remark: '',
    audience: OPEN_AUDIENCE,
    createdAt: now.toISOString(),
    invented: combination.invented,
  };
  // A plan reads its trial's combinations in the book, where this one is not yet.
  const asIfThere: Book = {
    ...book,
    combination: async (id) => (id === combination.id ? combination : book.combination(id)),
  };
  const gain = gainByRung(enquiry.answer, rung);
  const { worthwhileGain } = await settingsOf(book);
  const worked = await workedPlan(asIfThere, trial, gainToSee(gain, worthwhileGain), now);
  if (!worked.ok) return accepted(trial, worked.remarks.map(asCaution));
  const { plan, basis, gainRatio, odds } = worked.value;
  return accepted({
    ...trial,
    plan: {
      gainRatio,
      odds,
      pulls: [...basis.made, ...plan.pulls].map(({ key }) => ({ key })),
      looksAt: plan.looksAt,
      stopCriteria: null,
      notes: '',
    },
  });
}

/** The gain that is foretold, where it matters to the shop; else the smallest that does, as of any trial. */
const gainToSee = (gain: number | null, worthwhile: number): { gain?: string } =>
  gain === null || Math.abs(gain) < worthwhile ? {} : { gain: `${(100 * Math.abs(gain)).toFixed(1)} %` };

const asCaution = (one: Remark): Remark => (one.level === 'refusal' ? { ...one, level: 'caution' } : one);

function short({ asked }: Enquiry, { reaches }: Rung): Remark[] {
  if (reaches) return [];
  const message = `By its answer this rung does not reach ${spaced(asked.power)} within all limits. The trial will show what it does; heed the limits that it passes.`;
  return [remark('caution', 'rung-falls-short', message)];
}
