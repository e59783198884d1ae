import { resolve } from 'node:path';
import type { BundleLook } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { remarkLines } from '../print/remarks.ts';
import { counted } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { type Shared, withBook, withShared } from '../shared-options.ts';

export function addOpenCommand(program: Command, context: Context): void {
  withShared(program.command('open <bundle>'))
    .description('take a trial that another Pullbook bundled into this book')
    .option('--dry-run', 'only say what is in it')
    .addHelpText(
      'after',
      examples('pullbook open cam/cam-bundle.zip --dry-run', 'pullbook open cam.zip --book shop --json'),
    )
    .action(async (file: string, options: { dryRun?: boolean }, own: Command) => {
      const shared = context.shared(own);
      const path = resolve(file);
      return options.dryRun ? look(path, shared, context) : open(path, shared, context);
    });
}

async function look(path: string, shared: Shared, context: Context): Promise<void> {
  const { edgeRemarks, lookAtBundleFile } = await import('@pullbook/workshop');
  const looked = await withBook(shared, { create: true }, (book) => lookAtBundleFile(book, path));
  const value = valueOrRefusal(looked);
  const remarks = edgeRemarks(looked.remarks, null, shared.wordsIn());
  context.answer(shared, { schemaVersion: 1, ...value, remarks }, () => [
    ...lookLines(value),
    ...remarkLines(remarks, context),
  ]);
}

function lookLines({ trials, combinations, pulls, invented }: BundleLook): string[] {
  const known = (isKnown: boolean) => (isKnown ? ' (in this book already)' : '');
  return [
    ...trials.map(({ question, isKnown }) => `${question}${known(isKnown)}`),
    ...combinations.map(({ name, isKnown }) => `  combination  ${name}${known(isKnown)}`),
    ...pulls.map(({ name, isKnown }) => `  pull         ${name}${known(isKnown)}`),
    ...(invented ? ['Its data are invented.'] : []),
  ];
}

async function open(path: string, shared: Shared, context: Context): Promise<void> {
  const { edgeRemarks, openBundleFile } = await import('@pullbook/workshop');
  const opened = await withBook(shared, { create: true }, (book) => openBundleFile(book, path));
  const { trialId, question, pulls, isNew } = valueOrRefusal(opened);
  const remarks = edgeRemarks(opened.remarks, null, shared.wordsIn());
  context.answer(shared, { schemaVersion: 1, trialId, question, pulls, isNew, remarks }, () => [
    isNew
      ? `Opened "${question}" with ${counted(pulls, 'pull')}.`
      : `"${question}" was in this book already; what the bundle has besides was taken in.`,
    `See it: pullbook show ${trialId.slice(0, 8)}`,
    ...remarkLines(remarks, context),
  ]);
}
