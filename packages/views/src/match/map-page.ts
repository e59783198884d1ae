import type { MapDescription } from '@pullbook/charts';
import type { CompressorMap, FittedMap, MapError, MapPoint } from '@pullbook/core/airpath';
import { fromInside, type Unit, unitFor } from '@pullbook/core/quantity';
import type { Remark } from '@pullbook/core/remark';
import { inventedChips } from '../chips.ts';
import type { MapCard, MapPage } from '../match-model.ts';
import type { Chip, ShownTable, ViewOptions } from '../model.ts';
import { shownRemarks } from '../remarks.ts';
import { type Showing, showingIn } from '../showing.ts';
import { counted } from '../wording.ts';
import { mapLines, roundSpeeds } from './map-lines.ts';
import { mapAxes } from './match-map.ts';
import { airFlowUnit } from './match-words.ts';

/** A map with what became of its fit. */
export interface MapPageInput {
  map: CompressorMap;
  /** `null`: it could not be fitted; the remarks say why. */
  fitted: FittedMap | null;
  remarks: readonly Remark[];
}

/** Ratio of specific heats of air at room temperature; it only scales a head, and here none is scaled. */
const AIR = 1.4;
/** Speeds of a map from one rated point, as shares of the rated one. */
const RATED_SPEEDS = [0.4, 1.1] as const;
/** Tip Mach numbers shown of a stage without any point, and the speed of sound of usual air, m/s. */
const STAGE_MACH = [0.4, 1.2] as const;
const SOUND = 346;
/** Kept free beside and above what is drawn. */
const ROOM = [1.04, 1.09] as const;

/** A compressor map as its page says it: what it is, how well its fit meets its points, its picture and its points. */
export function mapPage(input: MapPageInput, options: ViewOptions): MapPage {
  const { map, fitted, remarks } = input;
  const show = showingIn(options);
  return {
    id: map.id,
    name: map.name,
    chips: chipsOf(map),
    facts: factsOf(map, fitted, show),
    quality: fitted === null ? [] : qualityLines(fitted, show),
    picture: pictureOf(input, show),
    points: pointsTable(map, show),
    notes: map.notes,
    remarks: shownRemarks(remarks, options),
  };
}

/** A map in a list of them. */
export function mapCard(input: MapPageInput, options: ViewOptions): MapCard {
  const { map, fitted } = input;
  const show = showingIn(options);
  return {
    id: map.id,
    name: map.name,
    chips: chipsOf(map),
    facts: formWords(map, show),
    quality: fitted?.quality == null ? '' : errorWords(fitted.quality, show),
    picture: pictureOf(input, show),
  };
}

function chipsOf({ form, invented }: CompressorMap): Chip[] {
  const assumed: Chip[] = form === 'rated' ? [{ text: 'Assumed from a rated point', tone: 'caution' }] : [];
  return [...assumed, ...inventedChips(invented)];
}

const speedsOf = ({ points }: CompressorMap): number[] =>
  [...new Set(points.map(({ speedRpm }) => speedRpm))].sort((one, other) => one - other);

function formWords(map: CompressorMap, show: Showing): string {
  const speeds = speedsOf(map);
  const [low, high] = [speeds[0], speeds.at(-1)];
  if (map.form === 'rated')
    return low === undefined ? 'sizes alone' : `one rated point at ${show.speed(low)}`;
  if (low === undefined || high === undefined) return 'no points';
  return `${counted(map.points.length, 'point')} on ${counted(speeds.length, 'line')}, ${show.speedRange([low, high])}`;
}

function factsOf(map: CompressorMap, fitted: FittedMap | null, show: Showing): MapPage['facts'] {
  const { reference, geometry, leftEnd, origin } = map;
  const length = (value: number | null) => (value === null ? 'not known' : show.quantity(value, 'length'));
  const exit = geometry.wheelExitDiameter;
  const assumed =
    exit === null && fitted !== null
      ? `not known, ${show.quantity(fitted.wheelExitDiameter, 'length')} assumed`
      : length(exit);
  return [
    { label: 'Form', value: formWords(map, show) },
    {
      label: 'Flow and speed corrected to',
      value: `${show.quantity(reference.temperature, 'temperature')}, ${show.quantity(reference.pressure, 'absolutePressure')}`,
    },
    { label: 'Wheel exit diameter', value: assumed },
    { label: 'Wheel inlet diameter', value: length(geometry.wheelInletDiameter) },
    {
      label: 'Left end of the lines',
      value: leftEnd === 'surge' ? 'surge was met there' : 'not known: surge is estimated',
    },
    { label: 'Origin', value: origin },
  ];
}

