import { driveFigures } from '@pullbook/core/airpath';
import { findingGroups } from '../findings.ts';
import { type MatchedInView, matchInView } from '../match/match-in-view.ts';
import { restsOn } from '../match/match-sentence.ts';
import { figureText, STATE_WORDS } from '../match/match-words.ts';
import type { FindingGroup, ShownTable } from '../model.ts';
import type { ReportBlock } from '../publish/model.ts';
import type { Showing } from '../showing.ts';
import { wholeTens } from '../showing.ts';
import { paragraph } from './answer-section.ts';
import type { ReportInView } from './report-in-view.ts';

/** How near compressor, impeller and belt run to their limits by the trial's supercharger match, with what it was computed from; empty without one. */
export function matchLimits({ view, more }: ReportInView): ReportBlock[] {
  if (more.match === null || more.match.combinations.length === 0) return [];
  const { show, matched } = matchInView({ bundle: more.match, whatIf: null, bands: null }, view.show.options);
  const isAssumed = matched.some(({ combination: { input } }) => input.compressor.map.form !== 'points');
  const rows = ROWS.map(({ name, cell }) => ({
    name,
    unit: '',
    cells: matched.map((one) => cell(one, show)),
  }));
  const table: ShownTable = {
    id: 'match-limits',
    title: 'By the supercharger match: computed, not measured',
    columns: matched.map(({ combination: { key, combination } }) => ({ text: key, combination })),
    rows: rows.filter(({ cells }) => cells.some((cell) => cell !== '')),
  };
  const assumed = isAssumed
    ? ' The map is a usual stage scaled to a rated point: its surge and choke are assumed.'
    : '';
  return [
    { kind: 'table', table },
    paragraph(`${restsOn(matched).text.trim()}${assumed} Makers’ limits go before it.`, 'quiet'),
  ];
}

/** What the rules say of the matches; what they say of single pulls is the trial's to say, which knows whose they are. */
export function matchFindings({ view, more }: ReportInView): FindingGroup[] {
  const combinations = more.match?.combinations ?? [];
  return findingGroups(
    combinations.flatMap(({ combinationId, findings }) =>
      findings.filter(({ subject }) => subject === `combination ${combinationId}`),
    ),
    new Map(combinations.map(({ combinationId, key }) => [`combination ${combinationId}`, key])),
    view.show.options,
  );
}

const ROWS: readonly { name: string; cell: (one: MatchedInView, show: Showing) => string }[] = [
  { name: 'Nearest to surge', cell: (one, show) => nearest(one, show, 'surgeMargin') },
  { name: 'Nearest to choke', cell: (one, show) => nearest(one, show, 'chokeMargin') },
  { name: 'Impeller at the engine’s limit and margin, without slip', cell: impeller },
  { name: 'Grip of the belt used, by the trade’s table', cell: belt },
];

/** `12 % of the flow, at 3,200 rpm`, and the state there where it is not plainly on the map. */
function nearest({ curve }: MatchedInView, show: Showing, figure: 'surgeMargin' | 'chokeMargin'): string {
  const margins = curve.figures[figure];
  const least = [...margins.keys()]
    .filter((node) => Number.isFinite(margins[node]))
    .reduce((best, node) => (best < 0 || margins[node]! < margins[best]! ? node : best), -1);
  if (least < 0) return '';
  const at = show.speed(wholeTens(curve.engineSpeedRpm[least]!));
  const state = STATE_WORDS[curve.state[least]!];
  return `${figureText(show, figure, margins[least]!)} of the flow, at ${at}${state && `, ${state}`}`;
}

function impeller(one: MatchedInView, show: Showing): string {
  const { drive } = one.combination.input;
  const { highestImpellerSpeedRpm: highest, limitUsed } = atTheTop(one) ?? {};
  if (highest == null) return 'no engine speed limit is on the sheet';
  if (limitUsed == null || drive.maximumImpellerSpeedRpm === null)
    return `${show.speed(highest)}; the maker’s limit is not on the sheet`;
  return `${show.perCent(limitUsed, { decimals: 0 })} of the maker’s ${show.speed(drive.maximumImpellerSpeedRpm)}`;
}

function belt(one: MatchedInView, show: Showing): string {
  const used = atTheTop(one)?.gripUsed ?? null;
  return used === null ? '' : show.perCent(used, { decimals: 0 });
}

/** The drive at the highest engine speed with a solution. */
function atTheTop({ curve, combination }: MatchedInView) {
  const { drivePower } = curve.figures;
  const node = drivePower.findLastIndex((power) => Number.isFinite(power));
  if (node < 0) return null;
  return driveFigures(combination.input.drive, {
    engineSpeedRpm: curve.engineSpeedRpm[node]!,
    drivePower: drivePower[node]!,
    wheelExitDiameter: null,
  });
}
