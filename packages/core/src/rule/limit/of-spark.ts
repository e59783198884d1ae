import { interpolateLinear } from '../../numeric/index.ts';
import { figureOf, numberFigure, rangeOf, speedFigure } from '../../quantity/index.ts';
import { said } from '../../remark/index.ts';
import { COMPRESSION_RATIOS } from '../rules-of-hardware.ts';
import { isKnockKnown, sparkAtWorst } from './charge-at-worst.ts';
import { fuelClassOf } from './fuel-class.ts';
import { above, below, isPassed, type LimitKind } from './limit-kind.ts';
import { onSheet } from './on-sheet.ts';

/**
 * V48: the advance at which this fuel is about to knock, where that is latest against best torque. It needs octane and compression
 * ratio; planning grade, and it promises nothing of this very engine.
 */
export const sparkLimit: LimitKind = {
  label: 'Spark',
  ruleId: 'V48',
  bindsUsually: true,
  measure: (at) => {
    const worst = sparkAtWorst(at);
    if (worst === null) return null;
    const from = 'V48.latest';
    const threshold = worst.spark.forBestTorque - at.limit(from);
    return above({ value: worst.spark.allowed, threshold, kind: 'angle', rpm: worst.rpm, from });
  },
  tell: (measured, at) => {
    const { spark } = sparkAtWorst(at, { ends: true })!;
    const degrees = (angle: number) => figureOf(angle, 'angle', { decimals: 0 });
    const open = said`${rangeOf(spark.low, spark.high, 'angle', ' to ', { decimals: 0 })} by what is left open`;
    const allows =
      spark.low >= spark.forBestTorque
        ? said`stands the spark for best torque, about ${degrees(spark.forBestTorque)}`
        : said`allows about ${degrees(measured.value)} of advance before it knocks (${open}), where ${degrees(spark.forBestTorque)} would be best`;
    return said`At ${speedFigure(measured.engineSpeedRpm!)} ${at.supply!.fuel.name} ${allows}; less than ${degrees(measured.threshold)} there burns too late.${isPassed(measured) ? ' More octane, a cooler charge, or less boost or compression.' : ''} Planning grade: begin with less, and listen for knock.`;
  },
  missing: (at) => {
    if (at.parts.compressionRatio === null)
      return `Spark: the compression ratio is not on the sheet (${onSheet('shortBlock', 'compressionRatio')}).`;
    return isKnockKnown(at)
      ? null
      : `Spark: the octane of the fuel is not on the sheet (${onSheet('fuel', 'researchOctane')}).`;
  },
};

/** V47: the highest pressure in the cylinder at that spark, against what pistons of the kind stand. */
export const cylinderPressureLimit: LimitKind = {
  label: 'Cylinder pressure',
  ruleId: 'V47',
  bindsUsually: false,
  measure: (at) => {
    const worst = sparkAtWorst(at);
    if (worst === null) return null;
    const from = at.parts.pistons === 'cast' ? 'V47.cast' : 'V47.forged';
    const threshold = at.limit(from);
    return below({ value: worst.peak(), threshold, kind: 'absolutePressure', rpm: worst.rpm, from });
  },
  tell: (measured, at) => {
    const pressure = (pascal: number) =>
      figureOf(pascal, 'absolutePressure', { units: { us: 'psi', si: 'bar' }, decimals: 0 });
    const cast = at.parts.pistons === 'cast' ? 'cast pistons' : 'any pistons';
    return said`With that spark the pressure in the cylinder reaches about ${pressure(measured.value)} at ${speedFigure(measured.engineSpeedRpm!)}; above ${pressure(measured.threshold)} caution is asked for with ${cast}.${isPassed(measured) ? ' Less boost or compression, or parts that are made for it.' : ''} Knock goes far beyond: nobody in the cell.`;
  },
  missing: () => null,
};

/**
 * V22: boost that usually goes with a compression ratio and fuel. It binds where nothing is known of the spark that the fuel allows;
 * where that is known it only cautions.
 */
export const fuelAndCompressionLimit: LimitKind = {
  label: 'Fuel and compression',
  ruleId: 'V22',
  bindsUsually: true,
  bindsWhere: 'where octane and compression do not tell the spark',
  measure: (at) => {
    const ratio = at.parts.compressionRatio;
    const fuel = fuelClassOf(at);
    if (at.boost === null || ratio === null || fuel === null) return null;
    const [lowest, highest] = [COMPRESSION_RATIOS[0]!, COMPRESSION_RATIOS.at(-1)!];
    const threshold = interpolateLinear(
      COMPRESSION_RATIOS,
      COMPRESSION_RATIOS.map((step) => at.limit(`V22.${fuel}-${step}`)),
      Math.min(Math.max(ratio, lowest), highest),
    );
    const from = `V22.${fuel}-${nearestStep(ratio)}`;
    const { value, rpm } = at.boost;
    const measured = below({ value, threshold, kind: 'gaugePressure', rpm, from });
    return isKnockKnown(at) ? { ...measured, binds: false } : measured;
  },
  tell: (measured, at) => {
    const words = {
      uncooled: 'pump gasoline without a cooler',
      cooled: 'pump gasoline with a cooler',
      race: 'E85, alcohol or racing gasoline with a cooler',
    };
    return said`${figureOf(measured.value, 'gaugePressure')} of boost on a compression ratio of ${numberFigure(at.parts.compressionRatio!, 1)} with ${words[fuelClassOf(at)!]}; about ${figureOf(measured.threshold, 'gaugePressure')} is the upper end.${isPassed(measured) ? ' Listen for knock and read the plugs before more spark.' : ''}`;
  },
  missing: (at) =>
    at.input === null
      ? null
      : at.parts.compressionRatio === null
        ? `Fuel and compression: the compression ratio is not on the sheet (${onSheet('shortBlock', 'compressionRatio')}).`
        : null,
};

const nearestStep = (ratio: number): number =>
  COMPRESSION_RATIOS.reduce((best, step) => (Math.abs(step - ratio) < Math.abs(best - ratio) ? step : best));
