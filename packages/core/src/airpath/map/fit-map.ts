import { fingerprint } from '../../numeric/index.ts';
import { accepted, type Remark, type Result, refused } from '../../remark/index.ts';
import type { CompressorMap, FittedMap, MapPoint, MapQuality } from '../model.ts';
import { diameterFor, GUESSED_EFFICIENCY } from './generic-rated.ts';
import { genericWork, USUAL_STAGE } from './generic-stage.ts';
import { idealRiseOf, scalesOf, soundSpeedOf } from './map-gas.ts';
import { fitRated } from './map-generic.ts';
import { linesOf, type MapLine } from './map-line-groups.ts';
import { linesColumns } from './map-lines.ts';
import { mapMessage } from './map-messages.ts';
import { offOf, qualityOf, traceOf } from './map-quality.ts';
import { spreadOfTable } from './map-spread.ts';
import { MACH_NODES } from './map-table.ts';
import { checkedMap } from './map-trouble.ts';
import { efficiencyOn, speedLineAt } from './speed-line.ts';

/**
 * A map made ready to be asked at any speed and flow: from a table of points by a fit in the dimensionless plane against tip Mach number, from one
 * rated point by the generic stage. Refused with the point's number where the table cannot be a map.
 *
 * @example fitMap(map) // { ok: true, value: { quality: { pressureRatioRms: 0.002, … }, … }, remarks: [] }
 */
export function fitMap(map: CompressorMap): Result<FittedMap> {
  const { refusals, notes, points } = checkedMap(map);
  const [first, ...others] = refusals;
  if (first !== undefined) return refused(first, ...others);
  return map.form === 'rated' ? fittedRated(map, notes) : fittedPoints({ ...map, points }, map.points, notes);
}

function fittedRated(map: CompressorMap, notes: readonly Remark[]): Result<FittedMap> {
  const { columns, hasRatedPoint, ...rest } = fitRated(map);
  const fitted = finished(map, { ...rest, measuredSpeedRpm: null, kind: 'generic', columns });
  return accepted(fitted, [
    ...notes,
    hasRatedPoint ? mapMessage.rated() : mapMessage.geometryOnly(),
    ...(map.points[0]?.efficiency === null ? [mapMessage.efficiencyGuessed(GUESSED_EFFICIENCY)] : []),
    ...(rest.isDiameterAssumed ? [mapMessage.diameterAssumed(rest.wheelExitDiameter)] : []),
  ]);
}

function fittedPoints(
  map: CompressorMap,
  given: readonly MapPoint[],
  notes: readonly Remark[],
): Result<FittedMap> {
  const lines = linesOf(map.points);
  const wheelExitDiameter = map.geometry.wheelExitDiameter ?? assumedDiameter(map, lines);
  const { machPerRpm, flowUnit } = scalesOf(map.reference, wheelExitDiameter);
  const plain = lines.flatMap(({ points }) =>
    points.map(({ flow, speedRpm, pressureRatio, efficiency }) => ({
      mach: speedRpm * machPerRpm,
      flow: flow / flowUnit,
      rise: idealRiseOf(pressureRatio),
      efficiency,
    })),
  );
  const ends = lines.map(({ speedRpm, points }) => ({
    mach: speedRpm * machPerRpm,
    low: points[0]!.flow / flowUnit,
    high: points.at(-1)!.flow / flowUnit,
  }));
  const fitted = finished(map, {
    wheelExitDiameter,
    isDiameterAssumed: map.geometry.wheelExitDiameter === null,
    measuredSpeedRpm: [lines[0]!.speedRpm, lines.at(-1)!.speedRpm],
    spread: { head: 0, efficiency: 0, flow: 0 },
    kind: 'lines',
    columns: {
      ...linesColumns(plain, ends, map.leftEnd),
      lineSpeedRpm: lines.map(({ speedRpm }) => speedRpm),
      lineLowFlow: lines.map(({ points }) => points[0]!.flow),
      lineHighFlow: lines.map(({ points }) => points.at(-1)!.flow),
    },
  });
  const quality = qualityOf(fitted, lines);
  fitted.quality = quality;
  fitted.spread = spreadOfTable(map, quality);
  return accepted(fitted, [...notes, ...remarksOfFit(fitted, quality, given)]);
}

/** From here a point or a map is told to lie off. */
const FAR_OFF = 0.08;
const POOR = 0.03;

function remarksOfFit(map: FittedMap, quality: MapQuality, given: readonly MapPoint[]): Remark[] {
  const far = given.flatMap((point, place) => {
    const { distance } = offOf(traceOf(map, point.speedRpm), point);
    return distance > FAR_OFF ? [mapMessage.farOff(place + 1, point, distance)] : [];
  });
  return [
    ...far.slice(0, 5),
    ...(quality.pressureRatioRms > POOR ? [mapMessage.poorFit(quality.pressureRatioRms)] : []),
    ...(quality.lines.length === 1 ? [mapMessage.oneLine(quality.lines[0]!.speedRpm)] : []),
    ...(quality.efficiencyRms === null ? [mapMessage.efficiencyGuessed(GUESSED_EFFICIENCY)] : []),
    ...(map.isDiameterAssumed ? [mapMessage.diameterAssumed(map.wheelExitDiameter)] : []),
  ];
}

function finished(
  map: CompressorMap,
  {
    kind,
    columns,
    ...rest
  }: Pick<FittedMap, 'wheelExitDiameter' | 'isDiameterAssumed' | 'measuredSpeedRpm' | 'spread'> & {
    kind: FittedMap['shape']['kind'];
    columns: Record<string, number[]>;
  },
): FittedMap {
  const { machPerRpm, flowUnit } = scalesOf(map.reference, rest.wheelExitDiameter);
  const { form, reference, geometry, points, leftEnd } = map;
  const fitted: FittedMap = {
    mapId: map.id,
    mark: fingerprint(JSON.stringify([form, reference, geometry, points, leftEnd])),
    name: map.name,
    form,
    leftEnd,
    reference,
    ...rest,
    quality: null,
    shape: {
      kind,
      numbers: {
        ...columns,
        machPerRpm: [machPerRpm],
        flowUnit: [flowUnit],
        highestEfficiency: new Array<number>(MACH_NODES).fill(0),
      },
    },
  };
  fitted.shape.numbers.highestEfficiency = highestEfficiencies(fitted);
  return fitted;
}

/** The highest efficiency of the line at each node. */
function highestEfficiencies(map: FittedMap): number[] {
  const STEPS = 60;
  return Array.from({ length: MACH_NODES }, (_, node) => {
    const mach = Math.max(0.05, node * map.shape.numbers.machStep![0]!);
    const line = speedLineAt(map, mach / map.shape.numbers.machPerRpm![0]!);
    let highest = 0;
    for (let step = 1; step <= STEPS; step++)
      highest = Math.max(highest, efficiencyOn(line, (line.chokeFlow * step) / STEPS));
    return highest;
  });
}

/** m: exit diameter with which a usual stage has the highest pressure ratio of the fastest line. */
function assumedDiameter({ reference }: CompressorMap, lines: readonly MapLine[]): number {
  const { points } = lines.at(-1)!;
  const top = points.reduce((best, point) => (point.pressureRatio > best.pressureRatio ? point : best));
  const usual = { ...USUAL_STAGE, designFlow: 1 };
  const workRise = idealRiseOf(top.pressureRatio) / (top.efficiency ?? GUESSED_EFFICIENCY);
  return diameterFor(workRise, genericWork(usual, 0.8), top.speedRpm, soundSpeedOf(reference));
}
