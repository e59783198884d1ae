/**
 * What the simulator is asked for. Shares of power (0.004 is 0.4 %), hours, r/min. Written apart from the program under
 * study, whose shapes these resemble because the words mean the same.
 */

/** One spread as the program is told of it. */
export interface ToldSpread {
  sigma: number;
  degreesOfFreedom: number;
}

/** What the program is told before the pulls. */
export interface Told {
  pull: ToldSpread;
  setUp: ToldSpread;
  day: ToldSpread;
  cell: ToldSpread;
  within: ToldSpread & { lengthRpm: number };
  driftPerHour: ToldSpread;
}

export interface PlannedPull {
  group: string;
  setUp: string;
  day: string;
  cell: string;
  /** `null`: not told to the program, and no drift acts on it. */
  hours: number | null;
}

/** True gain of each group but the first over engine speed. */
export type TrueGain = 'none' | 'steady' | 'above-4200' | 'crossing' | 'one-per-cent';

export interface Scene {
  pulls: readonly PlannedPull[];
  told: Told;
  /**
   * `drawn`: each true spread from its prior, an inverse chi-square about the told one. `exact`: as told. A number: so many
   * times the told one, in the scatter of pulls and within a pull.
   */
  truth: 'drawn' | 'exact' | number;
  gain: TrueGain;
  tails?: 'normal' | 'heavy';
  /** Kin of neighbouring speeds: values that remember the one before, or a few sine waves of random length and phase. */
  along?: 'remembering' | 'waves';
  /** Straight drift of each day, share an hour: drawn about 0 as told, or told sigma times this figure, either sign. */
  drift?: 'none' | 'drawn' | number;
  /** Power falls by `share` of itself towards a limit as the engine heats through, from the first pull of a day on. */
  soak?: { share: number; hours: number; warmUps: number };
}

/**
 * Pulls in their order, a quarter of an hour apart: letter of the combination and number of the set-up; `|` another day,
 * `@` another day in another cell. `'A1 A1 | B2 B2'`.
 */
export function inOrder(order: string, { timed }: { timed: boolean }): PlannedPull[] {
  let [day, cell, place] = [1, 1, 0];
  const pulls: PlannedPull[] = [];
  for (const token of order.split(' ')) {
    if (token === '|' || token === '@') {
      day += 1;
      place = 0;
      if (token === '@') cell += 1;
      continue;
    }
    const hours = timed ? place * 0.25 : null;
    pulls.push({ group: token[0]!, setUp: token.slice(1), day: `day ${day}`, cell: `cell ${cell}`, hours });
    place += 1;
  }
  return pulls;
}

/** `n` pulls of A, then `n` of B; one set-up for all, or one for each. */
export function blocks(n: number, setUps: 'one' | 'two'): string {
  return [...Array(n).fill('A1'), ...Array(n).fill(setUps === 'one' ? 'B1' : 'B2')].join(' ');
}
