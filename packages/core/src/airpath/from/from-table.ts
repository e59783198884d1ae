import type { AirState } from '../../air/index.ts';
import { figureOf } from '../../quantity/index.ts';
import { accepted, type Remark, type Result, refused, remark, said } from '../../remark/index.ts';
import type { Baseline } from '../model.ts';
import { airFlowFigure } from '../way/air-flow-figure.ts';
import { motoredFriction } from './assumed-friction.ts';
import {
  airFromPower,
  airOfPower,
  assumedManifoldPressure,
  frictionAssumed,
  manifoldPressureAssumed,
  manifoldTemperatureAssumed,
} from './baseline-parts.ts';

/** A baseline as somebody wrote it down, inside units; `null`: not known. */
export interface BaselineTable {
  /** r/min */
  engineSpeedRpm: number[];
  /** As observed in `air`, W */
  brakePower: number[];
  airFlow: number[] | null;
  frictionPower: number[] | null;
  manifoldPressure: number[] | null;
  manifoldTemperature: number[] | null;
  lambda: number[] | null;
  air: AirState;
  /** For friction where it is not in the table; m³ */
  displacement: number;
  compressionRatio: number | null;
}

/**
 * A baseline from a table; what is not in it is assumed, each with a remark.
 *
 * @example baselineFromTable({ engineSpeedRpm: [2000, 4000], brakePower: [55e3, 120e3], airFlow: null, … })
 */
export function baselineFromTable(table: BaselineTable): Result<Baseline> {
  const order = table.engineSpeedRpm.map((_, row) => row).sort(bySpeed(table.engineSpeedRpm));
  const engineSpeedRpm = order.map((row) => table.engineSpeedRpm[row]!);
  const sorted = (values: readonly number[]) => order.map((row) => values[row]!);
  const optional = (values: readonly number[] | null) => (values === null ? null : sorted(values));
  const brakePower = sorted(table.brakePower);
  const refusal = refusalOfRows(engineSpeedRpm, { brakePower, airFlow: optional(table.airFlow) });
  if (refusal !== null) return refused(refusal);

  const remarks: Remark[] = [];
  const taken = (known: number[] | null, assumed: () => number[], because: Remark) => {
    if (known !== null) return known;
    remarks.push(because);
    return assumed();
  };
  const { air, displacement, compressionRatio } = table;
  const frictionPower = taken(
    optional(table.frictionPower),
    () => engineSpeedRpm.map((speed) => motoredFriction(displacement, speed)),
    frictionAssumed,
  );
  const airFlow = taken(
    optional(table.airFlow),
    () => brakePower.map((power, row) => airOfPower(power + frictionPower[row]!, compressionRatio)),
    airFromPower(compressionRatio),
  );
  return accepted(
    {
      engineSpeedRpm,
      brakePower,
      airFlow,
      frictionPower,
      manifoldPressure: taken(
        optional(table.manifoldPressure),
        () => assumedManifoldPressure(airFlow, air),
        manifoldPressureAssumed,
      ),
      manifoldTemperature: taken(
        optional(table.manifoldTemperature),
        () => engineSpeedRpm.map(() => air.temperature),
        manifoldTemperatureAssumed(air),
      ),
      lambda: optional(table.lambda),
      air,
      airBasis: table.airFlow === null ? 'torque and efficiency' : 'given',
      origin: 'given',
      pullIds: [],
    },
    remarks,
  );
}

const bySpeed = (speeds: readonly number[]) => (one: number, other: number) => speeds[one]! - speeds[other]!;

function refusalOfRows(
  speeds: readonly number[],
  { brakePower, airFlow }: { brakePower: readonly number[]; airFlow: readonly number[] | null },
): Remark | null {
  if (speeds.length < 2)
    return remark(
      'refusal',
      'baseline-too-short',
      `The table of the engine without supercharger has ${speeds.length} ${speeds.length === 1 ? 'row' : 'rows'}; at least two engine speeds are needed.`,
    );
  const twice = speeds.findIndex((speed, row) => row > 0 && !(speed > speeds[row - 1]!));
  if (twice >= 0)
    return remark(
      'refusal',
      'baseline-speed-twice',
      said`${figureOf(speeds[twice]!, 'engineSpeed')} stands twice in the table of the engine without supercharger. Leave one row out.`,
    );
  const odd = speeds.findIndex(
    (speed, row) => !(speed > 0 && brakePower[row]! > 0 && (airFlow === null || airFlow[row]! > 0)),
  );
  if (odd < 0) return null;
  return remark(
    'refusal',
    'baseline-not-above-zero',
    said`At ${figureOf(speeds[odd]!, 'engineSpeed')} the table of the engine without supercharger has ${figureOf(brakePower[odd]!, 'power')}${airFlow === null ? '' : said` on ${airFlowFigure(airFlow[odd]!)} of air`}; speed, power and air must be above zero. Mend or leave out that row.`,
  );
}