/** How near the fit comes to the map's own points, whole and line by line. */
function qualityLines({ quality, form, spread }: FittedMap, show: Showing): string[] {
  if (quality === null || form === 'rated') {
    return [
      `Scaled from a generic stage: head within ${show.perCent(2 * spread.head, { decimals: 0 })}, flow within ${show.perCent(2 * spread.flow, { decimals: 0 })}, efficiency within ${points(show, 2 * spread.efficiency)} in about 95 of 100 cases. A map of the maker's is better.`,
    ];
  }
  return [
    `As a whole: ${errorWords(quality, show)}`,
    ...quality.lines.map((line) => `${show.speed(line.speedRpm)}: ${errorWords(line, show)}`),
  ];
}

function errorWords(error: MapError, show: Showing): string {
  const efficiency =
    error.efficiencyRms === null ? '' : `, efficiency within ${points(show, error.efficiencyRms)}`;
  return `pressure ratio within ${show.perCent(error.pressureRatioRms)}${efficiency} of its ${counted(error.points, 'point')} (root mean square)`;
}

const points = (show: Showing, share: number): string =>
  `${show.number(100 * share, 'ratio', { decimals: 1 })} points`;

function pictureOf({ map, fitted }: MapPageInput, show: Showing): MapDescription | null {
  if (fitted === null) return null;
  const { unit } = airFlowUnit(show);
  const lines = mapLines(
    fitted,
    { speeds: speedsToShow(map, fitted), headScale: 1, efficiencyShift: 0, gasRatio: AIR },
    show,
  );
  const x = map.points.map(({ flow }) => fromInside(flow, unit));
  const y = map.points.map(({ pressureRatio }) => pressureRatio);
  return {
    ...mapAxes(map.reference, show),
    xRange: [0, ROOM[0] * Math.max(lines.reach[0], ...x)],
    yRange: [1, 1 + ROOM[1] * (Math.max(lines.reach[1], ...y) - 1)],
    speedLines: lines.speedLines,
    efficiency: lines.efficiency,
    edges: lines.edges,
    points: { x, y },
    operating: [],
    alternative: `Compressor map ${map.name}: ${formWords(map, show)}. Pressure ratio over corrected air flow, with lines of equal efficiency.`,
  };
}

/** The measured lines; of a map from one point, or from sizes alone, round speeds about it. */
function speedsToShow({ points: [rated] }: CompressorMap, fitted: FittedMap): number[] {
  if (fitted.measuredSpeedRpm !== null && fitted.quality !== null)
    return fitted.quality.lines.map(({ speedRpm }) => speedRpm).sort((one, other) => one - other);
  if (rated !== undefined)
    return roundSpeeds([RATED_SPEEDS[0] * rated.speedRpm, RATED_SPEEDS[1] * rated.speedRpm]);
  const rpmOfMach = (SOUND * 60) / (Math.PI * fitted.wheelExitDiameter);
  return roundSpeeds([STAGE_MACH[0] * rpmOfMach, STAGE_MACH[1] * rpmOfMach]);
}

const PERCENT = unitFor('%', 'ratio')!;

function pointsTable(map: CompressorMap, show: Showing): ShownTable {
  const flow = airFlowUnit(show);
  const cells = ({ flow: value, pressureRatio, efficiency }: MapPoint): string[] => [
    inUnit(show, value, flow.unit, flow.decimals + 1),
    show.number(pressureRatio, 'ratio'),
    efficiency === null ? '' : show.number(efficiency, 'ratio', { unit: PERCENT, decimals: 1 }),
  ];
  return {
    id: 'map-points',
    title: map.form === 'rated' ? 'The rated point' : 'Its points',
    columns: [
      { text: `Air flow, ${flow.unit.name}`, combination: null },
      { text: 'Pressure ratio', combination: null },
      { text: 'Efficiency, %', combination: null },
    ],
    rows: map.points.map((point) => ({
      name: show.number(point.speedRpm, 'engineSpeed'),
      unit: show.unit('engineSpeed'),
      cells: cells(point),
    })),
  };
}

const inUnit = (show: Showing, value: number, unit: Unit, decimals: number): string =>
  show.number(value, 'massFlow', { unit, decimals });
