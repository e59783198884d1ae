import { figureOf, numberFigure, percentFigure } from '../../quantity/index.ts';
import { joined, type Remark, remark, type Said, said } from '../../remark/index.ts';
import type { MapPoint } from '../model.ts';
import { airFlowFigure } from '../way/air-flow-figure.ts';

/** Every remark about a map, by name. Points go by their number in the table, from 1. */
export const mapMessage = {
  referenceMissing: (pressure: number, temperature: number): Remark =>
    remark(
      'refusal',
      'map-reference-missing',
      said`The map's reference state is ${figureOf(pressure, 'absolutePressure', plainIf(pressure))} and ${figureOf(temperature, 'temperature', plainIf(temperature))}; allowed are 50 to 120 kPa absolute and -40 to 60 °C. Flow and speed mean nothing without it: copy it from the map's sheet (often 101.325 kPa and 15 °C, or 100 kPa and 25 °C).`,
    ),

  noPoints: (): Remark =>
    remark(
      'refusal',
      'map-without-points',
      'The map has no points. Give a table of points, or one rated point (flow, speed, pressure ratio, and the efficiency if known).',
    ),

  tooFewPoints: (count: number): Remark =>
    remark(
      'refusal',
      'map-too-few-points',
      `The map has ${count === 1 ? 'one point' : `${count} points`}; a table needs at least 3. Give one point as a rated point: the map is then scaled from a generic stage, and marked assumed.`,
    ),

  ratedNeedsOnePoint: (count: number): Remark =>
    remark(
      'refusal',
      'map-rated-needs-one-point',
      `A rated map has exactly one point; this one has ${count}. Keep the point that the maker rates it at, or give the map as a table of points.`,
    ),

  notANumber: (number: number, what: string, value: number): Remark =>
    remark(
      'refusal',
      'map-value-absurd',
      `Point ${number}: the ${what} is ${value}; it must be a number above 0. Correct it, or leave the point out.`,
    ),

  pressureRatioBelow1: (number: number, point: MapPoint): Remark =>
    remark(
      'refusal',
      'map-pressure-ratio-below-1',
      said`Point ${number} (${pointSaid(point)}): the pressure ratio is ${numberFigure(point.pressureRatio, 3)}; allowed is outlet over inlet pressure, both absolute, from 1 up. A gauge pressure must first be made absolute: (boost + barometer) / barometer. Leave out points beyond choke.`,
    ),

  pressureRatioAbsurd: (number: number, point: MapPoint): Remark =>
    remark(
      'refusal',
      'map-pressure-ratio-absurd',
      said`Point ${number} (${pointSaid(point)}): the pressure ratio is ${numberFigure(point.pressureRatio, 2)}; a single centrifugal stage does not go above 12. It looks like a pressure: divide it by the inlet pressure, both absolute.`,
    ),

  speedsInPerCent: (number: number, speed: number): Remark =>
    remark(
      'refusal',
      'map-speed-in-per-cent',
      said`Point ${number}: the speed is ${numberFigure(speed, 1)} rpm; an impeller turns at more than 500 rpm. If that is per cent of a design speed, give every speed in rpm.`,
    ),

  efficiencyInPerCent: (number: number, value: number): Remark =>
    remark(
      'refusal',
      'map-efficiency-in-per-cent',
      said`Point ${number}: the efficiency is ${numberFigure(value, 2)}; allowed are 0.05 to 0.95 as a fraction. All of them look like per cent: give them as per cent, or divide by 100.`,
    ),

  efficiencyMixed: (number: number, value: number, other: number, otherValue: number): Remark =>
    remark(
      'refusal',
      'map-efficiency-mixed',
      said`Point ${number} has an efficiency of ${numberFigure(value, 2)}, point ${other} one of ${numberFigure(otherValue, 2)}: per cent and fractions are mixed. Write all of them as fractions from 0.05 to 0.95.`,
    ),

  efficiencyAbsurd: (number: number, value: number): Remark =>
    remark(
      'refusal',
      'map-efficiency-absurd',
      said`Point ${number}: the efficiency is ${numberFigure(value, 3)}; allowed are 0.05 to 0.95 (no centrifugal stage is better). Correct it, or leave the efficiency of the point out.`,
    ),

  mixedFlowUnits: (speedRpm: number, factor: number, unit: string | null): Remark =>
    remark(
      'refusal',
      'map-flow-units-mixed',
      said`The line at ${speed(speedRpm)} has flows ${numberFigure(factor, factor < 10 ? 2 : 3)} times those that the other lines would have at its speed${unit === null ? '' : `: that is ${unit}`}. Give all flows in one unit, or correct the speed of that line.`,
    ),

  crossingLines: (low: number, high: number, at: MapPoint): Remark =>
    remark(
      'refusal',
      'map-lines-cross',
      said`The line at ${speed(high)} lies below that at ${speed(low)} at ${airFlowFigure(at.flow)} (pressure ratio ${numberFigure(at.pressureRatio, 3)}): a faster impeller always makes more. Correct the speeds or the points of these two lines; perhaps they are exchanged.`,
    ),

  duplicates: (numbers: readonly number[]): Remark =>
    remark(
      'note',
      'map-points-twice',
      `${numbers.length === 1 ? `Point ${numbers[0]} stands` : `Points ${numbers.join(', ')} stand`} in the table twice; each is counted once.`,
    ),

  farOff: (number: number, point: MapPoint, share: number): Remark =>
    remark(
      'caution',
      'map-point-far-off',
      said`Point ${number} (${pointSaid(point)}, pressure ratio ${numberFigure(point.pressureRatio, 3)}) lies ${percentFigure(share, 0)} off the lines that the other points make. Check it against the sheet.`,
    ),

  poorFit: (share: number): Remark =>
    remark(
      'caution',
      'map-meets-its-points-poorly',
      said`The fitted map lies ${percentFigure(share, 1)} off its own points (root mean square); good tables come within 1 %. Check units, speeds and the reference state; bands are widened by it.`,
    ),

  oneLine: (speedRpm: number): Remark =>
    remark(
      'caution',
      'map-one-line',
      said`All points are at one speed, ${speed(speedRpm)}. Other speeds follow from a usual stage and count as not measured.`,
    ),

  rated: (): Remark =>
    remark(
      'caution',
      'map-from-rated-point',
      'There is no table of points: the map is a generic stage scaled to the rated point, taken as its best efficiency. Its shape is assumed; a table of points would narrow the bands.',
    ),

  geometryOnly: (): Remark =>
    remark(
      'caution',
      'map-from-geometry',
      'There is neither a table nor a rated point: the map is a generic stage of these diameters, and its head is good to ±40 % only (95 of 100). A rated point would help most.',
    ),

  efficiencyGuessed: (value: number): Remark =>
    remark(
      'caution',
      'map-efficiency-guessed',
      said`The map gives no efficiency; ${numberFigure(value, 2)} is taken at its best (common practice, no source). Drive power and temperature rest on it.`,
    ),

  diameterOdd: (diameter: number, tipSpeed: number, head: number): Remark =>
    remark(
      'caution',
      'map-diameter-odd',
      said`A wheel of ${figureOf(diameter, 'length')} has a tip speed of ${figureOf(tipSpeed, 'speed')} on the fastest line, and would do ${numberFigure(head, 2)} of its square as work; 0.3 to 1 is usual. Check wheel exit diameter and speeds, and their units.`,
    ),

  diameterAssumed: (diameter: number): Remark =>
    remark(
      'note',
      'map-diameter-assumed',
      said`The exit diameter of the wheel is not known; ${figureOf(diameter, 'length')} is taken, with which a usual stage makes this pressure ratio. Tip speeds rest on it.`,
    ),

  tooFewLinesToLeaveOut: (lines: number): Remark =>
    remark(
      'refusal',
      'too-few-lines-to-leave-out',
      `The map has ${lines} ${lines === 1 ? 'speed line' : 'speed lines'}; to leave each out in turn it needs at least 3. Nothing is wrong with the map.`,
    ),
};

const speed = (rpm: number) => figureOf(rpm, 'engineSpeed');

const pointSaid = (point: MapPoint): Said => joined([airFlowFigure(point.flow), speed(point.speedRpm)], ', ');

const plainIf = (value: number): { plain?: string } => (Number.isFinite(value) ? {} : { plain: 'missing' });
