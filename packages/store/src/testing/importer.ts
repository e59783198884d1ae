/**
 * Run as a program of its own, to be killed: imports files into the book of a folder without end, and prints the name of
 * each one that was accepted.
 */
import { writeSync } from 'node:fs';
import { openBook } from '../open-book.ts';
import { importedFile } from './imported-file.ts';

const [folder, prefix] = process.argv.slice(2);
const book = await openBook(folder!, { create: { name: 'Book to be killed' }, lockWaitMs: 60_000 });
writeSync(1, 'open\n');
for (let index = 0; ; index++) {
  const { file, bytes, pulls } = importedFile(`${prefix}-${index}`);
  await book.addFileWithPulls(file, bytes, pulls);
  writeSync(1, `accepted ${file.name}\n`);
}
