import { MEANINGS } from '@pullbook/core/pull';
import { toInside } from '@pullbook/core/quantity';
import { type Remark, remark } from '@pullbook/core/remark';
import { unitOfSpelling } from '../text/unit-spelling.ts';
import { meaningFromName } from './column-words.ts';
import { type IdentityAnswer, identityConstant, powerIdentity, type UnitPair } from './power-identity.ts';
import type { Guess, UnguessedColumn } from './unguessed-column.ts';

const ROWS_LOOKED_AT = 400;
/** Fewer rows than this are not accused of disagreeing. */
const LEAST_ROWS_JUDGED = 4;
/** Rule V01: power equals torque × angular speed within 0.5 %. */
const STATED_AGREEMENT = 0.005;
/** More unnamed columns than this are not tried pair by pair. */
const MOST_COLUMNS_TRIED = 40;

/**
 * Finds torque, power and their units by power = torque × angular speed: fills in a unit that is missing, finds a
 * column without a telling name, and says so where stated units contradict the figures (rules V01, V02).
 */
export function guessByIdentity(
  columns: readonly UnguessedColumn[],
  guesses: Guess[],
  remarks: Remark[],
): void {
  const speedAt = guesses.findIndex((guess) => guess.meaning === 'engineSpeed');
  if (speedAt < 0) return;
  const speed = speedInRpm(columns[speedAt] as UnguessedColumn, guesses[speedAt] as Guess);
  const torqueAt = guesses.findIndex((guess) => guess.meaning === 'torque');
  const powerAt = guesses.findIndex((guess) => guess.meaning === 'power');
  const answerFor = (torque: number, power: number) =>
    powerIdentity(speed, sampled(columns[torque]?.values), sampled(columns[power]?.values));

  if (torqueAt >= 0 && powerAt >= 0) {
    settleUnits(columns, guesses, torqueAt, powerAt, answerFor(torqueAt, powerAt), remarks);
    return;
  }
  const unnamed = columns.flatMap((column, index) =>
    isUnnamed(column, guesses[index] as Guess) ? [index] : [],
  );
  if (unnamed.length > MOST_COLUMNS_TRIED) return;
  const torques = torqueAt >= 0 ? [torqueAt] : unnamed;
  const powers = powerAt >= 0 ? [powerAt] : unnamed;
  for (const torque of torques) {
    for (const power of powers) {
      if (torque === power) continue;
      const answer = answerFor(torque, power);
      const pairs = answer ? consistentPairs(answer.pairs, columns[torque], columns[power]) : [];
      if (!answer || !pairs[0]) continue;
      const why = identityWords(columns, torque, power, answer, pairs);
      if (pairs[1]) remarks.push(ambiguity(columns, torque, power, answer, pairs[0], pairs[1]));
      guesses[torque] = {
        meaning: 'torque',
        unit: pairs[0].torqueUnit,
        kind: 'torque',
        basis: 'identity',
        why,
      };
      guesses[power] = { meaning: 'power', unit: pairs[0].powerUnit, kind: 'power', basis: 'identity', why };
      return;
    }
  }
}

function settleUnits(
  columns: readonly UnguessedColumn[],
  guesses: Guess[],
  torqueAt: number,
  powerAt: number,
  answer: IdentityAnswer | null,
  remarks: Remark[],
): void {
  const torque = guesses[torqueAt] as Guess;
  const power = guesses[powerAt] as Guess;
  const place = { column: powerAt + 1 };
  const rows = Math.min(columns[torqueAt]?.count ?? 0, columns[powerAt]?.count ?? 0);
  if (!answer && rows < LEAST_ROWS_JUDGED) return;
  if (!answer) {
    const message = `“${columns[powerAt]?.name}” is not “${columns[torqueAt]?.name}” × engine speed by one constant: one of the three columns is something else, smoothed or delayed. Check their meanings.`;
    remarks.push(remark('caution', 'power-is-not-torque-times-speed', message, place));
    return;
  }
  if (torque.unit !== '' && power.unit !== '') {
    const ratio = answer.constant / identityConstant({ torqueUnit: torque.unit, powerUnit: power.unit });
    if (Math.abs(ratio - 1) > STATED_AGREEMENT)
      remarks.push(contradiction(torque, power, ratio, answer, place));
    return;
  }
  const pairs = consistentPairs(answer.pairs, columns[torqueAt], columns[powerAt]);
  const pair = pairs[0];
  if (!pair) {
    remarks.push(
      answer.pairs.length > 0
        ? contradiction(torque, power, 1, answer, place)
        : noPair(columns, torqueAt, powerAt, answer, place),
    );
    return;
  }
  if (pairs[1]) remarks.push(ambiguity(columns, torqueAt, powerAt, answer, pair, pairs[1]));
  const why = identityWords(columns, torqueAt, powerAt, answer, pairs);
  const completed = (guess: Guess, unit: string): Guess =>
    guess.unit === '' ? { ...guess, unit, basis: 'identity', why: `${guess.why} ${why}` } : guess;
  guesses[torqueAt] = completed(torque, pair.torqueUnit);
  guesses[powerAt] = completed(power, pair.powerUnit);
}

