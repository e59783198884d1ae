import { parseNumber, parseQuantity } from '@pullbook/core/quantity';
import { InvalidArgumentError } from 'commander';

/** A number as an option's value; decimal comma allowed. */
export function numberValue(text: string): number {
  const value = parseNumber(text, 'either');
  if (value === null || !Number.isFinite(value))
    throw new InvalidArgumentError('Give a number, such as 1.021.');
  return value;
}

/** A whole number from 1 as an option's value. */
export function countValue(text: string): number {
  if (!/^[1-9]\d{0,5}$/.test(text)) throw new InvalidArgumentError('Give a whole number from 1 to 999999.');
  return Number(text);
}

/** A port as an option's value. */
export function portValue(text: string): number {
  const value = Number(text);
  if (!/^\d+$/.test(text) || value > 65_535)
    throw new InvalidArgumentError('Give a port from 0 to 65535 (0: any free one).');
  return value;
}

/** Two engine speeds, `4000-6500`. */
export function windowValue(text: string): [number, number] {
  const [, low, high] =
    /^\s*(\d+(?:\.\d+)?)\s*(?:-|–|\.\.|to)\s*(\d+(?:\.\d+)?)\s*(?:rpm|r\/min)?\s*$/.exec(text) ?? [];
  if (low === undefined || high === undefined || Number(low) >= Number(high)) {
    throw new InvalidArgumentError('Give two engine speeds in r/min, such as 4000-6500.');
  }
  return [Number(low), Number(high)];
}

/** Engine speeds in a list, `4000,5000`; an option given several times adds up. */
export function speedsValue(text: string, before: number[] = []): number[] {
  const given = text.split(',').map((one) => one.trim().replace(/\s*(?:rpm|r\/min)$/, ''));
  if (!given.every((one) => /^\d+(?:\.\d+)?$/.test(one) && Number(one) > 0)) {
    throw new InvalidArgumentError('Give engine speeds in r/min, such as 4000,5000.');
  }
  return [...before, ...given.map(Number)];
}

/** `0.5%` as a share; a number without its sign is refused, since 0.5 may be meant as half. */
export function shareValue(text: string): number {
  const [, number] = /^\s*(\d+(?:[.,]\d+)?)\s*%\s*$/.exec(text) ?? [];
  const value = number === undefined ? null : parseNumber(number, 'either');
  if (value === null || value > 20)
    throw new InvalidArgumentError('Give a share of the power with its sign, 0% to 20%, such as 0.5%.');
  return value / 100;
}

/** `0.5%` as a share, more than none. */
export function shareAboveNoneValue(text: string): number {
  const value = shareValue(text);
  if (value === 0)
    throw new InvalidArgumentError(
      'Give a share of the power above 0%, such as 0.5%; nothing on a brake is known to 0%.',
    );
  return value;
}

/** `0.1%` or `0.1%/h` as a share an hour. */
export function shareAnHourValue(text: string): number {
  return shareValue(text.replace(/\s*(?:\/|per\s|an\s)\s*h(?:our)?\s*$/, ''));
}

/** Degrees of freedom: how well a scatter is known. */
export function degreesOfFreedomValue(text: string): number {
  const value = parseNumber(text, 'either');
  if (value === null || !(value >= 1) || value > 1e6)
    throw new InvalidArgumentError('Give degrees of freedom from 1 to 1000000, such as 20.');
  return value;
}

/** Words in a list, `png,svg`; an option given several times adds up. */
export function wordsValue(text: string, before: string[] = []): string[] {
  return [
    ...before,
    ...text
      .split(',')
      .map((word) => word.trim())
      .filter(Boolean),
  ];
}

/** Ids in a list, `3f2a,77b0`; an option given several times adds up. */
export function idsValue(text: string, before: string[] = []): string[] {
  return [
    ...before,
    ...text
      .split(',')
      .map((one) => one.trim())
      .filter((one) => one !== ''),
  ];
}

/** A text in a list; an option given several times adds up. */
export function textsValue(text: string, before: string[] = []): string[] {
  return [...before, text];
}

/** `B=no`: whether the engine was taken apart for a combination of a trial; an option given several times adds up. */
export function takenApartValue(
  text: string,
  before: Record<string, boolean | null> = {},
): Record<string, boolean | null> {
  const [, key = '', word = ''] = /^\s*([A-Ha-h])\s*=\s*(yes|no|parts)\s*$/i.exec(text) ?? [];
  if (key === '')
    throw new InvalidArgumentError(
      'Give the letter of a combination in the trial and yes, no, or parts (told by the parts that changed), such as B=no.',
    );
  const said = { yes: true, no: false, parts: null }[word.toLowerCase() as 'yes' | 'no' | 'parts'];
  return { ...before, [key.toUpperCase()]: said };
}

/** `LEFT=RIGHT`, parted at the first equals sign; right is '' without one. */
export function parted(text: string): [left: string, right: string] {
  const place = text.indexOf('=');
  return place < 0 ? [text.trim(), ''] : [text.slice(0, place).trim(), text.slice(place + 1).trim()];
}

/** `lambda=0.3s`: a channel and how late it is, s; an option given several times adds up. */
export function lagValue(text: string, before: Record<string, number> = {}): Record<string, number> {
  const [channel, lag] = parted(text);
  const read = parseQuantity(lag, 'time');
  if (channel === '' || !read.ok)
    throw new InvalidArgumentError(
      'Give a channel and how late it comes, such as "lambda=0.3s"; minus where it comes early, 0s to take the lag away.',
    );
  return { ...before, [channel]: read.value };
}

/** Two engine speeds, or `found`: let the window be found again. */
export function windowOrFoundValue(text: string): [number, number] | 'found' {
  return text.trim().toLowerCase() === 'found' ? 'found' : windowValue(text);
}

/** `100rpm`, or `adapted`: a width that goes with the sampling. */
export function binWidthValue(text: string): number | 'adapted' {
  if (text.trim().toLowerCase() === 'adapted') return 'adapted';
  const read = parseQuantity(text, 'engineSpeed');
  if (!read.ok) throw new InvalidArgumentError('Give a width with its unit, such as 100rpm, or "adapted".');
  return read.value;
}

/** `5600rpm: throttle lifted`, or words alone; an option given several times adds up. */
export function eventValue(
  text: string,
  before: { engineSpeed: string | null; text: string }[] = [],
): { engineSpeed: string | null; text: string }[] {
  const [, speed, words] = /^\s*(\d[\d.,]*\s*[^\s:]*)\s*:(.*)$/su.exec(text) ?? [];
  return [...before, { engineSpeed: speed?.trim() ?? null, text: (words ?? text).trim() }];
}
