import type { PullEdit } from '@pullbook/workshop';
import { type Command, Option } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { idsValue, parted, takenApartValue, textsValue, windowValue } from '../option-values.ts';
import { remarkLines } from '../print/remarks.ts';
import { erratumLines } from '../print/stale.ts';
import { Refusal, valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';
import { addOrderCommand } from './trial-order.ts';

export function addTrialCommands(program: Command, context: Context): void {
  const parent = program.command('trial').description('one thing to find out: start a trial, change it');
  addStart(parent, context);
  addChange(parent, context);
  addOrderCommand(parent, context);
}

interface StartOptions {
  combination: string[];
  takenApart?: Record<string, boolean | null>;
  pull?: string[];
  survey?: boolean;
  correction?: string;
}

function addStart(parent: Command, context: Context): void {
  withShared(parent.command('start <question>'))
    .description('start a trial; the first combination is the baseline')
    .requiredOption(
      '--combination <id=short name>',
      'a combination and its few words on the chart (repeat, baseline first)',
      textsValue,
    )
    .option(
      '--taken-apart <key=answer>',
      'whether the engine was taken apart for it, coming from the baseline: B=yes, B=no, or B=parts, told by the parts that changed (repeat)',
      takenApartValue,
    )
    .option('--pull <ids>', 'pulls to take in (default: every pull of these combinations)', idsValue)
    .option('--survey', 'over different engines: common figures, no gain claimed')
    .option(
      '--correction <standard>',
      'observed, sae-j1349, sae-j607, iso-1585, din-70020 (default: the shop’s)',
    )
    .addHelpText(
      'after',
      examples(
        'pullbook trial start "What does the longer cam add?" --combination 77b0="base cam" --combination 9c1e="longer cam"',
        'pullbook trial start "Which cam?" --combination 77b0 --combination 9c1e --pull 3f2a,4d10,5e77 --json',
      ),
    )
    .action(async (question: string, options: StartOptions, own: Command) => {
      const shared = context.shared(own);
      const { correctionByName, startTrial } = await import('@pullbook/workshop');
      const correction =
        options.correction === undefined ? undefined : valueOrRefusal(correctionByName(options.correction));
      const started = await withBook(shared, { create: false }, (book) =>
        startTrial(book, {
          question,
          kind: options.survey ? 'survey' : 'comparison',
          combinations: combinationsFrom(options.combination),
          takenApart: options.takenApart,
          pullIds: options.pull,
          correction,
        }),
      );
      const { id } = valueOrRefusal(started);
      context.answer(shared, { id }, () => [
        `Started trial ${id.slice(0, 8)}. See it: pullbook show ${id.slice(0, 8)}`,
      ]);
    });
}

interface ChangeOptions {
  question?: string;
  kind?: 'comparison' | 'survey';
  correction?: string;
  window?: [number, number];
  commonWindow?: boolean;
  remark?: string;
  combination?: string[];
  takenApart?: Record<string, boolean | null>;
  count?: string[];
  reject?: string[];
  warmUp?: string[];
  leaveOut?: string[];
  reason?: string;
}

function addChange(parent: Command, context: Context): void {
  withShared(parent.command('change <trial>'))
    .description('change a trial: its question, its pulls and their roles, standard, window')
    .option('--question <text>', 'another wording')
    .addOption(new Option('--kind <kind>', 'what it is').choices(['comparison', 'survey']))
    .option('--correction <standard>', 'observed, sae-j1349, sae-j607, iso-1585, din-70020')
    .option('--window <low-high>', 'engine speeds of the averages, r/min: 4000-6500', windowValue)
    .option('--common-window', 'averages over the common window again')
    .option('--remark <text>', 'your own words under the answer')
    .option('--combination <id=short name>', 'combinations anew, baseline first (repeat)', textsValue)
    .option(
      '--taken-apart <key=answer>',
      'whether the engine was taken apart for it, coming from the baseline: B=yes, B=no, or B=parts, told by the parts that changed (repeat)',
      takenApartValue,
    )
    .option('--count <ids>', 'pulls that count', idsValue)
    .option('--reject <id=reason>', 'a pull that does not count, and why (repeat)', textsValue)
    .option('--warm-up <ids>', 'pulls that were made to warm up', idsValue)
    .option('--leave-out <ids>', 'pulls to take out of the trial', idsValue)
    .option('--reason <text>', 'why the trial is changed, for the log')
    .addHelpText(
      'after',
      examples(
        'pullbook trial change 12ab --reject 5e77="throttle lifted early"',
        'pullbook trial change 12ab --window 4000-6500 --correction iso-1585',
        'pullbook trial change 12ab --taken-apart B=no --reason "the cam went in on the brake"',
      ),
    )
    .action(async (id: string, options: ChangeOptions, own: Command) => {
      const shared = context.shared(own);
      const { correctionByName, edgeRemarks, editTrial, staleAfter } = await import('@pullbook/workshop');
      if (options.window && options.commonWindow) {
        throw new Refusal('two-windows', 'Give --window or --common-window, not both.');
      }
      const correction =
        options.correction === undefined ? undefined : valueOrRefusal(correctionByName(options.correction));
      const edit = {
        question: options.question,
        kind: options.kind,
        correction,
        averagesWindowRpm: options.commonWindow ? null : options.window,
        remark: options.remark,
        combinations: options.combination && combinationsFrom(options.combination),
        takenApart: options.takenApart,
        pulls: pullEdits(options),
      };
      if (Object.values(edit).every((value) => value === undefined)) {
        throw new Refusal(
          'nothing-to-change',
          'Nothing to change was given. See: pullbook trial change --help',
        );
      }
      const { done, changed, errata } = await withBook(shared, { create: false }, async (book) => {
        const edited = await editTrial(book, id, edit, options.reason ?? '');
        const value = valueOrRefusal(edited);
        const stale = await staleAfter(book, { trialIds: [value.id] }, shared.view);
        return { done: edited, changed: value, errata: stale };
      });
      const remarks = edgeRemarks(done.remarks, null, shared.wordsIn());
      context.answer(shared, { ...changed, remarks, errata }, () => [
        `Changed trial ${changed.id.slice(0, 8)}.`,
        ...remarkLines(remarks, context),
        ...erratumLines(errata, context),
      ]);
    });
}

function combinationsFrom(words: string[]): { combinationId: string; shortName: string }[] {
  return words.map((word) => {
    const [combinationId, shortName] = parted(word);
    return { combinationId, shortName };
  });
}

function pullEdits(options: ChangeOptions): PullEdit[] | undefined {
  const rejected = (options.reject ?? []).map((word): PullEdit => {
    const [pullId, reason] = parted(word);
    return { pullId, role: 'rejected', reason };
  });
  const edits: PullEdit[] = [
    ...(options.count ?? []).map((pullId): PullEdit => ({ pullId, role: 'counted' })),
    ...(options.warmUp ?? []).map((pullId): PullEdit => ({ pullId, role: 'warm-up' })),
    ...(options.leaveOut ?? []).map((pullId): PullEdit => ({ pullId, role: 'left out' })),
    ...rejected,
  ];
  return edits.length > 0 ? edits : undefined;
}
