import { ICE_POINT } from '../quantity/index.ts';
import type { CorrectionStandard } from './model.ts';
import { dryPressureOutside, factorOutside, temperatureOutside } from './validity.ts';

/** Pa */
const REFERENCE_DRY_PRESSURE = 99_000;
/** 25 °C on the standard's own scale, t + 273 */
const REFERENCE_TEMPERATURE = 298;

/**
 * ISO 1585 and UN R85 with it, spark ignition: `(99 kPa / p_d)^1.2 ((t + 273) / 298)^0.6`.
 *
 * Formula seen at second hand; limits (factor 0.93 to 1.07, 15 to 35 °C, 80 to 110 kPa dry) from memory of both texts. UN R85 gives
 * factor 1 to an engine whose charging makes up for the air itself (document GRPE-70-02, 2014).
 */
export const correctionIso1585: CorrectionStandard = {
  id: 'iso-1585',
  name: 'ISO 1585',
  referenceState: '25 °C and 99 kPa dry pressure, as in UN R85.',
  supercharged:
    'Puts engines with a mechanical supercharger together with naturally aspirated ones; UN R85 gives factor 1 where the charging makes ' +
    'up for temperature and altitude by itself.',
  factor: (air) => {
    const celsius = air.temperature - ICE_POINT;
    return (
      (REFERENCE_DRY_PRESSURE / air.dryPressure) ** 1.2 * ((celsius + 273) / REFERENCE_TEMPERATURE) ** 0.6
    );
  },
  outsideValidity: (air, factor) => [
    ...factorOutside(factor, { low: 0.93, high: 1.07, source: 'allowed' }),
    ...temperatureOutside(air, { lowC: 15, highC: 35 }),
    ...dryPressureOutside(air, { lowKpa: 80, highKpa: 110 }),
  ],
};
