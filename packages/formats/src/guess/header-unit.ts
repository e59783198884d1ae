import { looksLikeUnit, unitOfSpelling } from '../text/unit-spelling.ts';
import { meaningFromName } from './column-words.ts';

export interface NameAndUnit {
  name: string;
  /** As written, '' none. */
  unitText: string;
}

/** Words that are in the table of units and are more often part of a name: `fuel ratio`, `rpm min`. */
const MORE_OFTEN_A_NAME = new Set([
  'min',
  'ratio',
  'lambda',
  'λ',
  'afr',
  'a/f',
  'ch',
  'pk',
  '-',
  'in',
  'pi',
  'per',
]);
/** Letters taken for a unit after an underscore or a blank: `temp_C`, `time_s`. */
const LETTER_UNITS = new Set(['s', 'V', 'C', 'F', 'K', 'W']);

/**
 * Parts a header into name and unit: `Torque [Nm]`, `Torque (N·m)`, `Torque, Nm`, `Torque / Nm`, `Torque in Nm`,
 * `torque_Nm`, `Torque Nm`. A header that is a unit alone (`rpm`) is both.
 *
 * @example nameAndUnit('fuel_flow_kg_h') // { name: 'fuel_flow', unitText: 'kg/h' }
 */
export function nameAndUnit(header: string): NameAndUnit {
  const text = header.replace(/\s+/g, ' ').trim();
  if (unitOfSpelling(text) && !MORE_OFTEN_A_NAME.has(text.toLowerCase()))
    return { name: text, unitText: text };
  return bracketed(text) ?? afterMark(text) ?? afterUnderscoreOrBlank(text) ?? { name: text, unitText: '' };
}

function bracketed(text: string): NameAndUnit | null {
  const square = /^(.*?)\s*[[{]([^[\]{}]*)[\]}]\s*(.*)$/.exec(text);
  if (square) return named(`${square[1]} ${square[3]}`, square[2] ?? '');
  for (const pattern of [/^(.*?)\s*\((.*)\)$/, /^(.*)\s*\(([^()]*)\)$/]) {
    const round = pattern.exec(text);
    if (round?.[2] !== undefined && (looksLikeUnit(round[2]) || round[2].trim() === '-')) {
      return named(round[1] ?? '', round[2]);
    }
  }
  return null;
}

function afterMark(text: string): NameAndUnit | null {
  const match = /^(.+?)(?:\s*,\s*|\s+\/\s*|\s+in\s+)([^,]+)$/.exec(text);
  return match?.[2] && looksLikeUnit(match[2]) ? named(match[1] ?? '', match[2]) : null;
}

function afterUnderscoreOrBlank(text: string): NameAndUnit | null {
  const tokens = text.split(/[_ ]/);
  for (const count of [2, 1]) {
    if (tokens.length <= count) continue;
    const last = tokens.slice(-count);
    const unitText = last.join('/');
    if (MORE_OFTEN_A_NAME.has(unitText.toLowerCase()) || last.some((token) => token === '')) continue;
    if (unitText.length === 1 && !LETTER_UNITS.has(unitText)) continue;
    const unit = unitOfSpelling(unitText) ?? (count === 2 ? unitOfSpelling(last.join(' ')) : null);
    if (!unit && !(count === 1 && unitText.includes('/') && looksLikeUnit(unitText))) continue;
    const name = text.slice(0, text.length - last.join(' ').length - 1);
    // `Engine RPM`: without its last word the name would say nothing.
    return meaningFromName(name) ? named(name, unitText) : { name: text, unitText };
  }
  return null;
}

function named(name: string, unitText: string): NameAndUnit {
  const unit = unitText.trim();
  const bare = name
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/[_,:]$/, '');
  return { name: bare === '' ? unit : bare, unitText: unit === '-' ? '' : unit };
}
