import type { FuelRail, Induction } from '@pullbook/core/fuel';
import { parseNumber, type QuantityKind } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { quantityFromText } from './quantity-text.ts';

/** Share of the time for which injectors may be open (common practice, no source). */
const USUAL_DUTY = 0.85;

const refusal = (code: string, message: string): Remark => remark('refusal', code, message);

/** A quantity within what can be, inside unit; `null`: not told. */
export function inRange(
  text: string | undefined,
  kind: QuantityKind,
  label: string,
  [low, high, words]: readonly [number, number, string],
): Result<number | null> {
  if (text === undefined) return accepted(null);
  const read = quantityFromText(text, kind, label);
  if (!read.ok || (read.value >= low && read.value <= high)) return read;
  return refused(
    refusal(
      'value-impossible',
      `${label}: "${text}" cannot be; allowed is ${words}. Check the number and its unit.`,
    ),
  );
}

/** By mass in kg/s, by volume in m³/s. */
export interface InjectorFlow {
  value: number;
  kind: 'massFlow' | 'volumeFlow';
}

/** What one injector passes when open, by mass or by volume; `null`: not told. */
export function flowOf(text: string | undefined): Result<InjectorFlow | null> {
  if (text === undefined) return accepted(null);
  for (const kind of ['massFlow', 'volumeFlow'] as const) {
    const read = quantityFromText(text, kind, 'Injector flow');
    if (read.ok && read.value > 0) return accepted({ value: read.value, kind });
  }
  return refused(
    refusal(
      'injector-flow-not-read',
      `Injector flow: "${text}" is not a flow. Give what one passes when it stays open, with its unit: 42 lb/h, 440 cc/min, 5 g/s.`,
    ),
  );
}

/** How many injectors; `null`: not told. */
export function countOf(text: string | undefined): Result<number | null> {
  if (text === undefined) return accepted(null);
  const value = parseNumber(text, 'either');
  if (value !== null && Number.isInteger(value) && value >= 1 && value <= 96) return accepted(value);
  return refused(
    refusal(
      'not-a-count',
      `Injectors: "${text}" is not a number of injectors; allowed is 1 to 96, such as 8.`,
    ),
  );
}

/** Most of the time for which injectors may be open, above 0 to 1. */
export function shareOf(text: string | undefined): Result<number> {
  if (text === undefined) return accepted(USUAL_DUTY);
  const read = quantityFromText(text, 'ratio', 'Duty');
  if (read.ok && read.value > 0 && read.value <= 1) return accepted(read.value);
  return refused(
    refusal(
      'duty-impossible',
      `Duty: "${text}" cannot be the share of the time for which injectors are open; allowed is more than 0 % to 100 %. Give it with its sign, such as 85%.`,
    ),
  );
}

const INDUCTIONS: readonly { induction: Induction; words: readonly string[] }[] = [
  { induction: 'naturally aspirated', words: ['naturally aspirated', 'na', 'natural', 'none'] },
  { induction: 'centrifugal', words: ['boosted', 'centrifugal', 'supercharged'] },
  { induction: 'positive displacement', words: ['positive displacement', 'roots', 'screw'] },
  { induction: 'turbocharged', words: ['turbocharged', 'turbo', 'turbocharger'] },
];

/** How the engine breathes; not told: naturally aspirated. */
export function inductionOf(text: string | undefined): Result<Induction> {
  if (text === undefined) return accepted('naturally aspirated');
  const wanted = text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/gu, ' ');
  const found = INDUCTIONS.find(({ words }) => words.includes(wanted));
  if (found !== undefined) return accepted(found.induction);
  return refused(
    refusal(
      'induction-not-known',
      `"${text}" is not a way for an engine to breathe that is known. Known are naturally aspirated (na), boosted (with a centrifugal supercharger), roots, screw, turbocharged (turbo).`,
    ),
  );
}

/** What fuel pressure is held above; not told: the manifold. */
export function referenceOf(text: string | undefined): Result<FuelRail['reference']> {
  const wanted = (text ?? 'manifold')
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/gu, ' ');
  if (wanted === 'manifold' || wanted === 'open air') return accepted(wanted);
  return refused(
    refusal(
      'reference-not-known',
      `Reference: "${text}" is not known. Fuel pressure is held above the manifold (it rises with boost) or above open-air.`,
    ),
  );
}
