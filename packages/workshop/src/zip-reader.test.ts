import fc from 'fast-check';
import { zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { zipOf } from './zip.ts';
import { MOST_UNPACKED, openZip } from './zip-reader.ts';

const TEXT = new TextEncoder().encode('a line that is there often\n'.repeat(200));

async function packed(files: Record<string, Uint8Array>): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  const given = Object.entries(files).map(([path, bytes]) => ({ path, bytes }));
  for await (const piece of zipOf(given)) pieces.push(piece);
  return new Uint8Array(Buffer.concat(pieces));
}

/** Whatever is read: the bytes, or the code of the refusal. */
function reading(bytes: Uint8Array, path: string): unknown {
  const archive = openZip(bytes);
  if (!archive.ok) return archive.remarks[0]!.code;
  const read = archive.value.read(path);
  return read === null ? null : read.ok ? read.value : read.remarks[0]!.code;
}

test('archives that another program packed read back, stored and deflated, with names of any script', async () => {
  // fflate 0.8.3 packs, and shares no code with the reading.
  const stored = zipSync({ '漢字.csv': TEXT, 'folder/b.txt': new Uint8Array() }, { level: 0 });
  for (const bytes of [stored, await packed({ '漢字.csv': TEXT, 'folder/b.txt': new Uint8Array() })]) {
    const archive = openZip(bytes);
    expect(archive).toMatchObject({ ok: true, value: { paths: ['漢字.csv', 'folder/b.txt'] } });
    expect(reading(bytes, '漢字.csv')).toEqual(TEXT);
    expect(reading(bytes, 'folder/b.txt')).toEqual(new Uint8Array());
    expect(reading(bytes, 'not there')).toBeNull();
  }
});

test('what is none, is cut off, or is another byte anywhere is refused or the same, and never another content', async () => {
  const bytes = await packed({ a: TEXT, b: Uint8Array.from({ length: 300 }, (_, at) => (at * 97) % 251) });
  const whole = reading(bytes, 'b');
  for (const none of [
    new Uint8Array(),
    TEXT,
    bytes.subarray(0, -1),
    bytes.subarray(0, 40),
    bytes.subarray(1),
  ])
    expect(['zip-damaged', null]).toContain(reading(none, 'b'));
  fc.assert(
    fc.property(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }), (at, flip) => {
      const spoiled = Uint8Array.from(bytes);
      spoiled[at]! ^= flip;
      const read = reading(spoiled, 'b');
      if (read instanceof Uint8Array) expect(read).toEqual(whole);
      else expect(['zip-damaged', 'zip-too-large', null]).toContain(read);
    }),
    { numRuns: 400 },
  );
});

test('an archive that states more than is allowed is refused before it is unpacked; one that states less than it has, too', async () => {
  const bytes = await packed({ a: TEXT });
  const view = new DataView(bytes.buffer);
  const central = bytes.length - 22 - 46 - 1;
  expect(view.getUint32(central, true)).toBe(0x02014b50);
  view.setUint32(central + 24, MOST_UNPACKED + 1, true);
  expect(openZip(bytes)).toMatchObject({ ok: false, remarks: [{ code: 'zip-too-large' }] });
  view.setUint32(central + 24, TEXT.length - 1, true);
  expect(reading(bytes, 'a')).toBe('zip-damaged');
});
