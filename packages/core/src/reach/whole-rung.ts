import { speedFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { type LimitFinding, limitFindings } from '../rule/index.ts';
import { costOf } from './chosen.ts';
import { fuelCautions } from './fuel-cautions.ts';
import { groundOfNow, weakestGround } from './ground.ts';
import { type Judged, judged } from './judged.ts';
import { onceEach } from './made-engine.ts';
import type { Banded, ReachChange, ReachInput, Rung } from './model.ts';
import { isHotterWith } from './part-changes.ts';
import type { Picked } from './picked.ts';
import { rungCurve } from './rung-curve.ts';
import { rungId } from './rung-id.ts';
import type { SearchGround } from './search-ground.ts';

/** A rung before its bands, with the places of its parts in the lists of the input. */
export interface LadderRung extends Rung {
  picked: Picked;
}

/** Beside a figure of which no band was drawn yet. */
export const unbanded = (value: number): Banded => ({ value, low: value, high: value });

/** A set of changes solved at all speeds. `null`: its sheet cannot be matched. */
export function wholeRung(ground: SearchGround, picked: Picked): LadderRung | null {
  const one = judged(ground, picked);
  return one === null ? null : rungOf(ground, one);
}

export function rungOf({ input }: SearchGround, one: Judged): LadderRung {
  const { made, match, curve, at, figure, peak } = one;
  const { build, changes } = made;
  const limits = limitFindings(one.readings, at, input.thresholds).sort((a, b) => a.margin - b.margin);
  const isPulled = build.change === null && input.measuredNow !== null;
  return {
    id: rungId(changes),
    picked: one.picked,
    changes,
    buildId: build.id,
    made: { match, sheet: made.sheet, supply: made.supply },
    reached: unbanded(figure),
    peakPower: { ...unbanded(peak.value), atRpm: peak.atRpm },
    highestBoost: match === null ? null : highestBoost(one),
    chance: one.reaches ? 1 : 0,
    reaches: one.reaches && one.holds,
    cost: costOf(changes),
    bindsFirst: firstToBind(limits),
    limits,
    curve: rungCurve(curve, {
      factor: input.standard.factor,
      supply: made.supply,
      isCharged: match !== null,
    }),
    fuelEffect: one.fuelEffect,
    ground: weakestGround([
      groundOfNow(build, isPulled),
      ...changes.filter(({ part }) => !FOLLOWING.has(part)).map((change) => change.ground),
    ]),
    assumptions: onceEach([
      ...made.assumptions,
      ...made.supply.assumptions,
      ...beyondMap(one),
      ...(one.picked.fuel === null ? [] : fuelCautions(made.supply.fuel)),
      ...hotterCharge(input, one),
    ]),
  };
}

/** Parts that make no power: what is known of them says nothing of the figure. */
const FOLLOWING: ReadonlySet<ReachChange['part']> = new Set(['injectors', 'pump', 'belt']);

/** The nearest of those that a plan may not pass; `limits` stand nearest first. */
const firstToBind = (limits: readonly LimitFinding[]): LimitFinding | null =>
  limits.find(({ binds }) => binds) ?? null;

function highestBoost({ curve }: Judged): Rung['highestBoost'] {
  const { boost } = curve.figures;
  let best = -1;
  for (let node = 0; node < boost.length; node++)
    if (Number.isFinite(boost[node]) && (best < 0 || boost[node]! > boost[best]!)) best = node;
  return best < 0 ? null : { ...unbanded(boost[best]!), atRpm: curve.engineSpeedRpm[best]! };
}

function hotterCharge({ coolers }: ReachInput, { picked, made }: Judged): Remark[] {
  if (picked.cooler === null || !isHotterWith(coolers[picked.cooler]!, made.build)) return [];
  return [
    remark(
      'caution',
      'rung-charge-hotter',
      'The charge gets hotter than it was pulled with and asks for a later spark; what that costs is not in the figure.',
    ),
  ];
}

/** What lies where nothing of the map was measured is reckoned beyond it. */
function beyondMap({ curve }: Judged): Remark[] {
  const speeds = curve.engineSpeedRpm.filter((_, node) => curve.state[node] === 'beyond the measured map');
  if (speeds.length === 0) return [];
  return [
    remark(
      'caution',
      'rung-beyond-measured-map',
      said`From ${speedFigure(speeds[0]!)} to ${speedFigure(speeds.at(-1)!)} it runs, at least in part, beyond what was measured of the compressor’s map; there the map is continued, not known.`,
    ),
  ];
}
