import { keyOfMap } from '@pullbook/core/airpath';
import type { Combination } from '@pullbook/core/combination';
import { withFit } from '@pullbook/core/fit';
import type { CostClass, ReachBuild } from '@pullbook/core/reach';
import { type Remark, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { EngineAtHand } from '../match/engine-at-hand.ts';
import { type Matched, matchOfEngine } from '../match/match-of-engine.ts';
import { changeOfSupercharger, unitOf, withoutSupercharger } from './another-supercharger.ts';
import { type OtherSheet, otherSheets } from './other-sheets.ts';

export interface BuildsOf {
  combination: Combination;
  engine: EngineAtHand;
  /** `null`: it has no supercharger. */
  matched: Matched | null;
  cost: CostClass;
  /** Others are left out. */
  presentAlone: boolean;
}

/**
 * The engine as it is, without a supercharger, and with every other supercharger that the book knows, each on this engine's own baseline:
 * those of its combinations by their sheets, and maps that no sheet names yet. What cannot be matched is left out and said.
 */
export async function buildsOf(
  book: Book,
  from: BuildsOf,
): Promise<{ builds: ReachBuild[]; remarks: Remark[] }> {
  const { combination, matched, presentAlone } = from;
  const present: ReachBuild = {
    id: 'present',
    name: unitOf(combination.sheet) ?? 'as it is',
    isPresent: true,
    match: matched && { input: matched.ready.input, spread: matched.ready.spread },
    fit: matched?.takenIn ?? null,
    madeOf: matched?.madeOf ?? null,
    sheet: combination.sheet,
    change: null,
    assumptions: matched?.ready.assumptions ?? [],
  };
  if (presentAlone) return { builds: [present], remarks: [] };
  const alone = matched === null ? [] : [withoutSupercharger(combination.sheet, from.cost)];
  const { sheets, remarks } = await otherSheets(book, combination.sheet);
  const builds: ReachBuild[] = [];
  for (const other of sheets) {
    const made = await otherBuild(book, other, from);
    if ('build' in made) builds.push(made.build);
    else remarks.push(leftOut(other.name, made.remarks[0]));
  }
  return { builds: [present, ...alone, ...builds], remarks };
}

async function otherBuild(
  book: Book,
  { id, name, sheet, from, assumptions }: OtherSheet,
  { combination, engine, matched, cost }: BuildsOf,
): Promise<{ build: ReachBuild } | { remarks: Remark[] }> {
  const made = await matchOfEngine(
    book,
    { ...combination, id, name, sheet },
    { engine, compared: [], choices: { air: matched?.ready.input.air } },
  );
  if (!made.ok) return made;
  const { ready, madeOf, takenIn } = made.value;
  // What the present one's fit found of the engine holds beside another supercharger; of the map it takes nothing.
  const fit = takenIn ?? matched?.takenIn ?? null;
  const match = takenIn === null && fit !== null ? withFit(ready, fit) : ready;
  const isMapped = match.input.compressor.map.form === 'points';
  const isOfAnother = matched !== null && keyOfMap(match.input) !== keyOfMap(matched.ready.input);
  return {
    build: {
      id,
      name,
      isPresent: false,
      match: { input: match.input, spread: match.spread },
      fit,
      madeOf,
      sheet,
      change: changeOfSupercharger(combination.sheet, sheet, {
        name,
        cost,
        ground: isMapped ? 'scaled from your data' : 'rule of thumb',
        from,
      }),
      assumptions: [
        ...ready.assumptions.filter(({ code }) => fit === null || code !== 'not-fitted'),
        ...assumptions,
        ...(isOfAnother && takenIn === null && fit !== null ? [ENGINE_OF_FIT] : []),
      ],
    },
  };
}

const ENGINE_OF_FIT = remark(
  'note',
  'fit-of-engine',
  'Never pulled with this supercharger: what the engine swallows and how its charge warms are taken from the fit of the present one, its head from its own map.',
);

const leftOut = (name: string, reason: Remark | undefined): Remark => ({
  ...(reason ?? remark('note', 'build-left-out', 'It cannot be matched.')),
  level: 'note',
  code: 'build-left-out',
  message: `Not tried, ${name}: ${reason?.message ?? 'it cannot be matched.'}`,
});
