const PLUS = 43;
const MINUS = 45;
const ZERO = 48;
const SMALL_E = 101;

/** So many digits make a whole number below 2^53, which a double holds exactly. */
const EXACT_DIGITS = 15;
/** Powers of ten that a double holds exactly: one multiplication or division by one of them is correctly rounded. */
const POWERS = Float64Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));
const MOST_EXACT_POWER = POWERS.length - 1;

/** Reads plain decimal numbers from bytes: `-12.5`, `+3`, `.5`, `1e-3`, each as `Number` would read it. */
export class PlainNumbers {
  /** Where the number read last ended: before the first byte that is no part of it. */
  end = 0;

  /**
   * The number that starts at `from`; NaN where none does, or one that no double holds. The bytes must go on after it.
   *
   * @example new PlainNumbers().at(bytesOf('301,5;'), 0, COMMA) // 301.5, and `end` is 5
   */
  at(bytes: Uint8Array, from: number, decimalMark: number): number {
    let at = from;
    let byte = bytes[at] as number;
    const negative = byte === MINUS;
    if (negative || byte === PLUS) at += 1;
    const digitsStart = at;
    let whole = 0;
    let digit = (bytes[at] as number) - ZERO;
    while (digit >= 0 && digit <= 9) {
      whole = 10 * whole + digit;
      digit = (bytes[++at] as number) - ZERO;
    }
    let digits = at - digitsStart;
    let power = 0;
    byte = bytes[at] as number;
    if (byte === decimalMark) {
      const fractionStart = ++at;
      digit = (bytes[at] as number) - ZERO;
      while (digit >= 0 && digit <= 9) {
        whole = 10 * whole + digit;
        digit = (bytes[++at] as number) - ZERO;
      }
      power = fractionStart - at;
      digits -= power;
      byte = bytes[at] as number;
    }
    this.end = at;
    if (digits === 0) return Number.NaN;
    if ((byte | 32) === SMALL_E) {
      const exponent = this.exponentAt(bytes, at + 1);
      if (Number.isNaN(exponent)) return Number.NaN;
      power += exponent;
    }
    if (digits > EXACT_DIGITS || power > MOST_EXACT_POWER || power < -MOST_EXACT_POWER)
      return this.longNumber(bytes, from, decimalMark);
    const value = power < 0 ? whole / (POWERS[-power] as number) : whole * (POWERS[power] as number);
    return negative ? -value : value;
  }

  private exponentAt(bytes: Uint8Array, from: number): number {
    let at = from;
    const down = bytes[at] === MINUS;
    if (down || bytes[at] === PLUS) at += 1;
    const start = at;
    let exponent = 0;
    for (let digit = (bytes[at] as number) - ZERO; digit >= 0 && digit <= 9; at++) {
      exponent = 10 * exponent + digit;
      digit = (bytes[at + 1] as number) - ZERO;
    }
    this.end = at;
    return at === start ? Number.NaN : down ? -exponent : exponent;
  }

  /** More digits than a double can gather one by one. */
  private longNumber(bytes: Uint8Array, from: number, decimalMark: number): number {
    let text = '';
    for (let at = from; at < this.end; at++)
      text += bytes[at] === decimalMark ? '.' : String.fromCharCode(bytes[at] as number);
    const value = Number(text);
    return Number.isFinite(value) ? value : Number.NaN;
  }
}
