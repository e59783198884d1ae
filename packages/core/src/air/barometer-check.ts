import { type AbsolutePressure, STANDARD_ATMOSPHERE } from '../quantity/index.ts';
import type { Remark } from '../remark/index.ts';
import { airMessage } from './messages.ts';
import { standardAtmosphere } from './standard-atmosphere.ts';

/** Pa: how far weather may take a barometer from the standard atmosphere before it is asked about. Common practice, no source. */
const AGREEMENT = 2000;

/**
 * Whether a barometer fits the altitude it was read at. Off by more than 2 kPa it is flagged; if it then lies nearer to the pressure at
 * sea level than to the one expected at the altitude, as one reduced to sea level, which over-states the air by 1.2 % each 100 m.
 */
export function barometerRemark(reading: { pressure: AbsolutePressure; altitude: number }): Remark | null {
  const { pressure, altitude } = reading;
  const expected = standardAtmosphere(altitude).pressure;
  const off = Math.abs(pressure - expected);
  if (off <= AGREEMENT) return null;
  const nearerToSeaLevel = Math.abs(pressure - STANDARD_ATMOSPHERE) < off;
  return nearerToSeaLevel
    ? airMessage.barometerLooksReduced({
        ...reading,
        expected,
        ifReduced: (pressure * expected) / STANDARD_ATMOSPHERE,
      })
    : airMessage.barometerOffAltitude({ ...reading, expected });
}
