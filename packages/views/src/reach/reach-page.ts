import { inventedChips } from '../chips.ts';
import { dayText } from '../date.ts';
import type { Chip, ViewOptions } from '../model.ts';
import type { ChosenRung, ReachPage, ReachPageInput } from '../reach-model.ts';
import { shownRemarks } from '../remarks.ts';
import { correctionName } from '../standard-name.ts';
import { counted } from '../wording.ts';
import { fuelFigures } from './fuel-figures.ts';
import { limitRows } from './limit-rows.ts';
import { nearRows } from './near-rows.ts';
import { type ReachInView, reachInView } from './reach-in-view.ts';
import { infeasible, reachSentence, spokenState } from './reach-sentence.ts';
import { targetText, whereText } from './reach-words.ts';
import { rungChart } from './rung-chart.ts';
import { rungCursor } from './rung-cursor.ts';
import { becameOf, fuelEffectLines, rungFigures } from './rung-figures.ts';
import { rungMap } from './rung-map.ts';
import { rungRow } from './rung-row.ts';
import { whatIsLeft } from './what-is-left.ts';

/** Said on every page of a target. */
export const REACH_CAUTIONS = [
  'A planning aid, not a measurement: the next pull decides.',
  'The limits of the makers of the supercharger, the belt and the engine go before everything computed here.',
  'An impeller that runs too fast can burst. Its limit is checked without slip, at the engine’s limit with the over-rev margin.',
  'More power asks for more fuel and bears less spark. Watch mixture and knock, and go up in small steps.',
  'Alcohol needs parts of the fuel system that bear it. Methanol is poisonous, also through the skin, and its flame is hard to see.',
];

/**
 * A target as its page says it: the answer in a sentence, the ladder, one rung laid open, what is left in the supercharger. Of a search
 * that is still on, as far as it is; of an enquiry that was kept, as it was given then.
 *
 * @example reachPage({ bundle, answer, progress: null, rungId: null }, { units: 'us', decimalMark: '.' }).rungs[0].title
 */
export function reachPage(input: ReachPageInput, options: ViewOptions): ReachPage {
  const view = reachInView(input, options);
  const { answer, now, rungs } = view;
  return {
    title: titleOf(view),
    sentence: reachSentence(view),
    chips: chipsOf(view),
    basis: basisOf(view),
    isFinished: answer !== null,
    spoken: spokenState(view),
    now: now === null ? null : rungRow(view, now, 0),
    rungs: rungs.map((rung, index) => rungRow(view, rung, index + 1)),
    chosen: chosenRung(view),
    left: whatIsLeft(view),
    infeasible: infeasible(view),
    cautions: REACH_CAUTIONS,
    remarks: shownRemarks(view.remarks, options),
  };
}

/** The question as it was asked, else worked out of what was asked. */
export function titleOf({ kept, show, target, name }: ReachInView): string {
  const own = kept?.enquiry.question ?? '';
  return own === '' ? `How does “${name}” make ${targetText(show, target)}?` : own;
}

export function chipsOf({ answer, now, isInvented, kept }: ReachInView): Chip[] {
  const outcome: Chip[] =
    answer === null
      ? []
      : now?.reaches
        ? [{ text: 'There already', tone: 'quiet' }]
        : answer.feasible
          ? []
          : [{ text: 'Out of reach', tone: 'caution' }];
  const changed: Chip[] =
    kept !== null && kept.remarks.length > 0 ? [{ text: 'Changed since it was asked', tone: 'caution' }] : [];
  return [
    ...outcome,
    { text: 'Computed, not measured', tone: 'quiet' },
    ...changed,
    ...inventedChips(isInvented),
  ];
}

/** `Highest power · SAE J1349 · in air of 29.03 inHg and 80 °F · 4,812 combinations looked at · 500 draws, seed 1` */
function basisOf({ target, standard, air, answer, bundle, kept, show }: ReachInView): string {
  const searched = answer?.searched.combinations ?? 0;
  return [
    target.what === 'peak power' ? 'Highest power' : `Power${whereText(show, target)}`,
    standard.id === 'observed' ? 'as observed' : correctionName(standard.id),
    `in air of ${show.quantity(air.pressure, 'absolutePressure')} and ${show.quantity(air.temperature, 'temperature')}`,
    searched === 0 ? '' : `${show.number(searched, 'engineSpeed')} combinations of changes looked at`,
    bundle === null ? '' : `${bundle.input.draws} draws, seed ${bundle.input.seed}`,
    kept === null
      ? ''
      : `asked ${dayText(kept.enquiry.at)} of ${counted(kept.enquiry.pullIds.length, 'pull')}, version ${kept.enquiry.madeBy.version}, seed ${kept.enquiry.madeBy.seed}`,
  ]
    .filter((part) => part !== '')
    .join(' · ');
}

function chosenRung(view: ReachInView): ChosenRung | null {
  const { chosen, now, rungs, options } = view;
  if (chosen === null) return null;
  const number = chosen === now ? 0 : rungs.indexOf(chosen) + 1;
  return {
    rung: rungRow(view, chosen, number),
    chart: rungChart(view),
    cursor: rungCursor(view),
    map: rungMap(view),
    figures: rungFigures(view, chosen),
    limits: limitRows(view, chosen),
    fuel: fuelFigures(view, chosen),
    fuelEffect: fuelEffectLines(view, chosen),
    near: nearRows(view, chosen),
    assumptions: shownRemarks([...chosen.assumptions, ...(chosen.made?.supply.assumptions ?? [])], options),
    became: becameOf(view, chosen),
  };
}
