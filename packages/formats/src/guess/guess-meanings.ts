import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { type QuantityKind, toInside, type UnitSystem } from '@pullbook/core/quantity';
import { type Remark, remark } from '@pullbook/core/remark';
import { unitOfSpelling } from '../text/unit-spelling.ts';
import { isBehindGears, meaningFromName } from './column-words.ts';
import { guessByIdentity } from './guess-by-identity.ts';
import { looksLikeEngineSpeed, looksLikeTime } from './guess-by-range.ts';
import { absoluteOrGauge } from './manifold-pressure.ts';
import { mixtureByRange } from './mixture.ts';
import { temperatureUnit } from './temperature-unit.ts';
import { timeUnit } from './time-unit.ts';
import type { Guess, UnguessedColumn } from './unguessed-column.ts';
import { multiplierInName, sameMeaning, unitNotNamed, vacuumWithoutSign } from './unit-questions.ts';
import { systemOfUnits, unitByRange } from './usual-units.ts';

/** Meanings of which a pull has one channel; the others may come several times (one exhaust probe a cylinder). */
const ONCE: readonly ChannelMeaning[] = ['time', 'engineSpeed', 'torque', 'power'];

/**
 * Guesses meaning and unit of every column: by name, by unit, by power = torque × speed, by range; in that order of
 * trust. Each guess says why in words. Nothing is certain until a person has confirmed it.
 */
export function guessMeanings(
  columns: readonly UnguessedColumn[],
  decimalMark: '.' | ',',
): { guesses: Guess[]; remarks: Remark[] } {
  const remarks: Remark[] = [];
  const system = systemOfUnits(
    columns.map((column) => column.unitText),
    decimalMark,
  );
  const guesses = columns.map((column) => guessByNameOrUnit(column));
  keepOnePerMeaning(columns, guesses, remarks);
  guessSpeedAndTime(columns, guesses);
  guessByIdentity(columns, guesses, remarks);
  columns.forEach((column, index) => {
    const guess = guesses[index] as Guess;
    if (guess.meaning === 'other' || guess.unit !== '' || guess.kind === 'temperature') return;
    guesses[index] = withUnitByRange(column, guess, system, speedRange(columns, guesses), remarks);
  });
  temperatureUnit(columns, guesses, system, remarks);
  columns.forEach((column, index) => {
    const guess = withoutLostSign(column, guesses[index] as Guess, remarks);
    guesses[index] = mixtureByRange(column, absoluteOrGauge(column, guess, remarks));
    const multiplied = multiplierInName(column, guess);
    if (multiplied) remarks.push(multiplied);
  });
  return { guesses, remarks };
}

/** A guess that says nothing is known; the column keeps its name and unit. */
export function unknownGuess(unitText: string, why: string): Guess {
  const unit = unitOfSpelling(unitText);
  return { meaning: 'other', unit: unitText, kind: unit?.kind ?? 'ratio', basis: 'none', why };
}

function guessByNameOrUnit(column: UnguessedColumn): Guess {
  if (column.isText) return unknownGuess('', 'Its cells are words, not numbers.');
  if (column.count === 0) return unknownGuess(column.unitText, 'It holds no numbers.');
  const says = meaningFromName(column.name);
  if (column.holdsClock) {
    return {
      meaning: 'time',
      unit: 's',
      kind: 'time',
      basis: 'range',
      why: 'Its cells are clock times; read as seconds from the first row.',
    };
  }
  if (says && says.meaning !== 'other') return guessFromName(column, says.meaning);
  if (!says) {
    const byUnit = guessFromUnit(column) ?? guessFromNameAndKind(column);
    if (byUnit) return byUnit;
  }
  return unknownGuess(
    column.unitText,
    `The name “${column.name}” is not known; kept with its name and unit.`,
  );
}

