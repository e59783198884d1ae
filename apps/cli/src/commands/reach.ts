import { readFile, writeFile } from 'node:fs/promises';
import { basename, dirname, resolve } from 'node:path';
import type { ReachAnswer, Rung } from '@pullbook/core/reach';
import { type ReachBundle, type ReachPage, reachPage } from '@pullbook/views/reach';
import type { Book, ReachReport, ReachRequest } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { fileTrouble } from '../file-trouble.ts';
import { countValue, wordsValue } from '../option-values.ts';
import { leftLines, reachLines } from '../print/reach-lines.ts';
import { INTERRUPTED, Refusal, valueOrRefusal } from '../refusal.ts';
import { type Shared, withBook, withBookIfThere, withShared } from '../shared-options.ts';

interface ReachOptions {
  combination?: string;
  power?: string;
  at?: string;
  window?: string;
  boostCap?: string;
  without?: string[];
  mostChanges?: number;
  correction?: string;
  left?: boolean;
  rung?: string;
  out?: string;
  csv?: string;
  keep?: boolean;
  question?: string;
  draws?: number;
  seed?: number;
}

export function addReachCommand(program: Command, context: Context): void {
  withShared(program.command('reach [file]'))
    .description(
      'from a power that is asked for to ways to it, cheapest first; and what is left in a supercharger',
    )
    .option('--combination <combination>', 'in place of a match file: a combination of the book')
    .option('--power <quantity>', 'what is asked for: 520hp, 390kW (a file may say it under reach)')
    .option('--at <speed>', 'at this engine speed: 6000rpm (default: the highest at any)')
    .option('--window <from-to>', 'the average between two engine speeds: 3000rpm-6500rpm')
    .option('--boost-cap <pressure>', 'boost that may not be passed: 10psi')
    .option(
      '--without <kinds>',
      'kinds of change that are left out: pulley, stepUp, supercharger, cooler, fuel, injectors, pump, belt, breathing, speedLimit',
      wordsValue,
    )
    .option(
      '--most-changes <count>',
      'of one way, beside those that follow of themselves (default 2)',
      countValue,
    )
    .option(
      '--correction <standard>',
      'standard of the power: observed, sae-j1349 … (default: the shop’s; of a file: observed)',
    )
    .option('--left', 'only what is left in the supercharger; needs no power')
    .option('--rung <way>', 'lay this way open, by its number or id (default: the first); 0: as it is')
    .option('--out <file.yaml>', 'write that way as a match file, to be run by "pullbook match"')
    .option('--csv <file.csv>', 'write the curves of all ways')
    .option('--keep', 'keep the answer in the book, to be found again and planned')
    .option('--question <text>', 'of the kept answer, in words (default: worked out of what is asked)')
    .option('--draws <count>', 'samples of the bands (default 500)', countValue)
    .option('--seed <number>', 'of the samples (default 1)', countValue)
    .addHelpText(
      'after',
      examples(
        'pullbook reach --combination "Supercharged, base cam" --power 520hp',
        'pullbook reach --combination "Supercharged, base cam" --power 520hp --boost-cap 10psi --keep',
        'pullbook reach samples/match/fitted.yaml --power 300hp --json',
        'pullbook reach samples/match/fitted.yaml --power 300hp --rung 1 --out way.yaml',
        'pullbook reach samples/match/fitted.yaml --left',
      ),
    )
    .action(async (file: string | undefined, options: ReachOptions, own: Command) => {
      const shared = context.shared(own);
      refuseOddOptions(file, options);
      const request = requestOf(options);
      const asked = await (file === undefined
        ? askedOfBook(options, request, shared, context)
        : askedOfFile(file, options, shared, context));
      const { csvOfReach, reachReport } = await import('@pullbook/workshop');
      const { bundle, answer, kept } = asked;
      const report = reachReport(bundle, answer, shared.wordsIn());
      const chosen = options.rung === undefined ? null : rungOf(answer, options.rung);
      const out = await outOf(asked, chosen, options.out);
      const csv = options.csv === undefined ? null : await written(csvOfReach(report), options.csv);
      context.answer(shared, { ...(asked.isLeftAlone ? leftAlone(report) : report), out, csv, kept }, () => {
        const rungId = options.rung === undefined ? null : (chosen?.id ?? 'now');
        const page = reachPage({ bundle, answer, progress: null, rungId }, shared.view);
        return [
          ...(asked.isLeftAlone ? alone(page, bundle, context) : reachLines(page, context)),
          ...(out === null ? [] : ['', `Wrote this way to ${out}. Run it: pullbook match ${out}`]),
          ...(csv === null ? [] : ['', `Wrote the curves to ${csv}.`]),
          ...(kept === null
            ? []
            : [
                '',
                `Kept as ${kept.slice(0, 8)}: pullbook enquiry show ${kept.slice(0, 8)}; make a way a trial: pullbook enquiry plan ${kept.slice(0, 8)} 1`,
              ]),
        ];
      });
    });
}

interface Asked {
  bundle: ReachBundle;
  answer: ReachAnswer;
  /** Id of the kept answer; `null`: it was not kept. */
  kept: string | null;
  isLeftAlone: boolean;
  /** A rung as a match file. */
  fileOf: (rung: Rung) => Promise<string>;
}

const requestOf = ({
  power,
  at,
  window,
  boostCap,
  without,
  mostChanges,
  correction,
  draws,
  seed,
  left,
}: ReachOptions): ReachRequest => ({
  leftAlone: left,
  power,
  at,
  window,
  boostCap,
  without,
  mostChanges,
  correction,
  draws,
  seed,
});

