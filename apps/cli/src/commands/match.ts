import { readFile, writeFile } from 'node:fs/promises';
import { basename, dirname, resolve } from 'node:path';
import type { MatchReport, MatchReportOfOne } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { fileTrouble } from '../file-trouble.ts';
import { countValue, idsValue, parted, textsValue } from '../option-values.ts';
import { matchLines } from '../print/match-lines.ts';
import { Refusal, valueOrRefusal } from '../refusal.ts';
import { type Shared, withBook, withBookIfThere, withShared } from '../shared-options.ts';

interface MatchOptions {
  trial?: string;
  combination?: string;
  on?: string;
  fitOn?: string[];
  whatIf?: string[];
  pressure?: string;
  temperature?: string;
  humidity?: string;
  draws?: number;
  seed?: number;
  bands: boolean;
  keep?: string;
  csv?: string;
}

export function addMatchCommand(program: Command, context: Context): void {
  withShared(program.command('match [file]'))
    .description('boost, air, temperatures, drive and brake power with a supercharger, over engine speed')
    .option('--trial <trial>', 'in place of a file: every supercharged combination of a trial of the book')
    .option('--combination <combination>', 'in place of a file: one combination of the book')
    .option(
      '--what-if <change>',
      'try something: "blowerPulleyDiameter=80 mm", "cooler=none", "moreAir=8 %"; may be given several times',
      textsValue,
    )
    .option('--on <key>', 'combination of the trial it is tried on (default: the last that is matched)')
    .option(
      '--fit-on <keys>',
      'fit to the pulls of these combinations of the trial alone, to see the others foretold by them: A',
      idsValue,
    )
    .option('--pressure <quantity>', 'barometer of other weather, at the place: 98.2kPa')
    .option('--temperature <quantity>', 'of the air in other weather: 30C, 86F')
    .option('--humidity <quantity>', 'of the air in other weather: 45%')
    .option('--draws <count>', 'samples of the bands (default 2000)', countValue)
    .option('--seed <number>', 'of the samples (default 1)', countValue)
    .option('--no-bands', 'the curves alone')
    .option('--keep <key>', 'keep peak power and highest boost of a combination as predictions of the trial')
    .option('--csv <file.csv>', 'write the points, too')
    .addHelpText(
      'after',
      examples(
        'pullbook match samples/match/from-a-table.yaml',
        'pullbook match samples/match/from-a-table.yaml --json',
        'pullbook match --trial 12ab --what-if "blowerPulleyDiameter=80 mm"',
        'pullbook match --trial 12ab --keep B',
        'pullbook match --combination "Supercharged, base cam" --pressure 83kPa --temperature 30C --no-bands',
      ),
    )
    .action(async (file: string | undefined, options: MatchOptions, own: Command) => {
      const shared = context.shared(own);
      const asked = [file, options.trial, options.combination].filter((one) => one !== undefined);
      if (asked.length !== 1)
        throw new Refusal(
          'match-of-what',
          `Give one of these: a match file, --trial, or --combination. Given: ${asked.length === 0 ? 'none' : asked.join(', ')}.`,
        );
      if (file !== undefined) await matchFile(file, options, shared, context);
      else await matchInBook(options, shared, context);
    });
}

async function matchFile(
  given: string,
  options: MatchOptions,
  shared: Shared,
  context: Context,
): Promise<void> {
  const only = ['whatIf', 'on', 'fitOn', 'keep', 'pressure', 'temperature', 'humidity'] as const;
  const other = only.filter((one) => options[one] !== undefined);
  if (other.length > 0)
    throw new Refusal(
      'match-file-says-it',
      `With a match file these stand in the file: ${other.join(', ')}. Write them there under whatIf and weather.`,
    );
  const { csvOfMatches, matchFromFile } = await import('@pullbook/workshop');
  const file = resolve(given);
  const text = await readFile(file, 'utf8').catch((trouble: unknown) => {
    throw fileTrouble(trouble, file);
  });
  const report = await withBookIfThere(shared, async (book) =>
    valueOrRefusal(
      await matchFromFile(text, {
        fileName: basename(file),
        folder: dirname(file),
        book,
        bands: options.bands ? { draws: options.draws, seed: options.seed } : null,
        words: shared.wordsIn(),
      }),
    ),
  );
  const csv = await written(csvOfMatches([report, ...report.tried]), options.csv);
  context.answer(shared, { ...report, csv }, () => [
    ...matchLines([report, ...report.tried], report, shared, context),
    ...saidOfCsv(csv),
  ]);
}

