import { sheetNumber } from '../combination/index.ts';
import { rootInBracket } from '../numeric/index.ts';
import { type LimitFinding, type LimitId, limitFindings } from '../rule/index.ts';
import { withBands } from './banded-rung.ts';
import { goesByDiameters } from './drive-change.ts';
import { type Judged, judged } from './judged.ts';
import type { ReachInput, WhatIsLeft } from './model.ts';
import type { DriveChoice } from './picked.ts';
import { SCREENED_NODES } from './screen.ts';
import { type SearchGround, searchGround } from './search-ground.ts';
import { type LadderRung, rungOf } from './whole-rung.ts';

/** How far from the ratio that is there others are looked at, and in how many steps. */
const SLOWEST = 0.6;
const FASTEST = 1.6;
const STEPS = 10;

/**
 * What is left in a supercharger with all else as it is now: turned ever faster until the first limit that binds stops it, or until faster makes
 * no more power. `null`: no supercharger, or its ratio cannot be changed by what the sheet tells.
 */
export function whatIsLeft(input: ReachInput, place: number): WhatIsLeft | null {
  const build = input.builds[place]!;
  const ratioNow =
    build.match === null ? null : build.match.input.drive.pulleyRatio * build.match.input.drive.stepUp;
  const choiceAt = choiceFor(build);
  if (ratioNow === null || choiceAt === null) return null;
  const alone = asItIs(input, build);
  // Few speeds, yet every limit: the spark too where another is passed already.
  const thin = { ...searchGround(alone, SCREENED_NODES), isRough: false };
  const at = (ground: SearchGround, drive: DriveChoice | null): Judged | null =>
    judged(ground, { build: place, drive, cooler: null, fuel: null, breathing: [], speedLimit: null });
  const near = (ratio: number) => at(thin, choiceAt(ratio));

  const ratios = Array.from(
    { length: STEPS + 1 },
    (_, step) => ratioNow * (SLOWEST + ((FASTEST - SLOWEST) * step) / STEPS),
  );
  const looked = ratios.flatMap((ratio) => {
    const one = near(ratio);
    return one === null ? [] : [{ ratio, one }];
  });
  const stops = stopsAmong(looked, near, alone);
  const first = stops[0]?.ratio ?? Number.POSITIVE_INFINITY;
  const within = looked.filter(({ ratio }) => ratio <= first);
  const peakAt = (one: { one: Judged }) => one.one.peak.value;
  const best = within.reduce<(typeof looked)[number] | null>(
    (most, one) => (most === null || peakAt(one) > peakAt(most) ? one : most),
    null,
  );
  const atStop = Number.isFinite(first) ? near(first) : null;
  const isStopped = atStop !== null && (best === null || atStop.peak.value >= peakAt(best));
  const ratio = isStopped ? first : best?.ratio;
  if (ratio === undefined) return null;

  const ground = searchGround(alone);
  const most = at(ground, choiceAt(ratio));
  if (most === null) return null;
  const rung = withBands(ground, most, rungOf(ground, most));
  const choice = choiceAt(ratio);
  return {
    buildId: build.id,
    name: build.name,
    most: {
      overallRatio: ratio,
      blowerPulleyDiameter: choice.by === 'blowerPulley' ? choice.size : null,
      peakPower: rung.peakPower,
    },
    buyable: buyableOf(ground, place, ratio),
    stoppedBy: isStopped ? (stops[0]?.limit ?? null) : chokeOf(most, alone),
    stops: stops.map(({ limit, ratio: overallRatio, peakPower }) => ({ limit, overallRatio, peakPower })),
    curve: rung.curve,
  };
}

/** Faster makes no more: where the compressor's flow is at its end that is what stops it. */
function chokeOf({ readings, at }: Judged, { thresholds }: ReachInput): LimitFinding | null {
  const choked = readings.filter(({ id, margin }) => id === 'choke' && margin < 0);
  return limitFindings(choked, at, thresholds)[0] ?? null;
}

/**
 * The figure is the peak, and all else as it is: nothing follows of itself. Of a supercharger that is still to be fitted, what has to come with
 * it comes.
 */
