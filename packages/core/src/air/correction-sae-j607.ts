import { STANDARD_ATMOSPHERE, toInside } from '../quantity/index.ts';
import type { CorrectionStandard } from './model.ts';
import { EVERYDAY_FACTOR, factorOutside } from './validity.ts';

const REFERENCE_TEMPERATURE = toInside(60, 'temperature/°F');

/**
 * SAE J607, cancelled and still in wide use as "STD": `(101.325 kPa / p_d) √(T / 60 °F)`, temperatures absolute.
 *
 * The reference pressure is the standard atmosphere; the 29.92 inHg printed with it is that figure rounded (factor 4e-5 lower).
 * A metric copy with 15 °C for 60 °F is about and reads 0.12 % higher: not used here. Reads about 4 % above SAE J1349 in the same air.
 */
export const correctionSaeJ607: CorrectionStandard = {
  id: 'sae-j607',
  name: 'SAE J607',
  referenceState: '60 °F (15.6 °C) and 29.92 inHg (101.325 kPa) dry pressure.',
  supercharged:
    'Cancelled and silent on supercharged engines; the factor acts on the whole power, and reads about 4 % above SAE J1349 in the same air.',
  factor: (air) =>
    (STANDARD_ATMOSPHERE / air.dryPressure) * Math.sqrt(air.temperature / REFERENCE_TEMPERATURE),
  outsideValidity: (_air, factor) => factorOutside(factor, EVERYDAY_FACTOR),
};
