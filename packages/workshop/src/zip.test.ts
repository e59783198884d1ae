import { inflateRawSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { type FileToPack, zipOf } from './zip.ts';

/** Reads an archive by its central directory, as PKWARE's APPNOTE 4.3.7, 4.3.12 and 4.3.16 lay it out. */
function unzip(archive: Uint8Array): Map<string, Buffer> {
  const bytes = Buffer.from(archive);
  const end = bytes.lastIndexOf(Buffer.from('PK\u0005\u0006', 'latin1'));
  const files = new Map<string, Buffer>();
  let at = bytes.readUInt32LE(end + 16);
  for (let left = bytes.readUInt16LE(end + 10); left > 0; left--) {
    expect(bytes.readUInt32LE(at)).toBe(0x02014b50);
    const packedLength = bytes.readUInt32LE(at + 20);
    const nameLength = bytes.readUInt16LE(at + 28);
    const local = bytes.readUInt32LE(at + 42);
    const name = bytes.toString('utf8', at + 46, at + 46 + nameLength);
    const data = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
    files.set(name, inflateRawSync(bytes.subarray(data, data + packedLength)));
    expect(files.get(name)!.length).toBe(bytes.readUInt32LE(at + 24));
    at += 46 + nameLength;
  }
  return files;
}

async function packed(files: FileToPack[]): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  for await (const piece of zipOf(files)) pieces.push(piece);
  return Buffer.concat(pieces);
}

test('an archive holds every file under its name', async () => {
  const files = [
    { path: 'book.json', bytes: Buffer.from('{"a": 1}') },
    { path: 'pulls/größe.csv', bytes: Buffer.from('rpm,N·m\n'.repeat(500)) },
    { path: 'empty', bytes: new Uint8Array(0) },
  ];
  const read = unzip(await packed(files));
  expect([...read.keys()]).toEqual(files.map((one) => one.path));
  for (const { path, bytes } of files) expect(read.get(path)!.equals(bytes)).toBe(true);
});

test('an archive of nothing is one too', async () => expect(unzip(await packed([])).size).toBe(0));
