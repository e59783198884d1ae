import { figureOf, speedFigure } from '../../quantity/index.ts';
import { type Remark, remark, said } from '../../remark/index.ts';
import type { MatchCurve, MatchInput } from '../model.ts';
import { iceMelted } from './cooler-ice.ts';

/** r/min per second of a sweep that ice is reckoned for. Common practice, no source. */
const USUAL_SWEEP = 300;

/**
 * What a match says of its cooler: a coolant warmer than the air it should cool, and the ice that a pull melts.
 *
 * @example coolerRemarks(input, solveMatch(input))[0]?.code // 'ice-melted'
 */
export function coolerRemarks({ cooler, air }: MatchInput, curve: MatchCurve): Remark[] {
  if (cooler === null) return [];
  const coolant = cooler.coolantTemperature ?? air.temperature;
  const heated = curve.engineSpeedRpm.filter(
    (_, node) => curve.figures.dischargeTemperature[node]! < coolant,
  );
  return [
    ...(heated.length > 0 ? [warmerCoolant(coolant, heated)] : []),
    ...(cooler.by === 'ice water' ? iceOfPull(coolant, curve) : []),
  ];
}

const warmerCoolant = (coolant: number, speeds: readonly number[]): Remark =>
  remark(
    'caution',
    'coolant-warmer-than-air',
    said`The coolant comes in at ${figureOf(coolant, 'temperature')}, warmer than the air out of the compressor ${speeds.length === 1 ? said`at ${speedFigure(speeds[0]!)}` : said`from ${speedFigure(speeds[0]!)} to ${speedFigure(speeds.at(-1)!)}`}: there the cooler heats the charge. Check the coolant's temperature on the sheet.`,
  );

/** Heat over a usual sweep, by the mean of neighbouring speeds; what has no solution adds none. */
function iceOfPull(coolant: number, { engineSpeedRpm, figures }: MatchCurve): Remark[] {
  let heat = 0;
  for (let node = 1; node < engineSpeedRpm.length; node++) {
    const mean = (figures.coolerHeat[node - 1]! + figures.coolerHeat[node]!) / 2;
    const seconds = (engineSpeedRpm[node]! - engineSpeedRpm[node - 1]!) / USUAL_SWEEP;
    if (mean > 0) heat += mean * seconds;
  }
  if (heat === 0) return [];
  const [first, last] = [engineSpeedRpm[0]!, engineSpeedRpm.at(-1)!];
  return [
    remark(
      'note',
      'ice-melted',
      said`A pull from ${speedFigure(first)} to ${speedFigure(last)} in ${figureOf((last - first) / USUAL_SWEEP, 'time')} gives the cooler's water the heat that melts ${figureOf(iceMelted(heat, coolant), 'mass')} of ice (${figureOf(USUAL_SWEEP, 'sweepRate')} is taken; pump and hoses take more).`,
    ),
  ];
}
