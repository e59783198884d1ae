import { type CombinationSheet, meanPistonSpeed } from '../combination/index.ts';
import { interpolateLinear } from '../numeric/index.ts';
import { figureOf, numberFigure, speedFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Finding } from './model.ts';
import { fuelOf } from './pull-at-hand.ts';
import { COMPRESSION_RATIOS } from './rules-of-hardware.ts';
import { sheetNumber, sheetText } from './sheet-words.ts';
import type { Speaker } from './speaker.ts';

/** How far an engine was driven, or shall be: highest engine speed, r/min, and boost, Pa; `null`: not known. */
export interface HardwareReach {
  engineSpeedRpm: number | null;
  boost: number | null;
}

/** Petrol of more than this research octane is racing petrol. From memory. */
const RACING_OCTANE = 103;

/**
 * V21, V22: the parts of a sheet against how far it was driven, or shall be. For a plan give what is planned.
 *
 * @example hardwareFindings(sheet, { engineSpeedRpm: 7000, boost: 80e3 }, speakerOf('combination 3f2a'))
 */
export function hardwareFindings(
  sheet: CombinationSheet | null,
  reach: HardwareReach,
  speaker: Speaker,
): Finding[] {
  if (sheet === null) return [];
  const { boost } = reach;
  return [
    ...pistonSpeed(sheet, reach.engineSpeedRpm, speaker),
    ...(boost === null
      ? []
      : [
          ...ringGap(sheet, boost, speaker),
          ...compression(sheet, boost, speaker),
          ...plugGap(sheet, boost, speaker),
        ]),
  ];
}

function pistonSpeed(sheet: CombinationSheet, rpm: number | null, { limit, find }: Speaker): Finding[] {
  const stroke = sheetNumber(sheet, 'shortBlock', 'stroke');
  if (stroke === null || rpm === null) return [];
  const value = meanPistonSpeed(stroke, rpm);
  const cast = (['pistons', 'rods', 'crankshaft'] as const).filter((field) =>
    /\bcast\b|hypereutectic/.test(sheetText(sheet, 'shortBlock', field)),
  );
  const [castLimit, usual, race] = [limit('V21.cast'), limit('V21.forged'), limit('V21.race')];
  const threshold = value > race ? race : value > usual ? usual : castLimit;
  if (value <= (cast.length > 0 ? castLimit : usual)) return [];
  const parts = cast.length > 0 ? ` with cast ${cast.join(' and ')}` : '';
  return [
    find('V21', {
      input: 'Stroke and highest engine speed',
      kind: 'speed',
      value,
      threshold,
      level: value > race ? 'alarm' : 'caution',
      said: said`At ${speedFigure(rpm)} the pistons move at ${figureOf(value, 'speed')} on average${parts}; ${figureOf(castLimit, 'speed')} is asked of cast parts, ${figureOf(usual, 'speed')} of forged ones, ${figureOf(race, 'speed')} of racing parts. Keep to the maker’s limits and people out of the plane of rotation.`,
    }),
  ];
}

function ringGap(sheet: CombinationSheet, boost: number, { limit, find }: Speaker): Finding[] {
  const gap = sheetNumber(sheet, 'shortBlock', 'topRingGap');
  const bore = sheetNumber(sheet, 'shortBlock', 'bore');
  if (gap === null || bore === null || boost <= limit('V22.ringBoost')) return [];
  const threshold = limit('V22.ringGap') * bore;
  if (gap >= threshold) return [];
  return [
    find('V22', {
      input: 'Top ring gap and boost',
      kind: 'length',
      value: gap,
      threshold,
      said: said`The top ring gap is ${figureOf(gap, 'length')} at ${figureOf(boost, 'gaugePressure')} of boost; for this bore at least ${figureOf(threshold, 'length')} is asked for. Rings that butt lift the land off the piston.`,
    }),
  ];
}

function plugGap(sheet: CombinationSheet, boost: number, { limit, find }: Speaker): Finding[] {
  const gap = sheetNumber(sheet, 'ignition', 'plugGap');
  if (gap === null || boost <= 0) return [];
  const threshold =
    boost > limit('V22.plugBoostHigh')
      ? limit('V22.plugGapHigh')
      : boost > limit('V22.plugBoost')
        ? limit('V22.plugGapBoost')
        : limit('V22.plugGap');
  // A gap is set with a gauge of whole hundredths of a millimetre.
  if (gap <= threshold + 5e-6) return [];
  return [
    find('V22', {
      input: 'Plug gap and boost',
      kind: 'length',
      value: gap,
      threshold,
      level: 'note',
      said: said`The plug gap is ${figureOf(gap, 'length')} at ${figureOf(boost, 'gaugePressure')} of boost; ${figureOf(threshold, 'length')} or less is usual. Too wide a gap breaks up as boost rises: swinging lambda, torque like a saw.`,
    }),
  ];
}

function compression(sheet: CombinationSheet, boost: number, { limit, find }: Speaker): Finding[] {
  const ratio = sheetNumber(sheet, 'shortBlock', 'compressionRatio');
  const fuel = fuelClass(sheet);
  if (ratio === null || fuel === null) return [];
  const [lowest, highest] = [COMPRESSION_RATIOS[0]!, COMPRESSION_RATIOS.at(-1)!];
  const threshold = interpolateLinear(
    COMPRESSION_RATIOS,
    COMPRESSION_RATIOS.map((step) => limit(`V22.${fuel}-${step}`)),
    Math.min(Math.max(ratio, lowest), highest),
  );
  if (!(boost > threshold)) return [];
  const words = {
    uncooled: 'pump petrol without a cooler',
    cooled: 'pump petrol with a cooler',
    race: 'E85 or racing petrol with a cooler',
  };
  return [
    find('V22', {
      input: 'Compression ratio, boost and fuel',
      kind: 'gaugePressure',
      value: boost,
      threshold,
      said: said`${figureOf(boost, 'gaugePressure')} of boost on a compression ratio of ${numberFigure(ratio, 1)} with ${words[fuel]}; about ${figureOf(threshold, 'gaugePressure')} is the upper end. Listen for knock and read the plugs before more spark.`,
    }),
  ];
}

/** Which column of the trade's table holds; `null`: the fuel is not told, or none of it. */
function fuelClass(sheet: CombinationSheet): 'uncooled' | 'cooled' | 'race' | null {
  const type = sheetText(sheet, 'cooler', 'type');
  const cooled = type !== '' && !/^(none|no|not fitted)$/.test(type);
  const octane = sheetNumber(sheet, 'fuel', 'researchOctane');
  const ethanol = sheetNumber(sheet, 'fuel', 'ethanolShare') ?? 0;
  const strong =
    ethanol >= 0.5 || /e85/.test(sheetText(sheet, 'fuel', 'name')) || (octane ?? 0) > RACING_OCTANE;
  if (strong) return cooled ? 'race' : null;
  return fuelOf(sheet) === 'petrol' ? (cooled ? 'cooled' : 'uncooled') : null;
}
