import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Book, openBook } from '@pullbook/store';

/** A new book in a temporary folder; `remove` closes it and clears the folder away. */
export async function temporaryBook(): Promise<{ book: Book; folder: string; remove: () => Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'pullbook-workshop-'));
  const book = await openBook(join(folder, 'book'), { create: { name: 'Test book' } });
  const remove = async (): Promise<void> => {
    await book.close();
    await rm(folder, { recursive: true, force: true });
  };
  return { book, folder, remove };
}

/** An invented step test, N·m against r/min, as the bytes of a file. */
export function stepTestFile(scale = 1): Uint8Array {
  const rows = Array.from({ length: 26 }, (_, row) => 2000 + 180 * row);
  const line = (rpm: number): string => `${rpm},${(scale * (400 - ((rpm - 4200) / 300) ** 2)).toFixed(3)}`;
  return new TextEncoder().encode(`rpm,torque_Nm\n${rows.map(line).join('\n')}\n`);
}

export const sheetText = (name: string): string =>
  `schemaVersion: 1\nname: ${name}\nshortBlock:\n  cylinders: 6\n  bore: 96 mm\n  stroke: 88 mm\n`;
