import { extentOf } from '../numeric/extent.ts';
import { median } from '../numeric/median.ts';
import {
  FOOT,
  MECHANICAL_HORSEPOWER,
  METRIC_HORSEPOWER,
  numberFigure,
  POUND_FORCE,
  percentFigure,
  powerFromTorque,
  torqueFromPower,
} from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';

/** How far given power may stand from torque × speed (common practice, no source). */
const IDENTITY_SHARE = 0.005;

const POUND_FOOT_NM = POUND_FORCE * FOOT;
const HORSEPOWER_KW = MECHANICAL_HORSEPOWER / 1000;
const METRIC_HORSEPOWER_KW = METRIC_HORSEPOWER / 1000;

/** What the ratio power / (torque × speed) becomes when a column's unit is taken for another. */
const UNIT_MIXES: readonly { ratio: number; says: string }[] = [
  { ratio: POUND_FOOT_NM, says: 'torque in lb-ft that was read as N·m' },
  { ratio: 1 / POUND_FOOT_NM, says: 'torque in N·m that was read as lb-ft' },
  { ratio: 1 / HORSEPOWER_KW, says: 'power in hp that was read as kW' },
  { ratio: HORSEPOWER_KW, says: 'power in kW that was read as hp' },
  { ratio: 1 / METRIC_HORSEPOWER_KW, says: 'power in metric horsepower that was read as kW' },
  { ratio: METRIC_HORSEPOWER_KW, says: 'power in kW that was read as metric horsepower' },
  { ratio: HORSEPOWER_KW / METRIC_HORSEPOWER_KW, says: 'power in metric horsepower that was read as hp' },
  { ratio: METRIC_HORSEPOWER_KW / HORSEPOWER_KW, says: 'power in hp that was read as metric horsepower' },
];

/**
 * Torque of every row, N·m: as measured, or from power where there is only that. Where both are given they are held
 * against power = torque × speed, and torque is used. `null`: neither is there.
 */
export function torqueOfRows(
  speedRpm: Float64Array,
  torque: Float64Array | null,
  power: Float64Array | null,
): { torque: Float64Array | null; source: 'torque' | 'power' | null; remarks: Remark[] } {
  if (torque !== null)
    return { torque, source: 'torque', remarks: power === null ? [] : identity(speedRpm, torque, power) };
  if (power !== null)
    return {
      torque: power.map((value, row) => torqueFromPower(value, speedRpm[row]!)),
      source: 'power',
      remarks: [],
    };
  return { torque: null, source: null, remarks: [] };
}

/** Remarks where given power is not torque × speed; a unit mix is named where one explains it. */
function identity(speedRpm: Float64Array, torque: Float64Array, power: Float64Array): Remark[] {
  const [, highest] = extentOf(torque);
  const ratios = power.map((value, row) =>
    torque[row]! > 0.1 * highest ? value / powerFromTorque(torque[row]!, speedRpm[row]!) : Number.NaN,
  );
  const ratio = median(ratios);
  if (!Number.isFinite(ratio) || Math.abs(ratio - 1) <= IDENTITY_SHARE) return [];
  const nearest = UNIT_MIXES.reduce((a, b) => (distance(ratio, b.ratio) < distance(ratio, a.ratio) ? b : a));
  const mix = distance(ratio, nearest.ratio) <= IDENTITY_SHARE;
  return [
    remark(
      'caution',
      mix ? 'unit-mix' : 'power-is-not-torque-times-speed',
      said`Power given is ${numberFigure(ratio, 3)} times torque × speed; ${percentFigure(IDENTITY_SHARE, 1)} off is allowed. ${
        mix
          ? `That is what ${nearest.says} gives: check the units of both columns.`
          : 'Check the units, and whether only one of the two was corrected for weather.'
      } The curve uses torque.`,
    ),
  ];
}

const distance = (ratio: number, other: number) => Math.abs(ratio / other - 1);
