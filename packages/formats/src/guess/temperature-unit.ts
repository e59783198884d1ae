import { MEANINGS } from '@pullbook/core/pull';
import { toInside, type UnitSystem } from '@pullbook/core/quantity';
import { type Remark, remark } from '@pullbook/core/remark';
import type { Guess, UnguessedColumn } from './unguessed-column.ts';
import { usualUnits } from './usual-units.ts';

/**
 * One unit for all temperatures of a file that name none: a logger shows them alike, and 27 alone may be °C or °F. The unit
 * under which most of them are usual; where two do equally well, the first of the file's own people is taken and a
 * person is asked.
 */
export function temperatureUnit(
  columns: readonly UnguessedColumn[],
  guesses: Guess[],
  system: UnitSystem,
  remarks: Remark[],
): void {
  const silent = columns.filter(
    ({ index, unitText }) => unitText === '' && guesses[index]?.kind === 'temperature',
  );
  const [first] = silent;
  if (!first) return;
  const ranked = usualUnits('temperature', system)
    .map((unit) => ({ unit, fitting: silent.filter((one) => isUsual(one, guesses, unit)).length }))
    .sort((a, b) => b.fitting - a.fitting);
  const [best, second] = ranked as [(typeof ranked)[0], (typeof ranked)[0]];
  for (const { index } of silent) guesses[index] = inUnit(guesses[index] as Guess, best.unit);
  if (second.fitting < best.fitting) return;
  const names = silent.map(({ name }) => `“${name}”`).join(', ');
  const message = `${names} ${silent.length === 1 ? 'names' : 'name'} no unit: ${best.unit} is taken, ${second.unit} would fit as well. Say which it is.`;
  remarks.push(remark('caution', 'unit-not-named', message, { column: first.index + 1 }));
}

function isUsual({ index, high }: UnguessedColumn, guesses: readonly Guess[], unit: string): boolean {
  const typical = MEANINGS[(guesses[index] as Guess).meaning].typical;
  const inside = toInside(high, unit, 'temperature');
  return typical !== null && inside >= typical[0] && inside <= typical[1];
}

const inUnit = (guess: Guess, unit: string): Guess => ({
  ...guess,
  unit,
  why: `${guess.why} No unit is named; ${unit} fits the temperatures best. Confirm it.`,
});
