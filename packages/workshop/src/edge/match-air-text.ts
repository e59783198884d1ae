import { type AirState, airState } from '@pullbook/core/air';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import { weatherFromText } from './weather-text.ts';

/**
 * Other weather for a match, as text with units; `null`: none was given, it is made in the air of its pulls.
 *
 * @example matchAirFromText({ pressure: '83 kPa', temperature: '30 C' })
 */
export function matchAirFromText({
  pressure,
  temperature,
  humidity,
}: {
  pressure?: string | undefined;
  temperature?: string | undefined;
  humidity?: string | undefined;
}): Result<AirState | null> {
  if (pressure === undefined && temperature === undefined && humidity === undefined) return accepted(null);
  if (pressure === undefined || temperature === undefined)
    return refused(
      remark(
        'refusal',
        'match-air',
        'Other weather needs pressure and temperature of the air, such as 98.2kPa and 30C; humidity may be left out.',
      ),
    );
  const reading = weatherFromText({ pressure, temperature, humidity });
  return reading.ok ? airState(reading.value) : reading;
}
