import type { ShownThing } from '@pullbook/workshop';
import type { Context } from '../context.ts';
import { findingSection } from './findings.ts';
import { table } from './table.ts';
import { badgeLines, whyLines } from './why.ts';

type PageOf<Kind extends ShownThing['kind']> = Extract<ShownThing, { kind: Kind }>['page'];
type Tables = PageOf<'trial'>['peaks'];

/** The page of a trial: question, answer, what it rests on, tables, evidence. */
export function trialLines(page: PageOf<'trial'>, context: Context): string[] {
  const { bold } = context.colours;
  return [
    bold(page.question),
    page.sentence.map((part) => part.text).join(''),
    ...page.verdicts.map(({ name, chip, figures }) => [name, chip.text, figures].filter(Boolean).join(' · ')),
    chips(page.chips),
    page.basis,
    ...page.mayAndMayNot.flatMap(({ title, may, mayNot }) => [
      ...list(named('You may say', title), may, context),
      ...list(named('You may not say', title), mayNot, context),
    ]),
    ...list('Mind', page.caveats, context),
    ...[page.survey, page.peaks, page.averages, page.atSpeeds, ...page.bands].flatMap((one) =>
      shownTable(one, context),
    ),
    ...whyLines(page.why, context),
    ...badgeLines(page.badges, context),
    ...section(
      'Like for like',
      context,
      page.likeForLike.map((one) => [one.state, one.label, one.values]),
    ),
    ...page.changes.flatMap((change) =>
      section(
        `What changed from A to ${change.key}`,
        context,
        change.lines.map((line) => [line.label, `${line.before} → ${line.after}`, line.packageName ?? '']),
      ),
    ),
    ...list(
      'Said by hand',
      page.combinations.flatMap(({ key, shortName, takenApart }) =>
        takenApart === null
          ? []
          : [`The engine was ${takenApart ? '' : 'not '}taken apart for ${key}, ${shortName}.`],
      ),
      context,
    ),
    ...section(
      'Evidence',
      context,
      page.evidence.map((one) => [
        one.key,
        one.pullId.slice(0, 8),
        one.name,
        one.role,
        one.facts,
        one.reason,
      ]),
    ),
    ...list(
      'Still to make',
      page.planned.map((one) => one.text),
      context,
    ),
    ...list('Missing', page.missing, context),
    ...section(
      'Predictions',
      context,
      page.predictions.lines.map((one) => [one.key, one.said, one.cameOut, one.basis]),
    ),
    ...findingSection(page.findings, context),
    ...list(
      'Remarks',
      page.remarks.map((one) => one.text),
      context,
    ),
    ...list('Standard', page.standardNotes, context),
    ...(page.ownRemark === '' ? [] : ['', page.ownRemark]),
  ].filter((line, index, all) => line !== '' || all[index - 1] !== '');
}

/** The page of a pull: its figures, conditions, channels, what was cut. */
export function pullLines(page: PageOf<'pull'>, context: Context): string[] {
  return [
    context.colours.bold(page.name),
    page.headline.map((part) => part.text).join(''),
    chips(page.chips),
    page.basis,
    ...section(
      'Conditions',
      context,
      page.conditions.map((one) => [one.label, one.value]),
    ),
    ...section(
      'Channels',
      context,
      page.channels.map((one) => [one.name, one.meaning, one.unit, one.low, one.high, String(one.count)]),
    ),
    ...list('Cut', page.cuts, context),
    ...list('Spikes', page.spikes, context),
    ...list('Notes', [...page.notes, ...page.events], context),
    ...findingSection(page.findings, context),
    ...list(
      'Remarks',
      page.remarks.map((one) => one.text),
      context,
    ),
    ...section(
      'Trials',
      context,
      page.trials.map((one) => [one.id.slice(0, 8), one.question]),
    ),
    ...(page.file ? ['', `File ${page.file.name}, SHA-256 ${page.file.hash}`] : []),
  ].filter((line, index, all) => line !== '' || all[index - 1] !== '');
}

/** The page of a combination: the sheet, what was derived, what changed. */
export function combinationLines(page: PageOf<'combination'>, context: Context): string[] {
  return [
    context.colours.bold(page.name),
    `${page.engineName}, revision ${page.revision}${page.madeFrom ? `, made from ${page.madeFrom.name}` : ''}`,
    chips(page.chips),
    ...page.sections.flatMap((one) =>
      section(
        one.title,
        context,
        one.rows.map((row) => [row.label, row.text, row.origin]),
      ),
    ),
    ...page.sections.flatMap((one) => one.rows.flatMap((row) => shownTable(row.table ?? null, context))),
    ...section(
      'Derived',
      context,
      page.derived.map((one) => [one.label, one.value, one.from]),
    ),
    ...section(
      'Changed',
      context,
      page.changes.map((one) => [one.label, `${one.before} → ${one.after}`]),
    ),
    ...section(
      'Pulls',
      context,
      page.pulls.map((one) => [one.id.slice(0, 8), one.name, one.peakPower]),
    ),
    ...findingSection(page.findings, context),
    ...list(
      'Remarks',
      page.remarks.map((one) => one.text),
      context,
    ),
  ].filter((line, index, all) => line !== '' || all[index - 1] !== '');
}

const named = (title: string, of: string): string => (of === '' ? title : `${title} of ${of}`);

const chips = (all: { text: string }[]): string =>
  all.length === 0 ? '' : `[${all.map((one) => one.text).join('] [')}]`;

function section(title: string, context: Context, rows: string[][]): string[] {
  if (rows.length === 0) return [];
  // Without a heading of its own, a table's first row would not count as figures or text.
  return ['', context.colours.bold(title), ...table([rows[0]!.map(() => ''), ...rows], '  ').slice(1)];
}

function list(title: string, texts: string[], context: Context): string[] {
  return texts.length === 0 ? [] : ['', context.colours.bold(title), ...texts.map((text) => `  ${text}`)];
}

function shownTable(shown: Tables, context: Context): string[] {
  if (!shown) return [];
  const heading = ['', ...shown.columns.map((column) => column.text)];
  const rows = shown.rows.map((row) => [rowName(row), ...row.cells]);
  const columns = heading.length === (rows[0]?.length ?? 0) + 1 ? heading.slice(1) : heading;
  return ['', context.colours.bold(shown.title), ...table([columns, ...rows], '  ')];
}

/** `Power, hp`, but `4,000 rpm`. */
function rowName({ name, unit }: { name: string; unit: string }): string {
  if (unit === '') return name;
  return /\d$/.test(name) ? `${name} ${unit}` : `${name}, ${unit}`;
}