async function matchInBook(options: MatchOptions, shared: Shared, context: Context): Promise<void> {
  const { csvOfMatches, keepMatchPrediction, matchAirFromText, matchReportOf } = await import(
    '@pullbook/workshop'
  );
  const { trial, combination, keep, on, fitOn } = options;
  if (keep !== undefined && trial === undefined)
    throw new Refusal('keep-without-trial', 'A prediction is kept with a trial. Give --trial with --keep.');
  if (keep !== undefined && !options.bands)
    throw new Refusal('keep-without-bands', 'A prediction has a band. Leave out --no-bands.');
  if (keep !== undefined && options.whatIf !== undefined)
    throw new Refusal(
      'keep-what-is-tried',
      'Kept is what a combination of the trial should do as its sheet stands, so --keep and --what-if do not go together. Make a combination of what is tried (pullbook combination add --from "…" --set "drive.blowerPulleyDiameter=80 mm"), take it into a trial, and keep that.',
    );
  if (keep !== undefined && fitOn !== undefined)
    throw new Refusal(
      'keep-fitted-on',
      'A prediction that is kept rests on all pulls that count, so --keep and --fit-on do not go together. Leave out one of them.',
    );
  const air = valueOrRefusal(matchAirFromText(options));
  const whatIf = { ...(on === undefined ? {} : { on }), ...changesFrom(options.whatIf ?? []) };
  const bands = options.bands ? { draws: options.draws, seed: options.seed } : null;
  const { report, kept } = await withBook(shared, { create: false }, async (book) => {
    const of = trial === undefined ? { combination: combination! } : { trial };
    const made = valueOrRefusal(
      await matchReportOf(book, of, { air, whatIf, fitOn, bands, words: shared.wordsIn() }),
    );
    if (keep === undefined) return { report: made, kept: null };
    return {
      report: made,
      kept: valueOrRefusal(await keepMatchPrediction(book, trial!, keep, { air, ...bands })),
    };
  });
  const csv = await written(csvOfMatches(report.matches), options.csv);
  context.answer(shared, { ...asOne(report, combination !== undefined), csv, kept }, () => [
    ...matchLines(report.matches, report, shared, context),
    ...saidOfCsv(csv),
    ...(kept === null
      ? []
      : ['', `Kept for ${kept.key}, and not altered any more. It rests on: ${kept.basis}`]),
  ]);
}

/** One combination stands at the top with what was tried beside it, as from a file. */
function asOne({ matches, ...report }: MatchReport, isOne: boolean): MatchReport | MatchReportOfOne {
  const [first, ...tried] = matches;
  return isOne && first !== undefined ? { ...report, ...first, tried } : { matches, ...report };
}

function changesFrom(texts: readonly string[]): Record<string, string> {
  const changes = texts.map(parted);
  const odd = changes.find(([name, value]) => name === '' || value === '');
  if (odd)
    throw new Refusal(
      'what-if-not-read',
      `"${odd.join('=')}" is nothing that can be tried. Give a name and a value, such as "blowerPulleyDiameter=80 mm".`,
    );
  return Object.fromEntries(changes);
}

const saidOfCsv = (file: string | null): string[] =>
  file === null ? [] : ['', `Wrote the points to ${file}.`];

async function written(text: string, given: string | undefined): Promise<string | null> {
  if (given === undefined) return null;
  const file = resolve(given);
  await writeFile(file, text).catch((trouble: unknown) => {
    throw fileTrouble(trouble, file);
  });
  return file;
}
