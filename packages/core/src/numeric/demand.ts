/** Throws unless `value` is above 0; Infinity passes where `endless` says so. */
export function demandPositive(what: string, value: number, endless = false): void {
  if (value > 0 && (endless || value < Number.POSITIVE_INFINITY)) return;
  throw new RangeError(`${what} is ${value}: it must be ${endless ? '' : 'finite and '}above 0`);
}

/** Throws unless `value` is a probability strictly between 0 and 1. */
export function demandProbability(what: string, value: number): void {
  if (value > 0 && value < 1) return;
  throw new RangeError(`${what} is ${value}: it must be between 0 and 1, both left out`);
}

/** Throws on NaN. */
export function demandNumber(what: string, value: number): void {
  if (!Number.isNaN(value)) return;
  throw new RangeError(`${what} is NaN: it must be a number`);
}
