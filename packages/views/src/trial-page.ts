import type { TrialAnswer } from '@pullbook/core/trial';
import { atSpeedsTable } from './at-speeds-table.ts';
import { audienceWords, heldBack } from './audience.ts';
import { shownBadges } from './badges.ts';
import { bandTables } from './band-tables.ts';
import { basisLine, missingLines } from './basis.ts';
import { caveats } from './caveats.ts';
import { trialChips, verdictChip } from './chips.ts';
import { cursorTable } from './cursor-table.ts';
import { evidenceRows } from './evidence.ts';
import { likeForLike } from './like-for-like.ts';
import { mayAndMayNot } from './may-say.ts';
import type { TrialPage, ViewOptions } from './model.ts';
import { plannedPulls } from './planned-pulls.ts';
import { trialPredictions } from './predictions.ts';
import { saidGains } from './said-gain.ts';
import { answerSentence } from './sentence.ts';
import { standardNotes } from './standard-notes.ts';
import { surveyTable } from './survey-table.ts';
import { trialChart } from './trial-chart.ts';
import { trialFindings } from './trial-findings.ts';
import { fullName, type TrialInView, trialInView } from './trial-in-view.ts';
import { trialRemarks } from './trial-remarks.ts';
import { averagesTable, peaksTable } from './trial-tables.ts';
import { verdictFigures } from './verdict-line.ts';
import { why } from './why.ts';

/**
 * A trial as its page says it: the question, the answer in a sentence, what it rests on, the chart with its exact
 * figures, what to know before believing it, and the evidence.
 *
 * @example trialPage(answerTrial(input), { units: 'us', decimalMark: '.' }).sentence
 */
export function trialPage(answer: TrialAnswer, options: ViewOptions): TrialPage {
  const view = trialInView(answer, options);
  const { trial, comparison } = view;
  return {
    id: trial.id,
    question: trial.question,
    sentence: answerSentence(view),
    chips: trialChips(view),
    verdicts: verdictsOf(view),
    mayAndMayNot: mayAndMayNot(view),
    basis: basisLine(view),
    caveats: caveats(view),
    combinations: view.combinations.map((item) => ({
      key: item.key,
      id: trial.combinations[item.index]!.combinationId,
      shortName: item.shortName,
      name: item.combination?.name ?? item.shortName,
      combination: item.index,
      counted: item.counted.length,
      takenApart: trial.combinations[item.index]!.takenApart ?? null,
    })),
    chart: trialChart(view),
    cursor: cursorTable(view),
    survey: surveyTable(view),
    peaks: peaksTable(view),
    averages: averagesTable(view),
    atSpeeds: atSpeedsTable(view),
    bands: bandTables(view),
    why: why(view),
    badges: shownBadges(answer.badges, options),
    likeForLike: likeForLike(view),
    changes: changesOf(view),
    evidence: evidenceRows(view),
    planned: plannedPulls(view),
    isSupercharged: view.combinations.some(({ supercharged }) => supercharged),
    missing: missingLines(view),
    predictions: trialPredictions(answer, options),
    findings: trialFindings(view),
    remarks: trialRemarks(view),
    settings: {
      kind: trial.kind,
      correction: trial.correction,
      averagesWindowRpm: comparison?.averagesWindowRpm ?? null,
      commonWindowRpm: comparison?.commonWindowRpm ?? null,
    },
    standardNotes: standardNotes(
      trial.correction,
      view.combinations.some(({ supercharged }) => supercharged),
    ),
    ownRemark: trial.remark,
    audience: { ...trial.audience, words: audienceWords(trial.audience) },
    heldBack: heldBack(answer),
  };
}

function verdictsOf(view: TrialInView): TrialPage['verdicts'] {
  const said = saidGains(view);
  return said.flatMap((one) => {
    const { verdict } = one.gain;
    const isOneOfSeveral = said.length > 1;
    const name = isOneOfSeveral ? fullName(one.changed) : '';
    const figures = verdictFigures(one, { isOneOfSeveral });
    if (verdict === null) return [];
    return [{ key: one.changed.key, name, chip: verdictChip(view.show, verdict), figures }];
  });
}

function changesOf({ answer, combinations }: TrialInView): TrialPage['changes'] {
  return combinations.flatMap(({ key }) => {
    const lines = answer.changes[key] ?? [];
    if (lines.length === 0) return [];
    return [
      {
        key,
        lines: lines.map(({ label, before, after, packageName }) => ({
          label,
          before: before ?? 'not on the sheet',
          after: after ?? 'not on the sheet',
          packageName,
        })),
      },
    ];
  });
}
