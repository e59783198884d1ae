import { expect, test } from 'vitest';
import { philox } from './seeded-philox.ts';

// The known answers of philox4x32 with ten rounds that were published with the method (file kat_vectors), from memory.
test.each([
  {
    counter: [0, 0, 0, 0],
    key: [0, 0],
    answer: '6627e8d5 e169c58d bc57ac4c 9b00dbd8',
  },
  {
    counter: [0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff],
    key: [0xffffffff, 0xffffffff],
    answer: '408f276d 41c83b0e a20bc7c6 6d5451fd',
  },
  {
    counter: [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344],
    key: [0xa4093822, 0x299f31d0],
    answer: 'd16cfe09 94fdcceb 5001e420 24126ea1',
  },
] as const)('known answer $answer', ({ counter, key, answer }) => {
  const block = new Uint32Array(4);
  philox(counter, key, block);
  expect([...block].map((word) => word.toString(16).padStart(8, '0')).join(' ')).toBe(answer);
});