function guessFromName(column: UnguessedColumn, meaning: ChannelMeaning): Guess {
  const { kind, label } = MEANINGS[meaning];
  const named = `The name “${column.name}” means ${label.toLowerCase()}`;
  if (column.unitText === '') return { meaning, unit: '', kind, basis: 'name', why: `${named}.` };
  const unit = unitOfSpelling(column.unitText, kind);
  if (unit) {
    return {
      meaning,
      unit: unit.name,
      kind,
      basis: 'name',
      why: `${named}; its unit ${column.unitText} is in the header.`,
    };
  }
  const turned = TURNED_BY_UNIT[meaning];
  const otherUnit = turned && unitOfSpelling(column.unitText, MEANINGS[turned.to].kind);
  if (turned && otherUnit) {
    const why = `The name “${column.name}” is ${turned.named} and its unit ${column.unitText} says ${turned.says}.`;
    return { meaning: turned.to, unit: otherUnit.name, kind: otherUnit.kind, basis: 'name', why };
  }
  const why = /^s(cfm|l?pm)$|^(n|s)l\/min$|^nm[3³]\/h$/i.test(column.unitText.trim())
    ? `${named}, but ${column.unitText} is a flow of air of a stated kind, and the file does not state it; kept with its name and unit.`
    : `${named}, but ${column.unitText} is no known unit of it; kept with its name and unit.`;
  return unknownGuess(column.unitText, why);
}

/** Meanings that a unit turns into their sibling. */
const TURNED_BY_UNIT: Partial<Record<ChannelMeaning, { to: ChannelMeaning; named: string; says: string }>> = {
  boost: { to: 'manifoldPressure', named: 'a manifold pressure', says: 'absolute' },
  manifoldPressure: { to: 'boost', named: 'a manifold pressure', says: 'gauge' },
  fuelFlow: { to: 'fuelVolumeFlow', named: 'a flow of fuel', says: 'volume' },
  airFlow: { to: 'airVolumeFlow', named: 'a flow of air', says: 'volume' },
};

/** Kinds of which a log has one meaning only. */
const MEANING_OF_KIND: Partial<Record<QuantityKind, ChannelMeaning>> = {
  engineSpeed: 'engineSpeed',
  torque: 'torque',
  power: 'power',
  time: 'time',
};

function guessFromUnit(column: UnguessedColumn): Guess | null {
  const unit = column.unitText === '' ? null : unitOfSpelling(column.unitText);
  const meaning = unit ? MEANING_OF_KIND[unit.kind] : undefined;
  if (!unit || !meaning) return null;
  if (meaning === 'engineSpeed' && !looksLikeEngineSpeed(column, unit.name)) return null;
  const why = `Its unit ${column.unitText} is one of ${MEANINGS[meaning].label.toLowerCase()}.`;
  return { meaning, unit: unit.name, kind: unit.kind, basis: 'range', why };
}

/** What a unit says that a name leaves out: `Oil [°C]` is its temperature, `Oil [bar]` its pressure. */
function guessFromNameAndKind(column: UnguessedColumn): Guess | null {
  const unit = column.unitText === '' ? null : unitOfSpelling(column.unitText);
  const isPressure = unit !== null && unit.kind === 'absolutePressure';
  if (!unit || !(isPressure || unit.kind === 'temperature')) return null;
  const meaning = meaningFromName(`${column.name} ${isPressure ? 'pressure' : 'temperature'}`)?.meaning;
  if (!meaning || meaning === 'other' || (isPressure && !NAMED_BY_MEDIUM.includes(meaning))) return null;
  return guessFromName(column, meaning);
}

/** Pressures that the name of the medium alone tells; of others it leaves open where they are read. */
const NAMED_BY_MEDIUM: readonly ChannelMeaning[] = ['oilPressure', 'fuelPressure', 'crankcasePressure'];

/** A vacuum written without its sign is not taken for a pressure above the air around. */
function withoutLostSign(column: UnguessedColumn, guess: Guess, remarks: Remark[]): Guess {
  const question = vacuumWithoutSign(column, guess);
  if (question === null) return guess;
  remarks.push(question);
  return unknownGuess(column.unitText, question.message);
}

