/**
 * Random numbers without a state: Philox4x32-10 (Salmon, Moraes, Dror and Shaw 2011), from memory and held against their published
 * answers. The counter says which number is wanted, so that the thousandth draw is the same whether or not the others were made, and a
 * slice computed in another thread is the slice of the whole.
 */

const MULTIPLIER_A = 0xd2511f53;
const MULTIPLIER_B = 0xcd9e8d57;
const WEYL_A = 0x9e3779b9;
const WEYL_B = 0xbb67ae85;
const ROUNDS = 10;

export type Key = readonly [number, number];

/** Four whole numbers of 32 bits, written into `block`, from a counter of four and a key of two. */
export function philox(counter: ArrayLike<number>, [keyA, keyB]: Key, block: Uint32Array): void {
  let a = counter[0]!;
  let b = counter[1]!;
  let c = counter[2]!;
  let d = counter[3]!;
  let first = keyA;
  let second = keyB;
  for (let round = 0; round < ROUNDS; round++) {
    const highA = highHalf(MULTIPLIER_A, a);
    const lowA = Math.imul(MULTIPLIER_A, a);
    const highB = highHalf(MULTIPLIER_B, c);
    const lowB = Math.imul(MULTIPLIER_B, c);
    a = highB ^ b ^ first;
    b = lowB;
    c = highA ^ d ^ second;
    d = lowA;
    first = (first + WEYL_A) | 0;
    second = (second + WEYL_B) | 0;
  }
  block[0] = a;
  block[1] = b;
  block[2] = c;
  block[3] = d;
}

/** Upper 32 bits of the product of two whole numbers of 32 bits, by their halves. */
function highHalf(x: number, y: number): number {
  const xHigh = x >>> 16;
  const xLow = x & 0xffff;
  const yHigh = y >>> 16;
  const yLow = y & 0xffff;
  const middle = xHigh * yLow + ((xLow * yLow) >>> 16);
  const other = xLow * yHigh + (middle & 0xffff);
  // Sums stay below 2^33 and are exact as numbers; a shift would cut them at 32 bits.
  return (xHigh * yHigh + Math.floor(middle / 0x10000) + Math.floor(other / 0x10000)) | 0;
}
