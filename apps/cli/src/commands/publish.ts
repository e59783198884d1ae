import { resolve } from 'node:path';
import type { PublishedFile } from '@pullbook/workshop';
import { type Command, Option } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { numberValue, wordsValue } from '../option-values.ts';
import { numberLines } from '../print/published-numbers.ts';
import { remarkLines } from '../print/remarks.ts';
import { counted, table } from '../print/table.ts';
import { INTERRUPTED, Refusal, valueOrRefusal } from '../refusal.ts';
import { type Shared, withBook, withShared } from '../shared-options.ts';

const NOT_DONE = 1;

interface PublishOptions {
  out: string;
  numbers?: string;
  kind?: string[];
  format?: string[];
  picture?: string[];
  size?: string[];
  theme: 'light' | 'dark';
  transparent?: boolean;
  fps?: '30' | '60';
  speed?: number;
  seconds?: number;
  paper?: 'a4' | 'letter';
  correction?: string;
  privateToo?: boolean;
  draft?: boolean;
}

export function addPublishCommand(program: Command, context: Context): void {
  withShared(program.command('publish [trial]'))
    .description('make what leaves the shop of a trial: its set of stills, clip and report, or what is named')
    .option('--out <folder>', 'folder for the files, made where it is missing', 'published')
    .option('--kind <kinds>', 'still, clip, report, table, bundle (default: still,clip,report)', wordsValue)
    .option(
      '--format <formats>',
      'still: png, svg, pdf; clip: mp4, webm, mov, png (numbered pictures); report: html, pdf; table: xlsx, csv, json; bundle: zip',
      wordsValue,
    )
    .option(
      '--picture <names>',
      'of the set of stills only these: answer, alone (alone:B), power, torque, gain, boost, temperatures, table, combination, badges, why, reply, thumbnail',
      wordsValue,
    )
    .option('--size <sizes>', '1080p, 4k, tall (9:16), square, thumbnail (default: 1080p)', wordsValue)
    .addOption(
      new Option('--theme <theme>', 'of stills and clips').choices(['light', 'dark']).default('light'),
    )
    .option(
      '--transparent',
      'stills and clips without a ground, to lay over a film; a clip as mov, webm or png',
    )
    .addOption(new Option('--fps <number>', 'frames a second of a clip (default: 60)').choices(['30', '60']))
    .option('--speed <times>', 'of the clip: 2 is twice as fast (default: as the trial has it)', numberValue)
    .option('--seconds <number>', 'of the clip: as long as this', numberValue)
    .addOption(new Option('--paper <size>', 'of a report as PDF (default: a4)').choices(['a4', 'letter']))
    .option('--correction <standard>', 'in another standard than the trial has')
    .option('--private-too', 'although it holds what is not for everyone; it then says so')
    .option('--draft', 'to look at only: not noted as published')
    .option('--numbers <file>', 'read back what a still or report carries; needs no book')
    .addHelpText(
      'after',
      examples(
        'pullbook publish 12ab --out cam',
        'pullbook publish 12ab --kind still --picture answer,thumbnail --size 4k --theme dark --out cam',
        'pullbook publish 12ab --kind clip --format mov --transparent --fps 30 --out cam --json',
        'pullbook publish --numbers cam/report.html',
      ),
    )
    .action(async (trial: string | undefined, options: PublishOptions, own: Command) => {
      const shared = context.shared(own);
      if (options.numbers !== undefined) return tellNumbers(options.numbers, trial, shared, context);
      if (trial === undefined)
        throw new Refusal('no-trial', 'Say which trial: an id, its beginning, or its question.');
      await publish(trial, options, shared, context);
    });
}

async function publish(
  trial: string,
  options: PublishOptions,
  shared: Shared,
  context: Context,
): Promise<void> {
  const { edgeRemarks, publishRequest, publishTrial } = await import('@pullbook/workshop');
  const { kind, format, picture, size, fps, out, numbers: _, ...rest } = options;
  if (out.trim() === '') throw new Refusal('no-folder', 'Name the folder for the files: --out published.');
  const request = valueOrRefusal(
    publishRequest({
      ...rest,
      kinds: kind,
      formats: format,
      pictures: picture,
      sizes: size,
      fps: fps && Number(fps),
    }),
  );
  const signal = context.terminal.interrupted();
  const report = valueOrRefusal(
    await withBook(shared, { create: false }, (book) =>
      publishTrial(book, trial, shared.view, request, {
        folder: resolve(out),
        signal,
        onProgress: (what, share) => context.progress(`${what}  ${Math.floor(100 * share)} %`),
      }),
    ),
  );
  context.progress('');
  if (report.state !== 'done') context.exitCode = report.state === 'cancelled' ? INTERRUPTED : NOT_DONE;
  const { files, publicationId } = report;
  const remarks = edgeRemarks(report.remarks, null, shared.wordsIn());
  context.answer(shared, { schemaVersion: 1, files, publicationId, remarks }, () => [
    `Made ${counted(files.length, 'file')} in ${resolve(out)}.`,
    ...table(files.map(fileRow), '  '),
    ...remarkLines(remarks, context),
    ...(publicationId === null
      ? []
      : [`Noted. Say where it appears: pullbook publications link ${publicationId.slice(0, 8)} --where "…"`]),
  ]);
}

function fileRow({ path, kind, width, height, seconds, bytes }: PublishedFile): string[] {
  return [
    kind,
    path.split(/[\\/]/).at(-1)!,
    width === null ? '' : `${width} x ${height}`,
    seconds === null ? '' : `${seconds.toFixed(1)} s`,
    `${Math.ceil(bytes / 1024)} kB`,
  ];
}

async function tellNumbers(
  file: string,
  trial: string | undefined,
  shared: Shared,
  context: Context,
): Promise<void> {
  if (trial !== undefined) {
    const message = `Numbers are read back from a file alone. Leave "${trial}" out, or leave --numbers out to publish it.`;
    throw new Refusal('numbers-of-a-file', message);
  }
  const { numbersOfFile } = await import('@pullbook/workshop');
  const read = valueOrRefusal(await numbersOfFile(resolve(file)));
  context.answer(shared, { schemaVersion: 1, file: resolve(file), ...read }, () =>
    numberLines(read, context),
  );
}