function contradiction(
  torque: Guess,
  power: Guess,
  ratio: number,
  answer: IdentityAnswer,
  place: { column: number },
): Remark {
  const other = answer.pairs[0];
  const stated = (unit: string) => unit || 'no unit';
  const message = other
    ? `The units in the header contradict the figures: with ${other.torqueUnit} and ${other.powerUnit} power is torque × engine speed, with ${stated(torque.unit)} and ${stated(power.unit)} it is not. Set the units that the file really has.`
    : `Power is ${ratio.toFixed(4)} times torque × engine speed throughout: one of the two may carry a correction factor that the other does not, or a unit is wrong. Say which figures are corrected.`;
  return remark(
    'caution',
    other ? 'units-contradict-figures' : 'power-is-not-torque-times-speed',
    message,
    place,
  );
}

function noPair(
  columns: readonly UnguessedColumn[],
  torque: number,
  power: number,
  answer: IdentityAnswer,
  place: { column: number },
): Remark {
  const message = `“${columns[power]?.name}” is “${columns[torque]?.name}” × engine speed ÷ ${(1 / answer.constant).toFixed(1)} throughout, which no pair of units known here gives, and a unit is not named. Say the units of both.`;
  return remark('caution', 'units-contradict-figures', message, place);
}

/** Pairs that do not contradict a unit the header names. */
function consistentPairs(
  pairs: readonly UnitPair[],
  torque: UnguessedColumn | undefined,
  power: UnguessedColumn | undefined,
): UnitPair[] {
  const same = (text: string | undefined, unit: string, kind: 'torque' | 'power') => {
    const stated = text ? unitOfSpelling(text, kind) : null;
    return stated === null || Math.abs(toInside(1, stated) / toInside(1, unit, kind) - 1) < 1e-9;
  };
  return pairs.filter(
    (pair) =>
      same(torque?.unitText, pair.torqueUnit, 'torque') && same(power?.unitText, pair.powerUnit, 'power'),
  );
}

/** Two pairs of units fit: a person has to say which. */
function ambiguity(
  columns: readonly UnguessedColumn[],
  torque: number,
  power: number,
  answer: IdentityAnswer,
  pair: UnitPair,
  second: UnitPair,
): Remark {
  const divisor = (1 / answer.constant).toFixed(1);
  const by = (units: UnitPair) =>
    `${units.torqueUnit} with ${units.powerUnit} (${(1 / identityConstant(units)).toFixed(1)})`;
  const message = `“${columns[power]?.name}” is “${columns[torque]?.name}” × engine speed ÷ ${divisor}: ${by(pair)} and ${by(second)} both fit. The first is taken; say which it is.`;
  return remark('caution', 'units-ambiguous', message, { column: power + 1 });
}

function identityWords(
  columns: readonly UnguessedColumn[],
  torque: number,
  power: number,
  answer: IdentityAnswer,
  pairs: readonly UnitPair[],
): string {
  const [pair, second] = pairs as [UnitPair, UnitPair | undefined];
  const found = `“${columns[power]?.name}” is “${columns[torque]?.name}” × engine speed ÷ ${(1 / answer.constant).toFixed(1)} over ${answer.rows} rows, as ${pair.powerUnit} is from ${pair.torqueUnit}`;
  if (!second) return `${found}.`;
  return `${found}; ${second.powerUnit} from ${second.torqueUnit} would fit about as well: confirm the units.`;
}

function isUnnamed(column: UnguessedColumn, guess: Guess): boolean {
  if (column.isText || column.count < 2 || guess.meaning !== 'other' || guess.basis !== 'none') return false;
  const unit = unitOfSpelling(column.unitText);
  if (unit && unit.kind !== MEANINGS.torque.kind && unit.kind !== MEANINGS.power.kind) return false;
  return meaningFromName(column.name) === null;
}

function speedInRpm(column: UnguessedColumn, guess: Guess): Float64Array {
  const unit = guess.unit || (column.high < 30 ? 'krpm' : 'rpm');
  return sampled(column.values).map((value) => toInside(value, unit, 'engineSpeed'));
}

/** Rows spread evenly over the column; the same rows for every column of one length. */
function sampled(values: Float64Array | undefined): Float64Array {
  if (!values) return new Float64Array();
  if (values.length <= ROWS_LOOKED_AT) return values;
  const step = values.length / ROWS_LOOKED_AT;
  return Float64Array.from({ length: ROWS_LOOKED_AT }, (_, at) => values[Math.floor(at * step)] as number);
}
