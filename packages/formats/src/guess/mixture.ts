import type { Guess, UnguessedColumn } from './unguessed-column.ts';

/** Lambda of an engine that runs lies under this, air to fuel of any fuel above it (methanol 6.4 at lambda 1, rich 4). */
const BETWEEN = 2.5;

/**
 * Tells lambda from air to fuel by range where the name says the one and the figures are the other: 12.5 is no lambda,
 * 0.85 no air to fuel.
 */
export function mixtureByRange(column: UnguessedColumn, guess: Guess): Guess {
  const isLambda = guess.meaning === 'lambda';
  if (!isLambda && guess.meaning !== 'airFuelRatio') return guess;
  let [finite, above] = [0, 0];
  for (let row = 0; row < column.values.length; row++) {
    if (!Number.isFinite(column.values[row])) continue;
    finite += 1;
    if ((column.values[row] as number) > BETWEEN) above += 1;
  }
  // Counted first: a long column is put in order only where its middle is to be named.
  if (finite === 0 || above >= finite - (finite >> 1) !== isLambda) return guess;
  const middle = column.values.filter(Number.isFinite).sort()[finite >> 1] as number;
  const [meaning, unit, label] = isLambda
    ? (['airFuelRatio', ':1', 'air to fuel'] as const)
    : (['lambda', 'λ', 'lambda'] as const);
  const why = `${guess.why} Its middling reading, ${middle}, is that of ${label}. Confirm it.`;
  return { ...guess, meaning, unit, basis: 'range', why };
}
