import { writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { fileTrouble } from '../file-trouble.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

export function addOriginalCommand(program: Command, context: Context): void {
  withShared(program.command('original <hash>'))
    .description('write an original file as it came, byte for byte: hash, its beginning, or name')
    .option('--out <file>', 'new file to write (default: its own name, here)')
    .addHelpText('after', examples('pullbook original 9a41c7 --out run-1.csv'))
    .action(async (hash: string, options: { out?: string }, own: Command) => {
      const shared = context.shared(own);
      const { findOne } = await import('@pullbook/workshop');
      const { name, bytes } = await withBook(shared, { create: false }, async (book) => {
        const files = (await book.files()).map((one) => ({ id: one.hash, name: one.name }));
        const found = valueOrRefusal(findOne(files, hash, 'original file'));
        return { name: found.name, bytes: await book.original(found.id) };
      });
      const file = resolve(options.out ?? name);
      await writeFile(file, bytes, { flag: 'wx' }).catch((trouble: unknown) => {
        throw fileTrouble(trouble, file);
      });
      context.answer(shared, { file, bytes: bytes.byteLength }, () => [`Wrote ${file}.`]);
    });
}
