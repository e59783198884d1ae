import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { hashOf } from './hash-of.ts';

test('the hash is what Node makes of the same bytes, in one piece or in many', async () => {
  expect(await hashOf(new Blob(['']))).toBe(createHash('sha256').digest('hex'));
  const bytes = Uint8Array.from({ length: 300_001 }, (_, index) => (index * 7919) % 251);
  expect(await hashOf(new Blob([bytes]))).toBe(createHash('sha256').update(bytes).digest('hex'));
});
