import { basename } from 'node:path';
import type { Remark } from '@pullbook/core/remark';
import type { Book, EdgeFinding, EdgeRemark, FileToImport, ImportReport } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { fileTrouble } from '../file-trouble.ts';
import { textsValue } from '../option-values.ts';
import { peak, peakPower, window } from '../print/figure.ts';
import { findingLines } from '../print/findings.ts';
import { remarkLines } from '../print/remarks.ts';
import { counted, table } from '../print/table.ts';
import { type PullOptions, pullDetailsOf, withPullOptions } from '../pull-options.ts';
import { Refusal, refusalOf, valueOrRefusal } from '../refusal.ts';
import { type Shared, withBook, withBookIfThere, withShared } from '../shared-options.ts';
import { type TreatmentOptions, treatmentOf, withTreatmentOptions } from '../treatment-options.ts';

interface ImportOptions extends PullOptions, TreatmentOptions {
  map?: string[];
  dryRun?: boolean;
  like?: string;
  forgetLayout?: boolean;
  trial?: string;
}

/** What became of one file. */
interface FileOutcome {
  file: string;
  report: ImportReport | null;
  findings: EdgeFinding[];
  remarks: EdgeRemark[];
  /** Remarks that no finding says already. */
  beside: EdgeRemark[];
  trouble: Refusal | null;
}

export function addImportCommand(program: Command, context: Context): void {
  const command = withShared(program.command('import <file...>'))
    .description('put logged pulls into the book; makes the book where there is none')
    .option(
      '--map <column=meaning:unit>',
      'say what a column is, where the guess is wrong (repeatable)',
      textsValue,
    )
    .option('--like <pull>', 'what is not said is as in that pull; "last": the one added last')
    .option(
      '--forget-layout',
      'read as if no file of its kind had been confirmed; with --map, what you say is kept instead',
    )
    .option('--trial <trial>', 'take the pulls into this trial, to be counted: id or question')
    .option('--dry-run', 'read and show only; nothing is stored');
  withTreatmentOptions(withPullOptions(command))
    .addHelpText(
      'after',
      examples(
        'pullbook import run-1.csv run-2.csv --combination "Base cam" --pressure 98.2kPa --temperature 30C --humidity 45%',
        'pullbook import run-1.csv --map "Load=torque:N·m" --map "Counter=leave out" --dry-run',
        'pullbook import run-7.csv --like last --name "Pull 7" --trial "What does the longer cam add?"',
        'pullbook import run-1.csv --lag "lambda=0.3s" --window 3000-6500',
        'pullbook import printed.csv --corrected sae-j1349 --factor 1.021 --json',
      ),
    )
    .action(async (files: string[], options: ImportOptions, own: Command) => {
      const shared = context.shared(own);
      const { pullDetailsFromText } = await import('@pullbook/workshop');
      const said = { ...pullDetailsOf(options), treatment: treatmentOf(options) };
      const details = valueOrRefusal(pullDetailsFromText(said, new Date().toISOString()));
      const toImport = {
        columns: options.map ?? [],
        details,
        like: options.like,
        readAnew: options.forgetLayout,
      };
      const outcomes = options.dryRun
        ? await withBookIfThere(shared, (book) =>
            eachFile(files, shared, context, (name, path) => previewOf(book, { ...toImport, name, path })),
          )
        : await withBook(shared, { create: true }, async (book) => {
            const trial = await trialGiven(book, options.trial);
            return eachFile(files, shared, context, (name, path) =>
              importInto(book, { ...toImport, name, path }, trial),
            );
          });
      if (outcomes.some((one) => one.trouble)) context.exitCode = 1;
      answer(outcomes, options.dryRun === true, shared, context);
    });
}

/** Its id, found before anything is stored; `null`: none was named. */
async function trialGiven(book: Book, given: string | undefined): Promise<string | null> {
  const { findTrial } = await import('@pullbook/workshop');
  return given === undefined ? null : valueOrRefusal(await findTrial(book, given)).id;
}

/** A pull that the trial does not take, being of another combination, stays in the book; the remark says why. */
async function importInto(book: Book, file: FileToImport, trial: string | null) {
  const { importFile, takeIntoTrial } = await import('@pullbook/workshop');
  const imported = await importFile(book, file);
  if (trial === null || !imported.ok) return imported;
  const ids = imported.value.pulls.map(({ id }) => id);
  const taken = await takeIntoTrial(book, trial, ids);
  const why = taken.remarks.map((one): Remark => ({ ...one, level: 'caution' }));
  return { ...imported, value: { ...imported.value, remarks: [...imported.value.remarks, ...why] } };
}

async function previewOf(book: Book | null, file: FileToImport) {
  const { previewImport } = await import('@pullbook/workshop');
  return previewImport(book, file);
}

type Take = (name: string, path: string) => ReturnType<typeof importInto>;

