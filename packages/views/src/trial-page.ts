import { writeSaid } from '@pullbook/core/quantity';
import type { TrialAnswer } from '@pullbook/core/trial';
import { audienceWords, heldBack } from './audience.ts';
import { basisLine, missingLines } from './basis.ts';
import { caveats } from './caveats.ts';
import { trialChips } from './chips.ts';
import { cursorTable } from './cursor-table.ts';
import { evidenceRows } from './evidence.ts';
import type { TrialPage, ViewOptions } from './model.ts';
import { answerSentence } from './sentence.ts';
import { standardNotes } from './standard-notes.ts';
import { surveyTable } from './survey-table.ts';
import { trialChart } from './trial-chart.ts';
import { type TrialInView, trialInView } from './trial-in-view.ts';
import { trialRemarks } from './trial-remarks.ts';
import { atSpeedsTable, averagesTable, peaksTable } from './trial-tables.ts';

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
    basis: basisLine(view),
    caveats: caveats(view),
    combinations: view.combinations.map((item) => ({
      key: item.key,
      id: trial.combinations[item.index]!.combinationId,
      shortName: item.shortName,
      name: item.combination?.name ?? item.shortName,
      combination: item.index,
      counted: item.counted.length,
    })),
    chart: trialChart(view),
    cursor: cursorTable(view),
    survey: surveyTable(view),
    peaks: peaksTable(view),
    averages: averagesTable(view),
    atSpeeds: atSpeedsTable(view),
    likeForLike: likeForLike(view),
    changes: changesOf(view),
    evidence: evidenceRows(view),
    missing: missingLines(view),
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

/** What differs first, then what is not known, then what was looked at and is alike. */
function likeForLike({ comparison, combinations, show }: TrialInView): TrialPage['likeForLike'] {
  const order = ['differs', 'unknown', 'alike'];
  return (comparison?.conditions ?? [])
    .toSorted((one, other) => order.indexOf(one.state) - order.indexOf(other.state))
    .map(({ label, values, parts, state, why }) => ({
      label,
      values: combinations
        .filter(({ key }) => values[key] !== undefined)
        .map(({ key }) => `${key} ${writeSaid(values[key]!, parts?.[key], show.options)}`)
        .join(', '),
      state,
      why,
    }));
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
