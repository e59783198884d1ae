import { toInside } from '@pullbook/core/quantity';

/** Spellings tried for torque and power without a unit. */
const TORQUE_UNITS = ['N·m', 'lb-ft', 'kgf·m'] as const;
const POWER_UNITS = ['kW', 'hp', 'PS', 'W'] as const;

/** Rows agree with one constant when they scatter less than this about it, rounding of the figures apart (rule V01). */
const AGREEMENT = 0.005;
/** Nearest pair of units lies this close to the constant found, or none is meant. */
const NEAREST = 0.004;

export interface UnitPair {
  torqueUnit: string;
  powerUnit: string;
}

export interface IdentityAnswer {
  /** Power ÷ (torque × engine speed in r/min), in the file's own units. */
  constant: number;
  /** Pairs of units under which the figures agree, the nearest first; empty: the constant is that of no pair. */
  pairs: UnitPair[];
  rows: number;
}

/**
 * Whether three columns keep power = torque × angular speed, and under which units: `null` where the ratio is not one
 * constant over the rows. The constant tells the units apart: 1/9549.3 is N·m with kW, 1/5252.1 lb-ft with hp,
 * 1/7023.5 N·m with metric horsepower.
 */
export function powerIdentity(
  engineSpeedRpm: Float64Array,
  torque: Float64Array,
  power: Float64Array,
): IdentityAnswer | null {
  const ratios: number[] = [];
  let sumOfPower = 0;
  let sumOfProduct = 0;
  const enough = 0.2 * largest(power);
  for (let row = 0; row < power.length; row++) {
    const product = (engineSpeedRpm[row] ?? Number.NaN) * (torque[row] ?? Number.NaN);
    const shown = power[row] ?? Number.NaN;
    if (!(product > 0) || !(shown > enough)) continue;
    ratios.push(shown / product);
    sumOfPower += shown;
    sumOfProduct += product;
  }
  if (ratios.length < 2) return null;
  const constant = sumOfPower / sumOfProduct;
  const rounding = shareOfRounding(torque) + shareOfRounding(power) + shareOfRounding(engineSpeedRpm);
  const deviations = ratios.map((ratio) => Math.abs(ratio / constant - 1)).sort((a, b) => a - b);
  const nineTenths = deviations[Math.floor(0.9 * (deviations.length - 1))] ?? 1;
  if (nineTenths > AGREEMENT + rounding) return null;
  return { constant, pairs: pairsNear(constant), rows: ratios.length };
}

/** Power ÷ (torque × r/min) for a pair of units. */
export function identityConstant({ torqueUnit, powerUnit }: UnitPair): number {
  const wattPerRpm = toInside(1, torqueUnit, 'torque') * ((2 * Math.PI) / 60);
  return wattPerRpm / toInside(1, powerUnit, 'power');
}

function pairsNear(constant: number): UnitPair[] {
  const near = TORQUE_UNITS.flatMap((torqueUnit) =>
    POWER_UNITS.map((powerUnit) => {
      const pair = { torqueUnit, powerUnit };
      return { pair, off: Math.abs(Math.log(constant / identityConstant(pair))) };
    }),
  )
    .filter(({ off }) => off < NEAREST)
    .sort((a, b) => a.off - b.off);
  const best = near[0];
  if (!best) return [];
  // A second pair stays in question unless the first lies clearly nearer (N·m with PS and lb-ft with kW are 0.28 % apart).
  return near.filter(({ off }) => off < 2 * best.off + 2e-4).map(({ pair }) => pair);
}

function largest(values: Float64Array): number {
  let high = 0;
  for (const value of values) if (value > high) high = value;
  return high;
}

/** Half of the last digit shown, as a share of a middling value: what rounding alone does to one figure. */
function shareOfRounding(values: Float64Array): number {
  const shown = values.filter((value) => value > 0);
  if (shown.length === 0) return 0;
  const middling = [...shown].sort((a, b) => a - b)[shown.length >> 1] as number;
  for (const step of [10, 1, 0.1, 0.01]) {
    if (shown.every((value) => Math.abs(value / step - Math.round(value / step)) < 1e-6))
      return step / 2 / middling;
  }
  return 0;
}