/** Every file by itself: a bad one is reported and the next one is tried. Trouble with the book ends it: the rest waits. */
async function eachFile(
  files: string[],
  shared: Shared,
  context: Context,
  take: Take,
): Promise<FileOutcome[]> {
  const outcomes: FileOutcome[] = [];
  let bookTrouble: Refusal | null = null;
  for (const [index, path] of files.entries()) {
    if (files.length > 1) context.progress(`${index + 1} of ${files.length}: ${basename(path)}`);
    try {
      outcomes.push(bookTrouble ? await notRead(path, bookTrouble) : await readAndTake(path, shared, take));
    } catch (trouble) {
      if (!(trouble instanceof Error && trouble.name === 'BookTrouble')) throw trouble;
      bookTrouble = new Refusal((trouble as Refusal).code, trouble.message);
      outcomes.push(await notRead(path, bookTrouble));
    }
  }
  if (files.length > 1) context.progress('');
  return outcomes;
}

async function readAndTake(path: string, shared: Shared, take: Take): Promise<FileOutcome> {
  const { remarksBeside } = await import('@pullbook/core/rule');
  const { edgeFindings, edgeRemarks } = await import('@pullbook/workshop');
  const file = basename(path);
  const result = await take(file, path).catch((trouble: unknown) => {
    const words = fileTrouble(trouble, path);
    if (words instanceof Refusal) return words;
    throw words;
  });
  if (result instanceof Refusal) return notRead(path, result);
  const findings = result.ok ? result.value.findings : [];
  const remarks = result.ok ? result.value.remarks : result.remarks;
  return {
    file,
    report: result.ok ? result.value : null,
    findings: edgeFindings(findings, shared.wordsIn()),
    remarks: edgeRemarks(remarks, file, shared.wordsIn()),
    beside: edgeRemarks(remarksBeside(remarks, findings), file, shared.wordsIn()),
    trouble: result.ok ? null : refusalOf(result.remarks),
  };
}

async function notRead(path: string, trouble: Refusal): Promise<FileOutcome> {
  const { edgeRemarks } = await import('@pullbook/workshop');
  const file = basename(path);
  const remark: Remark = { code: trouble.code, level: 'refusal', message: trouble.message };
  const remarks = edgeRemarks([remark], file);
  return { file, report: null, findings: [], remarks, beside: remarks, trouble };
}

function answer(outcomes: FileOutcome[], dryRun: boolean, shared: Shared, context: Context): void {
  const failed = outcomes.filter((one) => one.trouble);
  const remarks = outcomes.flatMap((one) => one.remarks);
  const json = {
    schemaVersion: 1,
    pulls: outcomes.flatMap((one) =>
      (one.report?.pulls ?? []).map((pull) => (dryRun ? { ...pull, id: null } : pull)),
    ),
    findings: outcomes.flatMap((one) => one.findings),
    remarks,
    files: outcomes.map(({ file, report }) => ({
      file,
      stored: report !== null && !dryRun,
      alreadyKnown: report?.alreadyKnown ?? false,
    })),
    ...(failed.length === 0
      ? {}
      : {
          error: {
            code: failed[0]!.trouble!.code,
            message: failureMessage(failed),
            remarks: failed.flatMap((one) => one.remarks),
          },
        }),
  };
  context.answer(shared, json, () => outcomes.flatMap((one) => outcomeLines(one, dryRun, shared, context)));
  if (failed.length > 0 && !shared.json) {
    const done = outcomes.length - failed.length;
    context.terminal.err(
      `${counted(failed.length, 'file')} did not go in; ${counted(done, 'file')} ${dryRun ? 'would' : 'did'}.\n`,
    );
  }
}

const failureMessage = (failed: FileOutcome[]): string =>
  failed.map((one) => `${one.file}: ${one.trouble!.message}`).join('\n');

function outcomeLines(outcome: FileOutcome, dryRun: boolean, { view }: Shared, context: Context): string[] {
  const { file, report, findings, beside } = outcome;
  const state = !report
    ? context.colours.red('not read')
    : report.alreadyKnown
      ? 'in the book already'
      : dryRun
        ? `${counted(report.pulls.length, 'pull')}, not stored`
        : counted(report.pulls.length, 'pull');
  const rows = (report?.pulls ?? []).map((pull) => [
    pull.id.slice(0, 8) || '–',
    pull.name,
    window(pull.windowRpm, view),
    peakPower(pull, view),
    peak({ figure: pull.peakTorqueNm, unit: 'N·m', kind: 'torque', atRpm: pull.peakTorqueRpm }, view),
  ]);
  const channels = dryRun
    ? (report?.pulls ?? []).flatMap((pull) =>
        table(
          [
            ['Column', 'Meaning', 'Unit', 'Values'],
            ...pull.channels.map((one) => [one.name, one.label, one.unit, String(one.count)]),
          ],
          '  ',
        ),
      )
    : [];
  return [
    `${context.colours.bold(file)}: ${state}`,
    ...(rows.length > 0
      ? table([['Id', 'Pull', 'Engine speed', 'Peak power', 'Peak torque'], ...rows], '  ')
      : []),
    ...channels,
    ...findingLines(findings, context),
    ...remarkLines(beside, context),
  ];
}
