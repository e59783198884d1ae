import type { ChangePart, EnquiryAsked } from '@pullbook/core/reach';

const PARTS: Record<ChangePart, string> = {
  pulley: 'another pulley',
  stepUp: 'another step-up',
  supercharger: 'another supercharger',
  cooler: 'another cooler',
  fuel: 'another fuel',
  injectors: 'other injectors',
  pump: 'another pump',
  belt: 'another belt',
  breathing: 'better breathing',
  speedLimit: 'another speed limit',
};

/** A question that names more of them is no sentence any more; what was asked is kept beside it. */
const MOST_LEFT_OUT = 2;

/**
 * What was asked as a question, in the units in which it was asked.
 *
 * @example askedWords({ power: '520 hp', what: 'peak power', … }, 'Six, 84 mm') // 'How do I make 520 hp with “Six, 84 mm”?'
 */
export function askedWords(
  { power, what, at, window, boostCap, without }: EnquiryAsked,
  name: string,
): string {
  const target =
    what === 'average power'
      ? `average ${spaced(power)}${window === null ? '' : ` over ${spaced(window)}`}`
      : `make ${spaced(power)}${what === 'power at a speed' && at !== null ? ` at ${spaced(at)}` : ''}`;
  const cap = boostCap === null ? '' : `, with at most ${spaced(boostCap)} of boost`;
  const left =
    without.length === 0 || without.length > MOST_LEFT_OUT
      ? ''
      : `, without ${without.map((part) => PARTS[part]).join(' or ')}`;
  return `How do I ${target} with “${name}”${cap}${left}?`;
}

/** Figures as they were typed, each with a space before its unit: `520hp` is `520 hp`. */
export const spaced = (typed: string): string => typed.replace(/(\d)(\p{Letter})/gu, '$1 $2');
