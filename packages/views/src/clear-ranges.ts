import type { SaidGain } from './said-gain.ts';
import { listed } from './wording.ts';

/** More stretches than these are counted, not listed. */
const MOST_LISTED = 3;

interface Stretch {
  sign: 1 | -1;
  fromRpm: number;
  toRpm: number;
  /** It reaches the window's lower and upper end. */
  reaches: [low: boolean, high: boolean];
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

/** `above 5,000 rpm`, `below 4,000 rpm`, `from 4,000 to 5,000 rpm`, `throughout` the window */
export function stretchWords({ show }: SaidGain, { fromRpm, toRpm, reaches }: Stretch): string {
  if (reaches[0] && reaches[1]) return 'throughout';
  if (reaches[1]) return `above ${show.speed(fromRpm)}`;
  if (reaches[0]) return `below ${show.speed(toRpm)}`;
  return fromRpm === toRpm ? `at ${show.speed(fromRpm)}` : `from ${show.speedRange([fromRpm, toRpm])}`;
}

/**
 * Where it is clear, in few words; '' where nothing is to be said: `clear above 5,000 rpm`, `a gain is clear above
 * 5,500 rpm and a loss below 4,000 rpm`, `clear on average, at no single speed`.
 */
export function clearWords(said: SaidGain): string {
  const stretches = clearStretches(said);
  const of = (sign: 1 | -1) => {
    const own = stretches.filter((one) => one.sign === sign);
    return own.length > MOST_LISTED
      ? `in ${own.length} stretches`
      : listed(own.map((one) => stretchWords(said, one)));
  };
  const [gains, losses] = [of(1), of(-1)];
  if (gains === '' && losses === '')
    return said.gain.verdict?.word === 'clear' ? 'clear on average, at no single speed' : '';
  if (gains !== '' && losses !== '') return `a gain is clear ${gains} and a loss ${losses}`;
  const isOwn = (gains !== '') === said.gain.meanPower >= 0;
  if (isOwn) return `clear ${gains || losses}`;
  return gains === '' ? `a loss is clear ${losses}` : `a gain is clear ${gains}`;
}

/** The same, and what the rest of the window is. */
export function clearAndRest(said: SaidGain): string {
  const stretches = clearStretches(said);
  const words = clearWords(said);
  const [only] = stretches;
  if (!only) return words;
  if (stretches.length > 1) return `${words}, within the noise elsewhere`;
  if (only.reaches[0] && only.reaches[1]) return words;
  const rest = only.reaches[1] ? 'below' : only.reaches[0] ? 'above' : 'elsewhere';
  return `${words}, within the noise ${rest}`;
}
