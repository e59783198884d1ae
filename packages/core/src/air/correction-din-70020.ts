import { ICE_POINT } from '../quantity/index.ts';
import type { CorrectionStandard } from './model.ts';
import { EVERYDAY_FACTOR, factorOutside } from './validity.ts';

/** Pa, total */
const REFERENCE_PRESSURE = 101_300;
/** 20 °C on the standard's own scale, t + 273 */
const REFERENCE_TEMPERATURE = 293;

/**
 * DIN 70020 (older issues): `(1013 mbar / p) √((t + 273) / 293)`, on the total pressure: humidity has no part in it.
 * From memory of the standard; reference of 20 °C and 1013 mbar seen at second hand.
 */
export const correctionDin70020: CorrectionStandard = {
  id: 'din-70020',
  name: 'DIN 70020',
  referenceState: '20 °C and 101.3 kPa total pressure; humidity has no part in it.',
  supercharged:
    'Knows nothing of supercharged engines; the factor acts on the whole power, as on a naturally aspirated one.',
  factor: (air) => {
    const celsius = air.temperature - ICE_POINT;
    return (REFERENCE_PRESSURE / air.pressure) * Math.sqrt((celsius + 273) / REFERENCE_TEMPERATURE);
  },
  outsideValidity: (_air, factor) => factorOutside(factor, EVERYDAY_FACTOR),
};