function refuseOddOptions(
  file: string | undefined,
  { combination, power, left, rung, out, keep, question }: ReachOptions,
): void {
  if ((file === undefined) === (combination === undefined))
    throw new Refusal(
      'reach-of-what',
      'Give one of these: a match file, or --combination with one of the book ("pullbook list" shows them).',
    );
  if (file === undefined && power === undefined && !left)
    throw new Refusal(
      'reach-without-power',
      'Say what power is asked for, such as --power 520hp; or --left for what is left in the supercharger.',
    );
  if (left && power !== undefined)
    throw new Refusal(
      'left-with-power',
      '--left asks what is left in the supercharger, and --power for ways to a power, beside which that stands too. Give one of the two.',
    );
  if (keep && file !== undefined)
    throw new Refusal(
      'keep-of-file',
      'An answer is kept with a combination of the book. Give --combination in place of the file, or leave out --keep.',
    );
  if (question !== undefined && !keep)
    throw new Refusal(
      'question-without-keep',
      'A question stands with an answer that is kept. Give --keep with --question.',
    );
  if (keep && power === undefined)
    throw new Refusal('keep-without-power', 'Kept is the answer to a power. Give --power with --keep.');
  if (out !== undefined && rung === undefined)
    throw new Refusal('out-without-rung', 'Say which way is written: --rung 1 --out way.yaml.');
}

async function askedOfBook(
  options: ReachOptions,
  request: ReachRequest,
  shared: Shared,
  context: Context,
): Promise<Asked> {
  const { keepAnswer, mapOfRung, reachOfCombination, rungFile } = await import('@pullbook/workshop');
  return withBook(shared, { create: false }, async (book: Book) => {
    const bundle = valueOrRefusal(await reachOfCombination(book, options.combination!, request));
    const answer = await searched(bundle, context);
    const kept = options.keep
      ? valueOrRefusal(await keepAnswer(book, bundle, answer, { question: options.question })).id
      : null;
    const rung = options.rung === undefined ? null : rungOf(answer, options.rung);
    // The book is shut when the file is written.
    const map = rung === null ? null : await mapOfRung(book, rung);
    return {
      bundle,
      answer,
      kept,
      isLeftAlone: options.left === true,
      fileOf: async (one) => valueOrRefusal(rungFile(one, map, { name: bundle.name })),
    };
  });
}

async function askedOfFile(
  given: string,
  options: ReachOptions,
  shared: Shared,
  context: Context,
): Promise<Asked> {
  const { reachFromFile, rungFile } = await import('@pullbook/workshop');
  const file = resolve(given);
  const text = await readFile(file, 'utf8').catch((trouble: unknown) => {
    throw fileTrouble(trouble, file);
  });
  return withBookIfThere(shared, async (book) => {
    const from = { fileName: basename(file), folder: dirname(file), book };
    const { bundle, maps, hasTarget } = valueOrRefusal(await reachFromFile(text, requestOf(options), from));
    return {
      bundle,
      answer: await searched(bundle, context),
      kept: null,
      isLeftAlone: options.left === true || !hasTarget,
      fileOf: async (one) => valueOrRefusal(rungFile(one, maps[one.buildId] ?? null, { name: bundle.name })),
    };
  });
}

/** Ctrl+C ends the search and prints nothing. */
async function searched({ input }: ReachBundle, context: Context): Promise<ReachAnswer> {
  const { runReach } = await import('@pullbook/workshop');
  const signal = context.terminal.interrupted();
  try {
    return await runReach(input, {
      signal,
      onProgress: ({ share, rungs }) =>
        context.progress(
          `${Math.round(100 * share)} %${rungs.length === 0 ? '' : `, ${rungs.length} ways so far`}`,
        ),
    });
  } catch (trouble) {
    if (!signal.aborted) throw trouble;
    context.exitCode = INTERRUPTED;
    throw new Refusal('reach-stopped', 'The search was stopped; nothing was kept.');
  } finally {
    context.progress('');
  }
}

/** `null`: as it is. */
function rungOf({ now, rungs }: ReachAnswer, given: string): Rung {
  if (given === '0' || given === 'now') return now;
  const found = /^\d{1,2}$/.test(given) ? rungs[Number(given) - 1] : rungs.find(({ id }) => id === given);
  if (found !== undefined) return found;
  throw new Refusal(
    'rung-not-there',
    rungs.length === 0
      ? `There is no way ${given}: none was found. 0 is as it is.`
      : `There is no way ${given}; there are 1 to ${rungs.length}, and 0 as it is.`,
  );
}

async function outOf(
  { fileOf }: Asked,
  rung: Rung | null,
  given: string | undefined,
): Promise<string | null> {
  return given === undefined || rung === null ? null : written(await fileOf(rung), given);
}

async function written(text: string, given: string): Promise<string> {
  const file = resolve(given);
  await writeFile(file, text).catch((trouble: unknown) => {
    throw fileTrouble(trouble, file);
  });
  return file;
}

/** Without a target: the engine as it is, and what is left. */
function leftAlone({
  schemaVersion,
  combinationId,
  name,
  standard,
  factor,
  now,
  whatIsLeft,
  remarks,
  cautions,
}: ReachReport) {
  return { schemaVersion, combinationId, name, standard, factor, now, whatIsLeft, remarks, cautions };
}

const alone = (page: ReachPage, { name }: ReachBundle, context: Context): string[] => [
  context.colours.bold(`What is left in ${name}`),
  ...(page.now === null
    ? []
    : [
        `As it is: ${page.now.reached}${page.now.band === '' ? '' : ` (${page.now.band})`}${page.now.bindsFirst === '' ? '' : `; binds first: ${page.now.bindsFirst}`}.`,
      ]),
  ...(page.left.length === 0
    ? ['Nothing is turned: it has no supercharger whose drive can be changed.']
    : leftLines(page, context)),
  '',
  ...page.cautions.map((one) => context.colours.bold(one)),
];
