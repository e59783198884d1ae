import { type QuantityKind, writeSaid } from '@pullbook/core/quantity';
import type { Figure, Said } from '@pullbook/core/remark';
import type { LimitFinding } from '@pullbook/core/rule';
import type { Showing } from '../showing.ts';
import { inSentence } from '../wording.ts';

/** Below this share a limit is near; common practice, no source. */
const NEAR = 0.05;
/** Below this a share has a decimal. */
const FINE = 0.1;
/** Equal but for the computer's rounding. */
const SAME = 1e-9;

/** How a limit's value is written: as its own sentence does it, else as its kind is. */
export const limitValue = (show: Showing, limit: LimitFinding): string =>
  figureText(show, limit, limit.value);

export const limitThreshold = (show: Showing, limit: LimitFinding): string =>
  figureText(show, limit, limit.threshold);

/** `at most 52,000 rpm`, `at least 3 mm` */
export const thresholdWords = (show: Showing, limit: LimitFinding): string =>
  `${limit.stay === 'below' ? 'at most' : 'at least'} ${limitThreshold(show, limit)}`;

/** `1.2 % left`, `16 % to spare` above the least, `7.0 % over`, `12 % short` */
export function leftWords(show: Showing, { margin, stay }: LimitFinding): string {
  const size = Math.abs(margin);
  const share = show.perCent(size, { decimals: size < FINE ? 1 : 0 });
  if (margin >= 0) return stay === 'below' ? `${share} left` : `${share} to spare`;
  return `${share} ${stay === 'below' ? 'over' : 'short'}`;
}

/** `impeller speed 51,400 of 52,000 rpm, 1.2 % left, at 6,900 rpm`, to stand inside a sentence */
export function limitLine(show: Showing, limit: LimitFinding): string {
  const value = limitValue(show, limit);
  const threshold = limitThreshold(show, limit);
  const both =
    limit.stay === 'below'
      ? `${withoutSharedUnit(value, threshold)} of ${threshold}`
      : `${value}, ${thresholdWords(show, limit)}`;
  const at = limit.engineSpeedRpm === null ? '' : `, at ${show.speed(limit.engineSpeedRpm)}`;
  return `${inSentence(limit.label)} ${both}, ${leftWords(show, limit)}${at}`;
}

export function limitState({ margin }: LimitFinding): 'within' | 'near' | 'passed' {
  if (margin < 0) return 'passed';
  return margin < NEAR ? 'near' : 'within';
}

/** `51,400` before `52,000 rpm` */
function withoutSharedUnit(value: string, threshold: string): string {
  const [, unit = ''] = threshold.split('\u00a0');
  return unit !== '' && value.endsWith(`\u00a0${unit}`) ? value.slice(0, -unit.length - 1) : value;
}

function figureText(show: Showing, { said, kind }: LimitFinding, value: number): string {
  const figure = ofValue(said, value) ?? ofKind(said, kind);
  if (figure === null) return show.quantity(value, kind, kind === 'ratio' ? { decimals: 2 } : {});
  return writeSaid('', [{ ...figure, value }], show.options);
}

/** The figure of a sentence that has this value. */
const ofValue = (said: Said, value: number): Figure | null =>
  figuresOf(said).find((one) => Math.abs(one.value - value) <= SAME * Math.abs(value)) ?? null;

/** Else one of the same kind, whose units and decimals then do for this value too. */
const ofKind = (said: Said, kind: QuantityKind): Figure | null =>
  figuresOf(said).find((one) => one.kind === kind) ?? null;

const figuresOf = ({ parts }: Said): Figure[] =>
  parts.flatMap((part) => (typeof part === 'string' || part.isBare === true ? [] : [part]));
