import { isAbsolute } from 'node:path';
import { type CorrectionId, correctionById } from '@pullbook/core/air';
import { type DecimalMark, parseQuantity, type UnitSystem } from '@pullbook/core/quantity';
import { usualParts } from '@pullbook/core/reach';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { RuleThresholds } from '@pullbook/core/rule';
import type { OwnPrior } from '@pullbook/core/shop';
import { type PlainParts, partsToPlain, readPartsText, readPlainParts } from '@pullbook/formats';
import { type ShopMark, storedMark } from '../mark.ts';
import { ruleThresholdsFrom } from './rule-thresholds.ts';
import { scatterPriorFrom } from './scatter-prior.ts';
import { BIN_WIDTH_RPM } from './treatment-text.ts';

/** What the shop settled once, for all its machines and the command line. */
export interface ShopSettings {
  units: UnitSystem;
  decimalMark: DecimalMark;
  /** What a new trial starts with and a pull is first shown by. */
  correction: CorrectionId;
  /** r/min; `null`: adapted to the sampling. A pull's own treatment goes before it. */
  binWidthRpm: number | null;
  /** For new pulls of which no cell is said; `null`: none. */
  cell: string | null;
  /** `system`: as the machine is set. A machine may choose otherwise for itself. */
  theme: 'system' | 'light' | 'dark';
  /** Single-letter keys of the screens; some people need them off. */
  letterKeys: boolean;
  /** '' none */
  shopName: string;
  /** Where the shop is found, a line under its name in a report; '' none. */
  shopContact: string;
  mark: ShopMark | null;
  /** Folder of the daily backups; `null`: none are made. */
  backupFolder: string | null;
  /** The shop's own guess of its scatter, until its pulls say better; `null`: as built in. */
  scatterPrior: OwnPrior | null;
  /** Smallest gain that matters, share of the baseline's average power. */
  worthwhileGain: number;
  /** The shop's own thresholds of the rules by their ids, inside units; what is left out stands as in the catalogue. */
  ruleThresholds: RuleThresholds;
  /** What the shop can buy, as a parts file has it; `null`: what is usual. */
  partsList: PlainParts | null;
}

export const FIRST_SETTINGS: ShopSettings = Object.freeze({
  units: 'us',
  decimalMark: '.',
  correction: 'sae-j1349',
  binWidthRpm: null,
  cell: null,
  theme: 'system',
  letterKeys: true,
  shopName: '',
  shopContact: '',
  mark: null,
  backupFolder: null,
  scatterPrior: null,
  worthwhileGain: 0.01,
  ruleThresholds: Object.freeze({}),
  partsList: null,
});

const LONGEST_NAME = 80;
const LONGEST_CONTACT = 160;

/**
 * What may stand for each setting, as JSON or as a person writes it (`si`, `200rpm`, `off`); everything else is refused in
 * words.
 */
export const SETTING_READERS: {
  [Name in keyof ShopSettings]: (given: unknown) => Result<ShopSettings[Name]>;
} = {
  units: (given) => oneOf('units', given, { us: 'us', si: 'si' }),
  decimalMark: (given) =>
    oneOf<DecimalMark>('decimalMark', given, { '.': '.', ',': ',', point: '.', comma: ',' }),
  correction: (given) => {
    const found = typeof given === 'string' ? correctionById(given.trim()) : undefined;
    return found
      ? accepted(found.id)
      : refusal('correction', given, 'observed, sae-j1349, sae-j607, iso-1585, din-70020');
  },
  binWidthRpm: (given) => binWidthFrom(given),
  cell: (given) => nameOrNone('cell', given),
  theme: (given) => oneOf('theme', given, { system: 'system', light: 'light', dark: 'dark' }),
  letterKeys: (given) => oneOf('letterKeys', given, { true: true, false: false, on: true, off: false }),
  shopName: (given) => {
    const read = nameOrNone('shopName', given);
    return read.ok ? accepted(read.value ?? '') : read;
  },
  shopContact: (given) => {
    const read = nameOrNone('shopContact', given, LONGEST_CONTACT);
    return read.ok ? accepted(read.value ?? '') : read;
  },
  mark: (given) => (isNone(given) ? accepted(null) : storedMark(given)),
  backupFolder: (given) => {
    if (isNone(given)) return accepted(null);
    const folder = typeof given === 'string' ? given.trim() : '';
    return isAbsolute(folder)
      ? accepted(folder)
      : refusal('backupFolder', given, 'a whole path, from the root or the drive on; or none');
  },
  scatterPrior: (given) => (isNone(given) ? accepted(null) : scatterPriorFrom(given)),
  worthwhileGain: (given) => worthwhileGainFrom(given),
  ruleThresholds: (given) => (isNone(given) ? accepted({}) : ruleThresholdsFrom(given)),
  partsList: (given) => (isNone(given) ? accepted(null) : partsListFrom(given)),
};