/** Of several torques, powers, speeds or times one is guessed; the observed one before the corrected one. */
function keepOnePerMeaning(columns: readonly UnguessedColumn[], guesses: Guess[], remarks: Remark[]): void {
  for (const meaning of ONCE) {
    const indexes = guesses.flatMap((guess, index) => (guess.meaning === meaning ? [index] : []));
    const rank = (index: number) => {
      const column = columns[index] as UnguessedColumn;
      const says = meaningFromName(column.name);
      const corrected = says?.correction === 'corrected' ? 2 : says?.correction === 'observed' ? 0 : 1;
      const behind = isBehindGears(column.name) ? 5 : 0;
      return (guesses[index]?.basis === 'name' || column.holdsClock ? 0 : 10) + behind + corrected;
    };
    const [kept, ...others] = indexes.sort((a, b) => rank(a) - rank(b) || a - b);
    if (kept === undefined) continue;
    const keptName = columns[kept]?.name ?? '';
    const equals = others.filter((index) => meaning !== 'time' && rank(index) === rank(kept));
    if (equals.length > 0) remarks.push(sameMeaning(columns, kept, equals, meaning));
    for (const index of others) {
      const column = columns[index] as UnguessedColumn;
      const why = `It looks like ${MEANINGS[meaning].label.toLowerCase()} too; “${keptName}” was taken for that. Swap them if that is wrong.`;
      guesses[index] = unknownGuess(column.unitText, why);
    }
    const carriesCorrection =
      (meaning === 'torque' || meaning === 'power') && meaningFromName(keptName)?.correction === 'corrected';
    if (carriesCorrection) {
      const message = `“${keptName}” says that its figures are already corrected. Give the standard and the factor, so that they are not corrected twice.`;
      remarks.push(remark('caution', 'carries-correction', message, { column: kept + 1 }));
    }
  }
}

function guessSpeedAndTime(columns: readonly UnguessedColumn[], guesses: Guess[]): void {
  const missing = (meaning: ChannelMeaning) => !guesses.some((guess) => guess.meaning === meaning);
  const free = (index: number) =>
    guesses[index]?.meaning === 'other' && !columns[index]?.isText && columns[index]?.unitText === '';
  const unnamed = (index: number) => free(index) && meaningFromName(columns[index]?.name ?? '') === null;
  if (missing('engineSpeed')) {
    const index = columns.findIndex((column, at) => unnamed(at) && looksLikeEngineSpeed(column, 'rpm'));
    if (index >= 0) {
      const { low, high } = columns[index] as UnguessedColumn;
      guesses[index] = {
        meaning: 'engineSpeed',
        unit: 'rpm',
        kind: 'engineSpeed',
        basis: 'range',
        why: `It runs from ${low} to ${high} as an engine speed in r/min does.`,
      };
    }
  }
  if (missing('time')) {
    const index = columns.findIndex((column, at) => unnamed(at) && looksLikeTime(column.values));
    if (index >= 0) {
      guesses[index] = {
        meaning: 'time',
        unit: '',
        kind: 'time',
        basis: 'range',
        why: 'It starts near 0 and rises by even steps as time does.',
      };
    }
  }
}

function withUnitByRange(
  column: UnguessedColumn,
  guess: Guess,
  system: UnitSystem,
  sweptRpm: number | null,
  remarks: Remark[],
): Guess {
  if (guess.meaning === 'time') {
    const unit = timeUnit(column, sweptRpm);
    const why = `${guess.why} No unit is named; the engine sweeps as engines do if it is ${unit}.`;
    return { ...guess, unit, why };
  }
  const found = unitByRange(guess.meaning, column, system);
  const asGauge = guess.meaning === 'manifoldPressure' && !found.fits && unitByRange('boost', column, system);
  if (asGauge !== false && asGauge.fits) {
    const gauge: Guess = { ...guess, meaning: 'boost', kind: 'gaugePressure' };
    return withUnitByRange(column, gauge, system, sweptRpm, remarks);
  }
  const { unit, fits } = found;
  if (unit === '') return guess;
  const question = unitNotNamed(column, guess.meaning, found);
  if (question) remarks.push(question);
  const inside = toInside(column.high, unit, guess.kind);
  const reason = fits && Number.isFinite(inside) ? 'from its range' : 'from the units of the other columns';
  const basis = guess.basis === 'name' ? 'name' : 'range';
  return {
    ...guess,
    unit,
    basis,
    why: `${guess.why} No unit is named; ${unit} is taken ${reason}. Confirm it.`,
  };
}

/** Width of the engine speeds of a file, r/min; `null`: it has none. */
function speedRange(columns: readonly UnguessedColumn[], guesses: readonly Guess[]): number | null {
  const at = guesses.findIndex((guess) => guess.meaning === 'engineSpeed');
  const [column, guess] = [columns[at], guesses[at]];
  if (!column || !guess || !(column.high > column.low)) return null;
  const unit = guess.unit || 'rpm';
  return toInside(column.high, unit, 'engineSpeed') - toInside(column.low, unit, 'engineSpeed');
}
