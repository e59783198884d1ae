import type { MapDescription } from '@pullbook/charts';
import type { FittedMap, MapReference } from '@pullbook/core/airpath';
import { fromInside } from '@pullbook/core/quantity';
import type { Showing } from '../showing.ts';
import { listed } from '../wording.ts';
import { type MapLook, mapLines, roundSpeeds } from './map-lines.ts';
import type { MatchedInView, MatchInView } from './match-in-view.ts';
import { airFlowUnit, matchedName } from './match-words.ts';

const NAMED_STEP_RPM = 1000;
const MOST_NAMED = 4;
/** Kept free beside and above what is drawn. */
export const MAP_ROOM = [1.04, 1.09] as const;

/**
 * The compressor's map with the lines on which the combinations run, the head and efficiency as fitted. Of what is compared;
 * combinations with another map are not on it. `null`: nothing is matched, or nothing of it runs on a map.
 */
export function matchMap(view: MatchInView): MapDescription | null {
  const subject = view.compared ?? view.reference;
  if (subject === null) return null;
  const { map } = subject.combination.input.compressor;
  const onIt = view.matched.filter(({ combination }) => isSameMap(combination.input.compressor.map, map));
  const speeds = onIt.flatMap(({ curve }) => [...curve.figures.correctedSpeedRpm].filter(Number.isFinite));
  if (speeds.length === 0) return null;
  // Lines about the speeds that are run: those far above would make the rest small.
  const drawn = roundSpeeds([Math.min(...speeds), Math.max(...speeds)]);
  const lines = mapLines(map, lookOf(subject, drawn), view.show);
  const { unit } = airFlowUnit(view.show);
  const operating = onIt.map(({ combination, curve }): MapDescription['operating'][number] => {
    const { correctedFlow, pressureRatio } = curve.figures;
    const plain = (value: number) => (Number.isFinite(value) ? value : null);
    return {
      key: combination.key,
      name: combination.name,
      style: { combination: combination.combination },
      engineSpeed: curve.engineSpeedRpm,
      x: Array.from(correctedFlow, (value) => plain(fromInside(value, unit))),
      y: Array.from(pressureRatio, plain),
      named: namedSpeeds(curve.engineSpeedRpm).map((engineSpeed) => ({
        engineSpeed,
        text: view.show.number(engineSpeed, 'engineSpeed'),
      })),
    };
  });
  const reached = (values: (number | null)[]) => Math.max(0, ...values.map((value) => value ?? 0));
  return {
    ...mapAxes(map.reference, view.show),
    xRange: [0, MAP_ROOM[0] * Math.max(lines.reach[0], ...operating.map(({ x }) => reached(x)))],
    yRange: [1, 1 + MAP_ROOM[1] * (Math.max(lines.reach[1], ...operating.map(({ y }) => reached(y))) - 1)],
    speedLines: lines.speedLines,
    efficiency: lines.efficiency,
    edges: lines.edges,
    points: null,
    operating,
    alternative: alternativeOf(view, onIt, map),
  };
}

/** Two sheets may call different ratings by one name: the choke line tells them apart. */
export function isSameMap(one: FittedMap, other: FittedMap): boolean {
  if (one === other) return true;
  const [own, theirs] = [one.shape.numbers.choke ?? [], other.shape.numbers.choke ?? []];
  return (
    one.mapId === other.mapId &&
    one.wheelExitDiameter === other.wheelExitDiameter &&
    own.length === theirs.length &&
    own.every((flow, node) => flow === theirs[node])
  );
}

function lookOf({ combination }: MatchedInView, speeds: MapLook['speeds']): MapLook {
  const { compressor, gas } = combination.input;
  return {
    speeds,
    headScale: compressor.headScale,
    efficiencyShift: compressor.efficiencyShift,
    gasRatio: gas.specificHeat / (gas.specificHeat - gas.gasConstant),
  };
}

/** Words of the axes, with the air that flow and speed are corrected to. */
export function mapAxes(
  { pressure, temperature }: MapReference,
  show: Showing,
): Pick<MapDescription, 'xTitle' | 'xUnit' | 'yTitle' | 'yNote' | 'decimalMark'> {
  const air = `${show.quantity(temperature, 'temperature')} and ${show.quantity(pressure, 'absolutePressure')}`;
  return {
    xTitle: 'Air flow',
    xUnit: `${airFlowUnit(show).unit.name} at ${air}`,
    yTitle: 'Pressure ratio',
    yNote: 'at speeds of the impeller; thin: equal efficiency',
    decimalMark: show.options.decimalMark,
  };
}

/** Whole thousands that are nodes, the highest ones; of a step test on other speeds its first, middle and last. */
export function namedSpeeds(engineSpeedRpm: readonly number[]): number[] {
  const whole = engineSpeedRpm.filter((rpm) => rpm % NAMED_STEP_RPM === 0).slice(-MOST_NAMED);
  if (whole.length > 0) return whole;
  const last = engineSpeedRpm.length - 1;
  return [...new Set([0, Math.floor(last / 2), last])].flatMap((node) => engineSpeedRpm[node] ?? []);
}

function alternativeOf({ show }: MatchInView, onIt: readonly MatchedInView[], map: FittedMap): string {
  const ends = onIt.map((one) => {
    const node = one.curve.figures.pressureRatio.findLastIndex(Number.isFinite);
    const { unit, decimals } = airFlowUnit(show);
    const flow = show.quantity(one.curve.figures.correctedFlow[node] ?? Number.NaN, 'massFlow', {
      unit,
      decimals,
    });
    const ratio = show.number(one.curve.figures.pressureRatio[node] ?? Number.NaN, 'ratio', { decimals: 2 });
    return `${matchedName(one)} ends at ${show.speed(one.curve.engineSpeedRpm[node] ?? Number.NaN)} with a pressure ratio of ${ratio} at ${flow}`;
  });
  return `Map of ${map.name}${map.form === 'rated' ? ', assumed from a rated point' : ''}: pressure ratio over corrected air flow, with where the combinations run. ${listed(ends)}.`;
}