/** Names of all settings, in the order in which they are shown. */
export const SETTING_NAMES = Object.keys(FIRST_SETTINGS) as (keyof ShopSettings)[];

function refusal(name: keyof ShopSettings, given: unknown, allowed: string): Result<never> {
  const shown = typeof given === 'string' ? `"${given}"` : (JSON.stringify(given) ?? 'nothing');
  return refused(
    remark('refusal', 'setting', `Setting ${name}: ${shown} cannot stand there. Accepted: ${allowed}.`),
  );
}

function oneOf<T>(name: keyof ShopSettings, given: unknown, allowed: Record<string, T>): Result<T> {
  const wanted = String(given).trim().toLowerCase();
  return Object.hasOwn(allowed, wanted)
    ? accepted(allowed[wanted]!)
    : refusal(name, given, Object.keys(allowed).join(', '));
}

/** Written by a person where nothing is to stand. */
const isNone = (given: unknown): boolean =>
  given === null || (typeof given === 'string' && /^\s*(none)?\s*$/i.test(given));

function nameOrNone(name: keyof ShopSettings, given: unknown, longest = LONGEST_NAME): Result<string | null> {
  if (isNone(given)) return accepted(null);
  const text = typeof given === 'string' ? given.trim().replace(/\s+/gu, ' ') : null;
  return text !== null && text.length <= longest
    ? accepted(text)
    : refusal(name, given, `a text of at most ${longest} letters, or none`);
}

function binWidthFrom(given: unknown): Result<number | null> {
  if (isNone(given) || (typeof given === 'string' && given.trim().toLowerCase() === 'adapted'))
    return accepted(null);
  const read = typeof given === 'string' ? parseQuantity(given, 'engineSpeed') : null;
  const width = typeof given === 'number' ? given : read?.ok ? read.value : Number.NaN;
  return width >= BIN_WIDTH_RPM[0] && width <= BIN_WIDTH_RPM[1]
    ? accepted(width)
    : refusal('binWidthRpm', given, `${BIN_WIDTH_RPM.join(' to ')} rpm with the unit, or adapted`);
}

/** The parts list of a shop, in its plain form or as the text of a parts file; its own form is what is kept. */
function partsListFrom(given: unknown): Result<PlainParts> {
  const read = typeof given === 'string' ? readPartsText(given, 'partsList') : readPlainParts(given);
  return read.ok ? accepted(partsToPlain({ ...usualParts(), ...read.value })) : read;
}

/** Smallest and largest gain that a shop may hold for worth while, shares. */
const WORTHWHILE_GAIN = [0.001, 0.2] as const;

function worthwhileGainFrom(given: unknown): Result<number> {
  if (isNone(given)) return accepted(FIRST_SETTINGS.worthwhileGain);
  const read = typeof given === 'string' ? parseQuantity(given, 'ratio') : null;
  const gain = typeof given === 'number' ? given : read?.ok ? read.value : Number.NaN;
  return gain >= WORTHWHILE_GAIN[0] && gain <= WORTHWHILE_GAIN[1]
    ? accepted(gain)
    : refusal('worthwhileGain', given, '0.1 % to 20 %, with the sign, or none for 1 %');
}
