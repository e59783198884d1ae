import { figureOf, INCH, METRE_OF_WATER, numberFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import type { CombinationSheet } from './model.ts';
import { sheetNumber, sheetValue } from './sheet-number.ts';

/** Density of the air at a bench, kg/m³: about 21 °C at sea level. A bench's own figure is seldom told; 5 % of it moves speed 2.5 %. */
const BENCH_AIR_DENSITY = 1.2;

/** Test pressure flows are set side by side at, Pa: 28 inches of water, the commonest. Common practice, no source. */
export const COMMON_TEST_PRESSURE = 28 * INCH * METRE_OF_WATER;

/** A curtain lets through no more than this of the ideal flow. Common practice, no source. */
const HIGHEST_COEFFICIENT = 0.85;

/** Flow at another test pressure, m³/s: it goes with the root of the pressure. From 10 to 28 inches of water it is 1.673 times. */
export function flowAtPressure(flow: number, measuredAt: number, wanted: number): number {
  return flow * Math.sqrt(wanted / measuredAt);
}

/** Speed that air reaches from rest through a pressure difference without loss, m/s: √(2 Δp / ρ). At 6974 Pa it is 107.8. */
export function idealSpeed(pressureDifference: number, density: number = BENCH_AIR_DENSITY): number {
  return Math.sqrt((2 * pressureDifference) / density);
}

/** Share of the ideal flow that passes the curtain of one or several equal valves: Q / (v n π d L). */
export function curtainCoefficient(
  flow: number,
  pressureDifference: number,
  valve: { diameter: number; lift: number; count: number },
): number {
  return flow / (idealSpeed(pressureDifference) * valve.count * Math.PI * valve.diameter * valve.lift);
}

/** One point of a flow sheet with what follows from it, SI; `null`: an input is not known. */
export interface FlowPoint {
  lift: number;
  flow: number;
  /** At 28 inches of water. */
  flowAtCommonPressure: number | null;
  coefficient: number | null;
  liftToDiameter: number | null;
}

export type FlowField = 'flowIntake' | 'flowExhaust';
export const FLOW_FIELDS: readonly FlowField[] = ['flowIntake', 'flowExhaust'];

/** The points of a flow sheet with flow at the common test pressure and curtain coefficient; empty without a flow sheet. */
export function flowPoints(sheet: CombinationSheet, field: FlowField): FlowPoint[] {
  const table = sheetValue(sheet, 'heads', field)?.table;
  if (!table) return [];
  const pressure = table.details.testPressure?.value ?? null;
  const side = field === 'flowIntake' ? 'intake' : 'exhaust';
  const diameter = sheetNumber(sheet, 'heads', `${side}ValveDiameter`);
  const count = valvesOf(sheet, side);
  const flows = table.columns[1]!.values;
  return table.columns[0]!.values.map((lift, index) => {
    const flow = flows[index]!;
    return {
      lift,
      flow,
      flowAtCommonPressure: pressure === null ? null : flowAtPressure(flow, pressure, COMMON_TEST_PRESSURE),
      coefficient:
        pressure === null || diameter === null || lift === 0
          ? null
          : curtainCoefficient(flow, pressure, { diameter, lift, count }),
      liftToDiameter: diameter === null ? null : lift / diameter,
    };
  });
}

/** Valves of one side in a cylinder: of five, three let in. One where it is not told. */
function valvesOf(sheet: CombinationSheet, side: 'intake' | 'exhaust'): number {
  const all = sheetNumber(sheet, 'heads', 'valvesPerCylinder') ?? 2;
  return side === 'intake' ? Math.ceil(all / 2) : Math.max(1, Math.floor(all / 2));
}

/** Points that let more through than a curtain can: most likely the pressure, the lift or the valve is another. */
export function flowRemarks(sheet: CombinationSheet): Remark[] {
  return FLOW_FIELDS.flatMap((field) => {
    const high = flowPoints(sheet, field).filter(
      ({ coefficient }) => (coefficient ?? 0) > HIGHEST_COEFFICIENT,
    );
    const [worst] = high.toSorted((one, other) => other.coefficient! - one.coefficient!);
    if (worst === undefined) return [];
    const side = field === 'flowIntake' ? 'intake' : 'exhaust';
    const lift = figureOf(worst.lift, 'length', { plain: `${(worst.lift * 1000).toFixed(1)} mm` });
    const message = said`heads.${field}: at ${lift} the ${side} flow is ${numberFigure(worst.coefficient!, 2)} of the ideal one through the valve's curtain; above ${numberFigure(HIGHEST_COEFFICIENT, 2)} is not believable. It is kept: check the test pressure, the units, and the valve's diameter and number.`;
    return [remark('caution', 'flow-beyond-curtain', message)];
  });
}
