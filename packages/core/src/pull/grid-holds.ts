import { mean } from '../numeric/mean.ts';
import { speedFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import type { Rows } from './grid-samples.ts';
import { medianSpacingRpm } from './kind-of-rows.ts';
import type { ChannelMeaning, GriddedCurve } from './model.ts';
import { HELD_WITHIN_RPM, type Hold } from './staircase.ts';

/**
 * One point a held speed: means of its settled rows at the mean of their speeds, missing rows and spikes left out. A speed
 * that was held twice, going up and coming down, is one point, with a remark. `count`: rows of each point.
 */
export function gridHolds(
  { speedRpm, channels }: Omit<Rows, 'rows'>,
  holds: readonly Hold[],
): { curve: GriddedCurve; remarks: Remark[] } {
  const points = bySpeed(holds).map((group) => group.flatMap(settledRows));
  const meansOf = (values: Float64Array) =>
    Float64Array.from(points, (rows) => mean(rows.map((row) => values[row]!)));
  const gridded = new Map<ChannelMeaning, Float64Array>();
  for (const [meaning, values] of channels) {
    if (meaning === 'time' || meaning === 'engineSpeed' || meaning === 'other') continue;
    gridded.set(meaning, meansOf(values));
  }
  const engineSpeedRpm = meansOf(speedRpm);
  const curve: GriddedCurve = {
    kindOfRows: 'points',
    binWidthRpm: Math.round(medianSpacingRpm(engineSpeedRpm)),
    engineSpeedRpm,
    count: Float64Array.from(points, (rows) => rows.length),
    channels: gridded,
  };
  return { curve, remarks: points.length < holds.length ? [heldTwice(holds)] : [] };
}

function bySpeed(holds: readonly Hold[]): Hold[][] {
  const groups: Hold[][] = [];
  for (const hold of [...holds].sort((a, b) => a.speedRpm - b.speedRpm)) {
    const last = groups.at(-1);
    if (last?.[0] && hold.speedRpm - last[0].speedRpm <= 2 * HELD_WITHIN_RPM) last.push(hold);
    else groups.push([hold]);
  }
  return groups;
}

const settledRows = ({ settledFrom, toRow }: Hold): number[] =>
  Array.from({ length: toRow - settledFrom + 1 }, (_, at) => settledFrom + at);

function heldTwice(holds: readonly Hold[]): Remark {
  const twice = bySpeed(holds).filter((group) => group.length > 1);
  const message = said`${twice.length} speeds were held more than once (first: ${speedFigure(twice[0]![0]!.speedRpm)}). Their rows are averaged together.`;
  return remark('note', 'speed-given-twice', message);
}
