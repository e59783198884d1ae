import type { SaidGain } from './said-gain.ts';
import { listed } from './wording.ts';

/** More stretches than these are not listed in a sentence. */
const MOST_LISTED = 2;
/** A stretch below this width is a crumb beside a wider one, r/min. */
const NARROW_RPM = 200;

interface Stretch {
  sign: 1 | -1;
  fromRpm: number;
  toRpm: number;
  /** It reaches the window's lower and upper end. */
  reaches: [low: boolean, high: boolean];
}

/** Clear stretches of one sign as they are spoken of; tables and the exact figures have them all. */
export interface ToldStretches {
  /** Listed one by one; the narrow ones beside wider ones are left out. Empty: only in places. */
  listed: Stretch[];
  /** From the first of them to the last, r/min. */
  between: [low: number, high: number];
  /** Some are clear that are not listed. */
  more: boolean;
}

/** The stretches of engine speed in which a gain or a loss is clear, as the band for all speeds at once has them. */
export function clearStretches({ gain, comparison, window }: SaidGain): Stretch[] {
  const nodes = [...comparison.engineSpeedRpm].filter(
    (rpm, index) => rpm >= window[0] && rpm <= window[1] && Number.isFinite(gain.power[index]),
  );
  const [first, last] = [nodes[0] ?? window[0], nodes.at(-1) ?? window[1]];
  return (gain.band?.clearRanges ?? []).map(({ fromRpm, toRpm, sign }) => ({
    sign,
    fromRpm,
    toRpm,
    reaches: [fromRpm <= first, toRpm >= last],
  }));
}

/** Those of one sign, fit to be said; `null`: there are none. */
export function toldStretches(said: SaidGain, sign: 1 | -1): ToldStretches | null {
  const own = clearStretches(said).filter((one) => one.sign === sign);
  const [first] = own;
  if (!first) return null;
  const wide = own.filter(({ fromRpm, toRpm }) => toRpm - fromRpm >= NARROW_RPM);
  const spoken = own.length === 1 ? own : wide.length <= MOST_LISTED ? wide : [];
  return {
    listed: spoken,
    between: [first.fromRpm, own.at(-1)!.toRpm],
    more: spoken.length < own.length,
  };
}

/** `above 5,000 rpm`, `below 4,000 rpm`, `from 4,000 to 5,000 rpm`, `throughout` the window */
function stretchWords({ show }: SaidGain, { fromRpm, toRpm, reaches }: Stretch): string {
  if (reaches[0] && reaches[1]) return 'throughout';
  if (fromRpm === toRpm) return `only at ${show.speed(fromRpm)}`;
  if (reaches[1]) return `above ${show.speed(fromRpm)}`;
  if (reaches[0]) return `below ${show.speed(toRpm)}`;
  return `from ${show.speedRange([fromRpm, toRpm])}`;
}

/** `above 5,000 rpm`, `only in places between 4,850 and 6,150 rpm`; '' where nothing of that sign is clear. */
export function stretchesWords(said: SaidGain, sign: 1 | -1): string {
  const told = toldStretches(said, sign);
  if (told === null) return '';
  if (told.listed.length > 0) return listed(told.listed.map((one) => stretchWords(said, one)));
  const { show } = said;
  const [low, high] = told.between;
  return `only in places between ${show.number(low, 'engineSpeed')} and ${show.speed(high)}`;
}

/**
 * Where it is clear, in few words; '' where nothing is to be said: `clear above 5,000 rpm`, `a gain is clear above
 * 5,500 rpm and a loss below 4,000 rpm`, `clear on average only`.
 */
export function clearWords(said: SaidGain): string {
  const [gains, losses] = [stretchesWords(said, 1), stretchesWords(said, -1)];
  if (gains === '' && losses === '')
    return said.gain.verdict?.word === 'clear' ? 'clear on average only' : '';
  if (gains !== '' && losses !== '') return `a gain is clear ${gains} and a loss ${losses}`;
  const isOwn = (gains !== '') === said.gain.meanPower >= 0;
  if (isOwn) return `clear ${gains || losses}`;
  return gains === '' ? `a loss is clear ${losses}` : `a gain is clear ${gains}`;
}
