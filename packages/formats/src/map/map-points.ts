import { densityOfMoistAir } from '@pullbook/core/air';
import { airFlowFigure, type MapPoint, type MapReference } from '@pullbook/core/airpath';
import { absolutePressure, speedFigure, temperature } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, refused, remark, said } from '@pullbook/core/remark';
import { atLine, type HeadedTable, type ReadColumn } from '../table/headed-table.ts';

/** What a table of points is read with. */
export interface PointsOf {
  reference: MapReference;
  /** m; `null`: not known */
  wheelExitDiameter: number | null;
  /** r/min to which a speed in per cent is told; `null`: not told */
  designSpeedRpm: number | null;
  /** The table in messages. */
  what: string;
}

/**
 * Points of a map from its table, brought to kg/s, r/min and shares. A volume flow is at the reference; a tip speed needs the
 * wheel's diameter, a speed in per cent the design speed. Refused with the line: per cent and shares in one column.
 */
export function mapPoints({ columns, lines }: HeadedTable, of: PointsOf): Result<MapPoint[]> {
  const speeds = speedsRpm(columns.get('speed')!, of);
  if (!speeds.ok) return speeds;
  const efficiency = efficiencies(columns.get('efficiency'), lines, of.what);
  if (!efficiency.ok) return efficiency;
  const flow = columns.get('flow')!;
  const remarks: Remark[] = [...efficiency.remarks];
  const density = densityAt(of.reference);
  if (flow.kind === 'volumeFlow')
    remarks.push(
      remark(
        'note',
        'map-volume-flow',
        `${of.what}: flow in ${flow.unit.name} is taken as a volume of dry air at the map's reference. If it is told at another state, write it as a mass flow.`,
      ),
    );
  const factor = flow.kind === 'volumeFlow' ? density : 1;
  const points = lines.map((_, row) => ({
    flow: flow.values[row]! * factor,
    pressureRatio: columns.get('pressureRatio')!.values[row]!,
    speedRpm: speeds.value[row]!,
    efficiency: efficiency.value[row]!,
  }));
  const odd = points.findIndex(
    ({ flow: kgPerS, speedRpm }) => !(kgPerS <= 50 && speedRpm >= 1 && speedRpm <= 500_000),
  );
  if (odd < 0) return accepted(points, remarks);
  const { flow: kgPerS, speedRpm } = points[odd]!;
  const message = said`${of.what}: ${airFlowFigure(kgPerS)} at ${speedFigure(speedRpm)} cannot be of a supercharger. Check the units of flow and speed, the wheel's diameter and the design speed.`;
  return refused(remark('refusal', 'map-point-impossible', message, atLine(lines[odd])));
}

/** kg/m³ of dry air */
function densityAt(reference: MapReference): number {
  return densityOfMoistAir({
    dryPressure: absolutePressure(reference.pressure),
    vapourPressure: absolutePressure(0),
    temperature: temperature(reference.temperature),
  });
}

function speedsRpm(
  { kind, unit, values }: ReadColumn,
  { wheelExitDiameter, designSpeedRpm, what }: PointsOf,
): Result<number[]> {
  const given = values as number[];
  const needs = (words: string, line: string) =>
    refused(
      remark(
        'refusal',
        'map-speed-needs',
        `${what}: its speed is told in ${unit.name === '' ? 'shares' : unit.name}, which needs ${words}. Write a line such as "${line}" above the table, or the speed in rpm.`,
      ),
    );
  if (kind === 'engineSpeed') return accepted(given);
  if (kind === 'ratio')
    return designSpeedRpm === null
      ? needs('the design speed', '# design speed: 48000 rpm')
      : accepted(given.map((share) => share * designSpeedRpm));
  if (wheelExitDiameter === null) return needs("the wheel's exit diameter", '# wheel exit diameter: 105 mm');
  return accepted(given.map((tipSpeed) => (60 * tipSpeed) / (Math.PI * wheelExitDiameter)));
}

/** Above: no share; below: no per cent anybody gives of a compressor. */
const HIGHEST_SHARE = 1;

function efficiencies(
  column: ReadColumn | undefined,
  lines: HeadedTable['lines'],
  what: string,
): Result<(number | null)[]> {
  if (column === undefined) return accepted(lines.map(() => null));
  const isPerCent = column.unit.factor !== 1;
  // As written.
  const written = column.values.map((value) => (value === null ? null : value / column.unit.factor));
  const given = written.flatMap((value, row) => (value === null ? [] : [{ value, line: lines[row]! }]));
  const shares = given.filter(({ value }) => value <= HIGHEST_SHARE);
  const perCent = given.filter(({ value }) => value > HIGHEST_SHARE);
  if (shares.length > 0 && perCent.length > 0) {
    const [first, other] = [shares[0]!, perCent[0]!];
    const odd = shares.length < perCent.length ? first : other;
    const message = `${what}: efficiency ${round(odd.value)} stands in one column with ${round((odd === first ? other : first).value)}: some are shares of 1, some per cent. Write all of them alike, under "efficiency [%]" or "efficiency".`;
    return refused(remark('refusal', 'map-efficiency-mixed', message, atLine(odd.line)));
  }
  if (isPerCent && shares.length > 0) {
    const message = `${what}: efficiency of ${round(shares[0]!.value)} % cannot be; under "efficiency [%]" it reads like 74. Write "efficiency" over shares of 1.`;
    return refused(remark('refusal', 'map-efficiency-mixed', message, atLine(shares[0]!.line)));
  }
  const asShares = isPerCent
    ? column.values
    : perCent.length > 0
      ? written.map((value) => value && value / 100)
      : written;
  const odd = asShares.findIndex((value) => value !== null && (value < 0.05 || value > 0.95));
  if (odd >= 0) {
    const message = `${what}: efficiency of ${round(asShares[odd]! * 100)} % cannot be; allowed is 5 to 95 %. Check the number.`;
    return refused(remark('refusal', 'map-efficiency-impossible', message, atLine(lines[odd])));
  }
  const isGuessed = !isPerCent && perCent.length > 0;
  const guess = remark(
    'note',
    'map-efficiency-per-cent',
    `${what}: its efficiencies are above 1 and taken as per cent.`,
  );
  return accepted(asShares, isGuessed ? [guess] : []);
}

const round = (value: number): number => Number(value.toPrecision(4));
