import type { MapDescription } from '@pullbook/charts';
import {
  equalEfficiency,
  type FittedMap,
  pressureRatioOn,
  type SpeedLine,
  speedLineAt,
} from '@pullbook/core/airpath';
import { formatNumber, fromInside } from '@pullbook/core/quantity';
import type { Showing } from '../showing.ts';
import { airFlowUnit } from './match-words.ts';

/** A part of a speed line on which something was measured, or nothing. */
interface Piece {
  flow: number[];
  pressureRatio: number[];
  isMeasured: boolean;
}

/** Lines of a map in inside units. */
interface PlainLines {
  speeds: { line: SpeedLine; pieces: Piece[] }[];
  efficiency: { level: number; flow: number[]; pressureRatio: number[] }[];
}

export interface MapLook {
  /** r/min corrected, rising: the lines that are drawn. */
  speeds: readonly number[];
  /** The map's head against the one drawn, and its efficiency: as a fit found them. */
  headScale: number;
  efficiencyShift: number;
  /** Ratio of specific heats, for the head. */
  gasRatio: number;
}

const POINTS_A_LINE = 60;
/** A piece shorter than this share of its line is none. */
const CRUMB = 0.005;
const MOST_LINES = 8;
const EDGE_POINTS = 25;
/** An edge lower than this share of the picture is not drawn. */
const LOW_EDGE = 0.1;
/** Levels of efficiency drawn, and how far apart, absolute. */
const LEVELS = 5;
const LEVEL_STEP = 0.03;

/** A map's lines ask for thousands of its points and stay as they are while a page is changed; one look a map is remembered. */
const remembered = new WeakMap<FittedMap, { mark: string; lines: PlainLines }>();

/** Speed lines, lines of equal efficiency and edges of a map, and how far they reach, in the units shown. */
export function mapLines(
  map: FittedMap,
  look: MapLook,
  show: Showing,
): Pick<MapDescription, 'speedLines' | 'efficiency' | 'edges'> & { reach: [flow: number, ratio: number] } {
  const { unit } = airFlowUnit(show);
  const flowIn = (flow: readonly number[]) => flow.map((one) => fromInside(one, unit));
  const scaled = (ratios: readonly number[]) => ratios.map((ratio) => headScaled(ratio, look));
  const { speeds, efficiency } = plainLines(map, look.speeds);
  const highest = speeds.at(-1);
  const speedLines = speeds.flatMap(({ line, pieces }) => {
    const label =
      line === highest?.line ? show.speed(line.speedRpm) : show.number(line.speedRpm, 'engineSpeed');
    const named = Math.max(
      0,
      pieces.findIndex(({ isMeasured }) => isMeasured),
    );
    return pieces.map(({ flow, pressureRatio, isMeasured }, index) => ({
      label: index === named ? label : '',
      x: flowIn(flow),
      y: scaled(pressureRatio),
      isMeasured,
    }));
  });
  return {
    speedLines,
    efficiency: efficiency.map(({ level, flow, pressureRatio }) => ({
      label: `${formatNumber(100 * (level + look.efficiencyShift), look.efficiencyShift === 0 ? 0 : 1, show.options.decimalMark)}\u00a0%`,
      x: flowIn(flow),
      y: scaled(pressureRatio),
    })),
    edges: edgesOf(map, look).map(({ flow, pressureRatio, ...edge }) => ({
      ...edge,
      x: flowIn(flow),
      y: scaled(pressureRatio),
    })),
    reach: [
      Math.max(0, ...speedLines.flatMap(({ x }) => x)),
      Math.max(1, ...speedLines.flatMap(({ y }) => y)),
    ],
  };
}

/** A pressure ratio after its isentropic head was scaled. */
export function headScaled(ratio: number, { headScale, gasRatio }: MapLook): number {
  if (headScale === 1) return ratio;
  const exponent = (gasRatio - 1) / gasRatio;
  return Math.max(0, 1 + headScale * (ratio ** exponent - 1)) ** (1 / exponent);
}

