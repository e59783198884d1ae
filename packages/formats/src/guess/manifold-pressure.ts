import { fromInside, toInside } from '@pullbook/core/quantity';
import { type Remark, remark } from '@pullbook/core/remark';
import { unitOfSpelling } from '../text/unit-spelling.ts';
import { plainWords } from './column-words.ts';
import type { Guess, UnguessedColumn } from './unguessed-column.ts';
import { LOWEST_ABSOLUTE } from './usual-units.ts';

/**
 * Settles whether a manifold pressure is absolute or gauge where name and unit leave it open, by range: readings that
 * never come near zero are absolute, readings about or below zero are gauge. A column called boost stays gauge, with a
 * caution where its range looks absolute.
 */
export function absoluteOrGauge(column: UnguessedColumn, guess: Guess, remarks: Remark[]): Guess {
  if (guess.meaning !== 'boost' && guess.meaning !== 'manifoldPressure') return guess;
  if (guess.unit === '' || saysWhich(column)) return guess;
  const low = toInside(column.low, guess.unit, guess.kind);
  const shownLimit = Math.round(fromInside(LOWEST_ABSOLUTE, guess.unit, guess.kind) * 100) / 100;
  if (guess.meaning === 'manifoldPressure' && low < LOWEST_ABSOLUTE) {
    const unit = unitOfSpelling(guess.unit, 'gaugePressure');
    if (!unit) return guess;
    const why = `${guess.why} Its lowest reading, ${column.low} ${guess.unit}, is too low for an absolute pressure at full load (at least ${shownLimit}), so gauge.`;
    return { meaning: 'boost', unit: unit.name, kind: 'gaugePressure', basis: 'range', why };
  }
  if (guess.meaning === 'boost' && low > LOWEST_ABSOLUTE) {
    const message = `“${column.name}” is called boost but never falls below ${column.low} ${guess.unit}: it may be absolute pressure. If it is, choose manifold pressure for it.`;
    remarks.push(remark('caution', 'boost-may-be-absolute', message, { column: column.index + 1 }));
  }
  return guess;
}

function saysWhich(column: UnguessedColumn): boolean {
  if (/\babs(olut\w*)?\b|\bgauge\b|\bgage\b|\bboost\b.*\bgauge\b|relativ/.test(plainWords(column.name)))
    return true;
  const unit = column.unitText.trim();
  const gauge = unitOfSpelling(unit, 'gaugePressure') !== null;
  const absolute = unitOfSpelling(unit, 'absolutePressure') !== null;
  return gauge !== absolute;
}
