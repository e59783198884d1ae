import { hashOfText } from './fingerprint.ts';
import { type Key, philox } from './seeded-philox.ts';

/** Half a step of 32 bits keeps the logarithm from nought: 6.7 standard deviations at most. */
const STEP = 2 ** -32;

/**
 * A source of standard normal numbers that is asked by place: the same seed, name and draw give the same numbers on every
 * machine, in any order. Numbers by Box and Muller from Philox. Different names are independent.
 *
 * @param name  what is drawn, e.g. the key of a group: hashed by FNV-1a
 * @example normalSource(7, 'baseline')(42, out) // fills `out` with the numbers of draw 42
 */
export function normalSource(seed: number, name: string): (draw: number, out: Float64Array) => void {
  const key: Key = [seed >>> 0, hashOfText(name)];
  const counter = new Uint32Array(4);
  // What of the seed lies above 32 bits tells seeds apart too.
  counter[2] = Math.floor(seed / 2 ** 32);
  const block = new Uint32Array(4);
  return (draw, out) => {
    counter[0] = draw;
    for (let place = 0; place < out.length; place += 4) {
      counter[1] = place;
      philox(counter, key, block);
      for (let pair = 0; pair < 4 && place + pair < out.length; pair += 2) {
        const radius = Math.sqrt(-2 * Math.log((block[pair]! + 0.5) * STEP));
        const turn = 2 * Math.PI * block[pair + 1]! * STEP;
        out[place + pair] = radius * Math.cos(turn);
        if (place + pair + 1 < out.length) out[place + pair + 1] = radius * Math.sin(turn);
      }
    }
  };
}
