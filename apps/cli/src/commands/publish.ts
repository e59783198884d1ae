import { writeFile } from 'node:fs/promises';
import { extname, resolve } from 'node:path';
import { type Command, Option } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { fileTrouble } from '../file-trouble.ts';
import { Refusal, valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

interface PublishOptions {
  out?: string;
  format?: 'svg' | 'png';
  size: '1080p' | '4k';
  theme: 'light' | 'dark';
  transparent?: boolean;
  correction?: string;
  privateToo?: boolean;
}

export function addPublishCommand(program: Command, context: Context): void {
  withShared(program.command('publish <trial>'))
    .description('write the still of a trial')
    .option('--out <file>', 'file to write, .png or .svg (default: named for the question, here)')
    .addOption(
      new Option('--format <format>', 'default: as the file is named, else png').choices(['svg', 'png']),
    )
    .addOption(
      new Option('--size <size>', '1920 x 1080 or 3840 x 2160').choices(['1080p', '4k']).default('1080p'),
    )
    .addOption(new Option('--theme <theme>', 'ground').choices(['light', 'dark']).default('light'))
    .option('--transparent', 'no ground, to lay over a film')
    .option('--correction <standard>', 'in another standard than the trial has')
    .option('--private-too', 'although it holds what is not for everyone; the still then says so')
    .addHelpText(
      'after',
      examples(
        'pullbook publish 12ab --out cam.png --size 4k --theme dark',
        'pullbook publish 12ab --out cam.svg --transparent --units si --decimal ,',
      ),
    )
    .action(async (id: string, options: PublishOptions, own: Command) => {
      const shared = context.shared(own);
      const { correctionByName, stillOf } = await import('@pullbook/workshop');
      const { size, theme } = options;
      const correction =
        options.correction === undefined ? undefined : valueOrRefusal(correctionByName(options.correction));
      const format = formatFrom(options);
      const ground = options.transparent !== true;
      const drawn = await withBook(shared, { create: false }, (book) =>
        stillOf(book, id, shared.view, {
          format,
          size,
          theme,
          ground,
          correction,
          privateToo: options.privateToo,
        }),
      );
      const still = valueOrRefusal(drawn);
      const file = resolve(options.out ?? still.fileName);
      await writeFile(file, still.bytes).catch((trouble: unknown) => {
        throw fileTrouble(trouble, file);
      });
      const { width, height } = still;
      context.answer(shared, { file, format, width, height, bytes: still.bytes.byteLength }, () => [
        `Wrote ${file} (${width} x ${height}).`,
      ]);
    });
}

function formatFrom({ out, format }: PublishOptions): 'svg' | 'png' {
  if (out === undefined) return format ?? 'png';
  const ending = extname(out).slice(1).toLowerCase();
  if ((ending === 'svg' || ending === 'png') && (format ?? ending) === ending) return ending;
  throw new Refusal(
    'name-of-still',
    `A still named ${out} does not go with ${format ? `--format ${format}` : 'either format'}. Name it .png or .svg.`,
  );
}