function plainLines(map: FittedMap, speeds: readonly number[]): PlainLines {
  const mark = speeds.join(' ');
  const known = remembered.get(map);
  if (known?.mark === mark) return known.lines;
  const lines = speeds.map((speed) => {
    const line = speedLineAt(map, speed);
    return { line, pieces: piecesOf(line) };
  });
  const made = { speeds: lines, efficiency: efficiencyLines(map, lines) };
  remembered.set(map, { mark, lines: made });
  return made;
}

/** A speed line from surge to choke, cut where the measured points of the lines beside it begin and end. */
function piecesOf(line: SpeedLine): Piece[] {
  const { surgeFlow, chokeFlow, measuredFlow } = line;
  const within = (flow: number) => Math.min(chokeFlow, Math.max(surgeFlow, flow));
  const [first, last] = measuredFlow === null ? [chokeFlow, chokeFlow] : measuredFlow.map(within);
  const cuts = [surgeFlow, first!, last!, chokeFlow];
  return [false, true, false].flatMap((isMeasured, place) => {
    const [from, to] = [cuts[place]!, cuts[place + 1]!];
    const share = (to - from) / (chokeFlow - surgeFlow);
    if (!(share > CRUMB)) return [];
    const flow = steps(from, to, Math.max(2, Math.ceil(share * POINTS_A_LINE)));
    return [{ flow, pressureRatio: flow.map((one) => pressureRatioOn(line, one)), isMeasured }];
  });
}

/** Round speeds from about the lowest to the first above the highest that must be seen, r/min. */
export function roundSpeeds([low, high]: readonly [low: number, high: number]): number[] {
  const steps = [1, 2, 2.5, 5].flatMap((step) => [1e3, 1e4, 1e5].map((power) => step * power));
  const step =
    steps.sort((one, other) => one - other).find((one) => (high - low) / one <= MOST_LINES - 2) ?? high - low;
  const speeds: number[] = [];
  for (let speed = Math.max(step, Math.round(low / step) * step); ; speed += step) {
    speeds.push(speed);
    if (speed >= high) return speeds;
  }
}

function efficiencyLines(map: FittedMap, speeds: PlainLines['speeds']): PlainLines['efficiency'] {
  const best = Math.max(...speeds.map(({ line }) => line.highestEfficiency));
  const top = Math.max(...speeds.map(({ line }) => line.highestPressureRatio));
  const first = Math.floor((best - 0.003) * 100) / 100;
  return Array.from({ length: LEVELS }, (_, index) => first - LEVEL_STEP * index)
    .filter((level) => level > 0)
    .flatMap((level) => equalEfficiency(map, level).map((piece) => ({ level, ...piece })))
    .map(({ level, flow, pressureRatio }) => ({
      level,
      flow,
      // What lies above the lines drawn would hang in the air.
      pressureRatio: pressureRatio.map((ratio) => (ratio <= top ? ratio : Number.NaN)),
    }));
}

function edgesOf(map: FittedMap, { speeds }: MapLook) {
  const lines = steps(speeds[0]!, speeds.at(-1)!, EDGE_POINTS).map((speed) => speedLineAt(map, speed));
  const at = (flowOf: (line: SpeedLine) => number) => ({
    flow: lines.map(flowOf),
    pressureRatio: lines.map((line) => pressureRatioOn(line, flowOf(line))),
  });
  const isRated = map.form === 'rated';
  const isSurgeMet = !isRated && map.leftEnd === 'surge';
  const surge = at(({ surgeFlow }) => surgeFlow);
  const choke = at(({ chokeFlow }) => chokeFlow);
  const top = Math.max(...surge.pressureRatio) - 1;
  // Lines that fall all the way show themselves where flow ends: an edge there would only lie on the axis.
  const isWorthDrawing = Math.max(...choke.pressureRatio) - 1 > LOW_EDGE * top;
  return [
    isSurgeMet
      ? { label: 'surge', isEstimated: false, ...surge }
      : { label: 'surge, estimated', isEstimated: true, ...surge },
    ...(isWorthDrawing ? [{ label: 'largest flow', isEstimated: isRated, ...choke }] : []),
  ];
}

const steps = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, index) => from + ((to - from) * index) / (count - 1));