const asItIs = (input: ReachInput, { isPresent }: ReachInput['builds'][number]): ReachInput => ({
  ...input,
  target: { ...input.target, what: 'peak power', atRpm: null, windowRpm: null },
  ...(isPresent ? { injectors: [], pumps: [], beltRibs: [] } : {}),
});

/** How any ratio is had: by the blower's pulley, else by the step-up. */
function choiceFor(build: ReachInput['builds'][number]): ((ratio: number) => DriveChoice) | null {
  const { sheet, match, madeOf } = build;
  if (match === null) return null;
  const { pulleyRatio, stepUp } = match.input.drive;
  const blower = sheetNumber(sheet, 'drive', 'blowerPulleyDiameter');
  if (goesByDiameters(build) && blower !== null)
    return (ratio) => ({ by: 'blowerPulley', size: (blower * pulleyRatio * stepUp) / ratio });
  if (madeOf?.stated?.stepUp !== undefined || sheetNumber(sheet, 'supercharger', 'stepUp') === null)
    return null;
  return (ratio) => ({ by: 'stepUp', size: ratio / pulleyRatio });
}

interface Stop {
  limit: LimitFinding;
  ratio: number;
  peakPower: number;
}

/** Where each limit that binds is met as the drive turns faster, the nearest first. */
function stopsAmong(
  looked: readonly { ratio: number; one: Judged }[],
  near: (ratio: number) => Judged | null,
  { thresholds }: ReachInput,
): Stop[] {
  const ids = new Set(
    looked.flatMap(({ one }) => one.readings.filter(({ binds }) => binds).map(({ id }) => id)),
  );
  return [...ids]
    .flatMap((id) => {
      const ratio = ratioOfStop(id, looked, near);
      const one = ratio === null ? null : near(ratio);
      const reading = one?.readings.find((other) => other.id === id);
      if (ratio === null || one === null || reading === undefined) return [];
      const [limit] = limitFindings([reading], one.at, thresholds);
      return limit === undefined ? [] : [{ limit, ratio, peakPower: one.peak.value }];
    })
    .sort((a, b) => a.ratio - b.ratio || (a.limit.id < b.limit.id ? -1 : 1));
}

/** `null`: it stops nothing among the ratios looked at. */
function ratioOfStop(
  id: LimitId,
  looked: readonly { ratio: number; one: Judged }[],
  near: (ratio: number) => Judged | null,
): number | null {
  const marginOf = (one: Judged | null): number =>
    one?.readings.find((reading) => reading.id === id && reading.binds)?.margin ?? Number.NaN;
  const passed = looked.findIndex(({ one }) => marginOf(one) < 0);
  if (passed < 0) return null;
  const above = looked[passed]!;
  const below = looked[passed - 1];
  if (below === undefined || !(marginOf(below.one) >= 0)) return above.ratio;
  return rootInBracket((ratio) => -marginOf(near(ratio)), { low: below.ratio, high: above.ratio });
}

/** The fastest pulley of the list, or the one that is there, that keeps within. */
function buyableOf(ground: SearchGround, place: number, mostRatio: number): WhatIsLeft['buyable'] {
  const build = ground.input.builds[place]!;
  const { pulleyRatio, stepUp } = build.match!.input.drive;
  const present = sheetNumber(build.sheet, 'drive', 'blowerPulleyDiameter');
  const sizes = ground.sizes(place, 'blowerPulley');
  if (present === null || sizes.length === 0) return null;
  const all = [
    ...sizes.map(({ ratio, size }) => ({
      ratio,
      drive: { by: 'blowerPulley', size } as DriveChoice | null,
      size,
    })),
    { ratio: pulleyRatio * stepUp, drive: null, size: present },
  ]
    .filter(({ ratio }) => ratio <= mostRatio)
    .sort((a, b) => b.ratio - a.ratio);
  for (const { drive, size } of all) {
    const one = judged(ground, {
      build: place,
      drive,
      cooler: null,
      fuel: null,
      breathing: [],
      speedLimit: null,
    });
    if (one === null || !one.holds) continue;
    const rung: LadderRung = withBands(ground, one, rungOf(ground, one));
    return { blowerPulleyDiameter: size, peakPower: rung.peakPower };
  }
  return null;
}
