import type { Remark } from '../../remark/index.ts';
import type { CompressorMap, MapPoint, MapReference } from '../model.ts';
import { idealRiseOf, MAP_GAS, scalesOf, soundSpeedOf } from './map-gas.ts';
import { mapMessage } from './map-messages.ts';
import { mapLinesTrouble } from './map-trouble-lines.ts';

/** What keeps a map from being used, and the points that remain once doubles are taken out. */
export function checkedMap(map: CompressorMap): { refusals: Remark[]; notes: Remark[]; points: MapPoint[] } {
  const refusals = [...referenceTrouble(map.reference), ...countTrouble(map)];
  if (refusals.length === 0) refusals.push(...pointTrouble(map.points));
  const { points, notes } = withoutDoubles(map.points);
  if (refusals.length === 0 && map.form === 'points') {
    if (points.length < LEAST_POINTS) refusals.push(mapMessage.tooFewPoints(points.length));
    else refusals.push(...mapLinesTrouble(points));
  }
  if (refusals.length === 0) notes.push(...diameterTrouble(map));
  return { refusals: refusals.slice(0, MOST_TOLD), notes, points };
}

const LEAST_POINTS = 3;
/** A table in a wrong unit has the same trouble at each point. */
const MOST_TOLD = 5;

function referenceTrouble({ pressure, temperature }: MapReference): Remark[] {
  const isAir = pressure >= 50_000 && pressure <= 120_000 && temperature >= 233.15 && temperature <= 333.15;
  return isAir ? [] : [mapMessage.referenceMissing(pressure, temperature)];
}

function countTrouble({ form, points, geometry }: CompressorMap): Remark[] {
  if (points.length === 0 && (form === 'points' || geometry.wheelExitDiameter === null))
    return [mapMessage.noPoints()];
  if (form === 'rated' && points.length > 1) return [mapMessage.ratedNeedsOnePoint(points.length)];
  return [];
}

function pointTrouble(points: readonly MapPoint[]): Remark[] {
  return [
    ...points.flatMap((point, place) => figureTrouble(point, place + 1)),
    ...efficiencyTrouble(
      points.flatMap(({ efficiency }, place) =>
        efficiency === null ? [] : [{ number: place + 1, efficiency }],
      ),
    ),
  ];
}

function figureTrouble(point: MapPoint, number: number): Remark[] {
  for (const [what, value] of [
    ['flow', point.flow],
    ['speed', point.speedRpm],
    ['pressure ratio', point.pressureRatio],
  ] as const)
    if (!(value > 0 && Number.isFinite(value))) return [mapMessage.notANumber(number, what, value)];
  if (point.speedRpm < 500) return [mapMessage.speedsInPerCent(number, point.speedRpm)];
  if (point.pressureRatio < 1) return [mapMessage.pressureRatioBelow1(number, point)];
  return point.pressureRatio > 12 ? [mapMessage.pressureRatioAbsurd(number, point)] : [];
}

function efficiencyTrouble(told: readonly { number: number; efficiency: number }[]): Remark[] {
  const wrong = told.find(({ efficiency }) => !(efficiency > 0 && Number.isFinite(efficiency)));
  if (wrong !== undefined) return [mapMessage.notANumber(wrong.number, 'efficiency', wrong.efficiency)];
  const above = told.find(({ efficiency }) => efficiency > 1.5);
  if (above !== undefined) {
    const fraction = told.find(({ efficiency }) => efficiency <= 1);
    return fraction === undefined
      ? [mapMessage.efficiencyInPerCent(above.number, above.efficiency)]
      : [mapMessage.efficiencyMixed(above.number, above.efficiency, fraction.number, fraction.efficiency)];
  }
  return told
    .filter(({ efficiency }) => efficiency > 0.95 || efficiency < 0.05)
    .map(({ number, efficiency }) => mapMessage.efficiencyAbsurd(number, efficiency));
}

/** Work over tip speed squared, as far as head shows it: an impeller without counter-rotation does no more than 1 (Euler), plus what its disc rubs. */
const POSSIBLE_HEAD = { low: 0.2, high: 1.1 };

function diameterTrouble({ points, reference, geometry: { wheelExitDiameter } }: CompressorMap): Remark[] {
  if (wheelExitDiameter === null || points.length === 0) return [];
  const fastest = points.reduce((most, point) =>
    point.speedRpm > most.speedRpm ||
    (point.speedRpm === most.speedRpm && point.pressureRatio > most.pressureRatio)
      ? point
      : most,
  );
  const mach = fastest.speedRpm * scalesOf(reference, wheelExitDiameter).machPerRpm;
  const head = idealRiseOf(fastest.pressureRatio) / ((MAP_GAS.ratio - 1) * mach * mach);
  if (head >= POSSIBLE_HEAD.low && head <= POSSIBLE_HEAD.high) return [];
  return [mapMessage.diameterOdd(wheelExitDiameter, mach * soundSpeedOf(reference), head)];
}

function withoutDoubles(points: readonly MapPoint[]): { points: MapPoint[]; notes: Remark[] } {
  const seen = new Set<string>();
  const twice: number[] = [];
  const kept = points.filter(({ flow, speedRpm, pressureRatio, efficiency }, place) => {
    const key = `${flow}/${speedRpm}/${pressureRatio}/${efficiency}`;
    if (seen.has(key)) twice.push(place + 1);
    const isNew = !seen.has(key);
    seen.add(key);
    return isNew;
  });
  return { points: kept, notes: twice.length === 0 ? [] : [mapMessage.duplicates(twice)] };
}
