import { readFile } from 'node:fs/promises';
import type { SettingsReport } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { fileTrouble } from '../file-trouble.ts';
import { parted, textsValue } from '../option-values.ts';
import { table } from '../print/table.ts';
import { Refusal, valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

interface SettingsOptions {
  set?: string[];
  mark?: string;
}

export function addSettingsCommand(program: Command, context: Context): void {
  withShared(program.command('settings'))
    .description('what the shop settled once: units, standard, bin width, cell, name, contact, mark …')
    .option('--set <name=value>', 'set one; "none" takes it back (repeat)', textsValue)
    .option('--mark <file>', 'the shop’s own mark for its stills and reports: PNG or SVG, up to 300 kB')
    .addHelpText(
      'after',
      examples(
        'pullbook settings',
        'pullbook settings --set units=si --set decimalMark=, --set correction=iso-1585',
        'pullbook settings --set binWidthRpm=200rpm --set cell="Cell 1"',
        'pullbook settings --set shopName="Our workshop" --mark sign.svg --json',
        'pullbook settings --set shopContact="12 Dairy Road, telephone 555 0100"',
      ),
    )
    .action(async (options: SettingsOptions, own: Command) => {
      const shared = context.shared(own);
      const { changeSettings, settingsReport } = await import('@pullbook/workshop');
      const change = { ...changeFrom(options.set ?? []), ...(await markFrom(options.mark)) };
      const hasChange = Object.keys(change).length > 0;
      const report = await withBook(shared, { create: hasChange }, async (book) =>
        hasChange ? valueOrRefusal(await changeSettings(book, change)) : settingsReport(book),
      );
      context.answer(shared, report, () => settingLines(report));
    });
}

function changeFrom(words: string[]): Record<string, string> {
  return Object.fromEntries(
    words.map((word) => {
      if (!word.includes('='))
        throw new Refusal(
          'setting-without-value',
          `"${word}" sets nothing. Write name=value, such as units=si.`,
        );
      return parted(word);
    }),
  );
}

async function markFrom(path: string | undefined): Promise<{ mark?: { base64: string } }> {
  if (path === undefined) return {};
  const bytes = await readFile(path).catch((trouble: unknown) => {
    throw fileTrouble(trouble, path);
  });
  return { mark: { base64: bytes.toString('base64') } };
}

function settingLines(report: SettingsReport): string[] {
  const { schemaVersion: _, stamp: __, mark, partsList, ...settings } = report;
  const rows = Object.entries(settings).map(([name, value]) => [
    name,
    value === null || value === '' ? (name === 'binWidthRpm' ? 'adapted' : 'none') : settingText(value),
  ]);
  const sign = mark === null ? 'none' : `${mark.mediaType}, ${mark.width} x ${mark.height}`;
  return table([
    ['Setting', 'Value'],
    ...rows,
    ['mark', sign],
    ['partsList', partsList === null ? 'as usual' : 'own: pullbook parts show'],
  ]);
}

/** Settings of several figures as JSON, as `--set` takes them. */
function settingText(value: object | string | number | boolean): string {
  if (typeof value !== 'object') return String(value);
  return Object.keys(value).length === 0 ? 'none' : JSON.stringify(value);
}
