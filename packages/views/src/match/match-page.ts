import { findingGroups } from '../findings.ts';
import type { MatchPage, MatchPageInput } from '../match-model.ts';
import type { ViewOptions } from '../model.ts';
import { shownRemarks } from '../remarks.ts';
import { driveFacts } from './drive-facts.ts';
import { fitWords } from './fit-words.ts';
import { matchChart } from './match-chart.ts';
import { matchCursor } from './match-cursor.ts';
import { matchInView, TRIED_SUBJECT } from './match-in-view.ts';
import { matchMap } from './match-map.ts';
import { matchSentence } from './match-sentence.ts';
import { matchTable } from './match-table.ts';
import { matchWhy } from './match-why.ts';
import { powerGoes } from './power-goes.ts';

/** Said on every page of a match. */
const CAUTIONS = [
  'A planning estimate, not a measurement: the next pull decides.',
  'The limits of the maker of the supercharger, the belt and the engine rule, whatever is computed here.',
  'An impeller that runs too fast can burst. Its limit is checked without slip, at the engine’s limit with the over-rev margin.',
  'More boost asks for more fuel and less spark. Watch mixture and knock, and raise boost in small steps.',
];

/**
 * A match as its page says it: what the change does and why, matched and measured curves, the map, where the power goes. Solved
 * here from the bundle, so that a what-if is instant; bands come later and are shown where they have come.
 *
 * @example matchPage({ bundle, whatIf: { key: 'A', blowerPulleyDiameter: 0.08 }, bands: null }, { units: 'us', decimalMark: '.' })
 */
export function matchPage(input: MatchPageInput, options: ViewOptions): MatchPage {
  const view = matchInView(input, options);
  const { bundle, matched } = view;
  const combinations = matched.map(({ combination }) => combination);
  const names = new Map(
    combinations.flatMap(({ combinationId, key, name }): [string, string][] => {
      const isTried = bundle.combinations.every((one) => one.key !== key);
      return [[isTried ? TRIED_SUBJECT : `combination ${combinationId}`, `${key}, ${name}`]];
    }),
  );
  return {
    title: bundle.title,
    sentence: matchSentence(view),
    why: matchWhy(view),
    chart: matchChart(view),
    cursor: matchCursor(view),
    map: matchMap(view),
    powerGoes: powerGoes(view),
    table: matchTable(view),
    drive: driveFacts(view),
    fit: fitWords(view),
    findings: findingGroups(
      combinations.flatMap(({ findings }) => findings),
      names,
      options,
    ),
    assumptions: shownRemarks(
      combinations.flatMap(({ assumptions }) => assumptions),
      options,
    ),
    remarks: shownRemarks(
      [...bundle.silent, ...bundle.remarks, ...combinations.flatMap(({ fit }) => fit?.remarks ?? [])],
      options,
    ),
    cautions: CAUTIONS,
    left: bundle.left.map(({ key, name, reason }) => ({
      name: `${key}, ${name}`,
      reason: shownRemarks([reason], options)[0]?.text ?? '',
    })),
  };
}
