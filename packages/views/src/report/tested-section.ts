import { thingsChanged } from '@pullbook/core/trial';
import { daysText } from '../date.ts';
import { engineText, fuelText, superchargerText } from '../engine-line.ts';
import type { ShownTable, TrialPage } from '../model.ts';
import type { ReportSection } from '../publish/model.ts';
import type { CombinationInTrial } from '../trial-in-view.ts';
import { capitalised, listed } from '../wording.ts';
import { ROLES } from './pulls-section.ts';
import type { ReportInView } from './report-in-view.ts';

/** More lines of what changed than these are for whoever looks closer. */
const MOST_LINES = 10;

/** The combinations side by side, and what changed between them, by its name where that is much. */
export function testedSection(report: ReportInView): ReportSection {
  const { page } = report;
  const combinations = combinationsTable(report);
  const changes = changesOf(report);
  const [only] = changes;
  // Of two combinations what changed stands under what each is, in the same columns.
  const isOne = page.combinations.length === 2 && changes.length === 1;
  const tables: ShownTable[] =
    isOne && only !== undefined && isShort(report)
      ? [
          {
            ...combinations,
            title: 'Combinations, and what changed',
            rows: [...combinations.rows, ...only.rows],
          },
        ]
      : [combinations, ...(isShort(report) ? changes : [])];
  return {
    id: 'tested',
    title: 'What was tested',
    blocks: tables.map((table) => ({ kind: 'table', table })),
  };
}

/** What changed line by line, where that is too much for the pages that everybody reads; `null`: it stands there. */
export function changesSection(report: ReportInView): ReportSection | null {
  if (isShort(report)) return null;
  return {
    id: 'changes',
    title: 'What changed',
    blocks: changesOf(report).map((table) => ({ kind: 'table', table })),
  };
}

const isShort = ({ page }: ReportInView): boolean =>
  page.changes.reduce((sum, { lines }) => sum + lines.length, 0) <= MOST_LINES;

const changesOf = (report: ReportInView): ShownTable[] =>
  report.page.changes.flatMap((one) => changesTables(report, one));

/** What changed for one combination: the parts by themselves, and each package under its name. */
function changesTables({ page }: ReportInView, { key, lines }: TrialPage['changes'][number]): ShownTable[] {
  const [baseline] = page.combinations;
  const changed = page.combinations.find((one) => one.key === key);
  const packages = [...new Set(lines.map(({ packageName }) => packageName))];
  return packages.map((name) => ({
    id: `changes-${key}${name === null ? '' : `-${name}`}`,
    title: `What changed from ${baseline!.key} to ${key}${name === null ? '' : `: ${name}`}`,
    columns: [
      { text: baseline!.key, combination: baseline!.combination },
      { text: key, combination: changed?.combination ?? null },
    ],
    rows: lines
      .filter(({ packageName }) => packageName === name)
      .map(({ label, before, after }) => ({ name: label, unit: '', cells: [before, after] })),
  }));
}

function combinationsTable(report: ReportInView): ShownTable {
  const { view, page } = report;
  const { combinations, show } = view;
  const row = (name: string, cell: (item: CombinationInTrial) => string) => ({
    name,
    unit: '',
    cells: combinations.map(cell),
  });
  const thingsOf = ({ key }: CombinationInTrial) =>
    capitalised(listed(thingsChanged(view.answer.changes[key] ?? [])));
  const setUps = (item: CombinationInTrial) => {
    const ids = item.counted.map(({ pull }) => pull.setUpId);
    if (ids.length === 0) return '';
    return ids.includes(null) ? 'not noted' : `${new Set(ids).size}`;
  };
  const sheetOf = (item: CombinationInTrial) => item.combination?.sheet ?? null;
  const rows = [
    row('Combination', (item) => page.combinations.find(({ key }) => key === item.key)?.name ?? ''),
    ...whereItDiffers(
      row('Engine', (item) => textOr(sheetOf(item), (sheet) => engineText(sheet, show.options))),
    ),
    ...whereItDiffers(row('Fuel', (item) => textOr(sheetOf(item), fuelText))),
    row('Induction', (item) =>
      textOr(sheetOf(item), (sheet) => (item.supercharged ? superchargerText(sheet) : 'naturally aspirated')),
    ),
    row('Pulls', pullsText),
    ...(isShort(report) ? [] : [row(`Changed from ${view.baseline.key}`, thingsOf)]),
    row('Set-ups', setUps),
    ...whereItDiffers(
      row('Days', (item) =>
        item.counted.length === 0
          ? ''
          : daysText(item.counted.map(({ pull }) => pull.recordedAt)) || 'not noted',
      ),
    ),
  ];
  return {
    id: 'combinations',
    title: 'Combinations',
    columns: combinations.map(({ key, index }) => ({ text: key, combination: index })),
    rows,
  };
}

/** What all have alike stands under the answer; there nothing stands of what is not noted, so that is said here. */
const whereItDiffers = (row: ShownTable['rows'][number]): ShownTable['rows'] =>
  row.cells.every((cell) => cell === row.cells[0]) && row.cells[0] !== 'not noted' ? [] : [row];

/** `3 counted, 1 rejected` */
const pullsText = ({ pulls, counted: { length } }: CombinationInTrial): string =>
  [
    `${length} counted`,
    ...(['rejected', 'warm-up'] as const).flatMap((role) => {
      const count = pulls.filter((one) => one.role === role).length;
      return count === 0 ? [] : [`${count} ${ROLES[role]}`];
    }),
  ].join(', ');

const textOr = <T>(sheet: T | null, text: (sheet: T) => string): string =>
  (sheet === null ? '' : text(sheet)) || 'not noted';
