import { ICE_POINT } from '../quantity/index.ts';
import type { CorrectionStandard } from './model.ts';
import { dryPressureOutside, temperatureOutside } from './validity.ts';

/** Pa */
const REFERENCE_DRY_PRESSURE = 99_000;
/** 25 °C on the standard's own scale, t + 273 */
const REFERENCE_TEMPERATURE = 298;

/**
 * SAE J1349, spark ignition: `1.180 (99 kPa / p_d) √((t + 273) / 298) - 0.180`.
 *
 * The 1.180 form is that of the issue of June 1990, seen in public copies and on most charts, and wins here. The issue of August 2004
 * prints 1.176 and 0.176 (from memory). Both round 1/0.85 and 0.15/0.85, a mechanical efficiency of 85 %: the factor acts
 * on indicated power. They differ by less than 4e-4 where the factor lies between 0.93 and 1.09; a check keeps the difference.
 * Limits of the test air, 15 to 35 °C and 90 to 105 kPa dry, are from memory of the standard; its clause on supercharged engines was not at
 * hand, so the sentence below is the physics of it and no quotation.
 */
export const correctionSaeJ1349: CorrectionStandard = {
  id: 'sae-j1349',
  name: 'SAE J1349',
  referenceState: '25 °C (77 °F) and 99 kPa (29.23 inHg) dry pressure.',
  supercharged:
    'Made for naturally aspirated engines; on a supercharged one it gives back too little for a hot day and too much for altitude with ' +
    'a cooler, and corrects twice where boost is held at a fixed absolute pressure.',
  factor: (air) => {
    const celsius = air.temperature - ICE_POINT;
    return (
      1.18 * (REFERENCE_DRY_PRESSURE / air.dryPressure) * Math.sqrt((celsius + 273) / REFERENCE_TEMPERATURE) -
      0.18
    );
  },
  outsideValidity: (air) => [
    ...temperatureOutside(air, { lowC: 15, highC: 35 }),
    ...dryPressureOutside(air, { lowKpa: 90, highKpa: 105 }),
  ],
};
