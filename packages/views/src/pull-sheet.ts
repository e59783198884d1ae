import { escaped } from '@pullbook/charts';
import type { StopCriterion } from '@pullbook/core/plan';
import { PAPERS, type Paper, pullSheetStyle } from './pull-sheet-style.ts';

/** What one printed sheet of a plan says, in the words and units of whoever prints it. */
export interface PullSheet {
  question: string;
  /** `No supercharger (A) against supercharger (B)` */
  combinations: string;
  /** What the plan gives, in a sentence. */
  sentence: string;
  /** `SAE J1349`, `4,000 to 6,500 rpm`, `after 4 and 6 counted pulls`. */
  facts: { label: string; value: string }[];
  /** Of the kept plan; '' none. */
  notes: string;
  rows: {
    order: number;
    key: string;
    name: string;
    /** Before this pull: what is fitted, warm-ups to tick; `null`: nothing. */
    fitting: { words: string; warmUps: number } | null;
    wait: string;
  }[];
  /** Engine speeds to pull over and rate, where they are known; '' to be written in. */
  window: string;
  rate: string;
  withCharge: boolean;
  start: { label: string; value: string }[];
  stopCriteria: readonly StopCriterion[];
  planningAid: string;
  cautions: readonly string[];
  isInvented: boolean;
}

/** Rows of the first page, beside the card, and of each further one. */
const FIRST_ROWS = 12;
const FURTHER_ROWS = 20;

/** The sheet as one file that needs no other: opened, printed, taken into the cell. */
export function pullSheetHtml(sheet: PullSheet, paper: Paper): string {
  const pages = [sheet.rows.slice(0, FIRST_ROWS)];
  for (let from = FIRST_ROWS; from < sheet.rows.length; from += FURTHER_ROWS) {
    pages.push(sheet.rows.slice(from, from + FURTHER_ROWS));
  }
  const sections = pages.map((rows, place) =>
    place === 0
      ? `<section class="page">${headOf(sheet)}${tableOf(sheet, rows)}${cardOf(sheet)}</section>`
      : `<section class="page"><p><strong>${escaped(sheet.question)}</strong> · page ${place + 1} of ${pages.length}</p>${tableOf(sheet, rows)}</section>`,
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Pull sheet · ${escaped(sheet.question)}</title>
<style>${pullSheetStyle(paper)}</style>
</head>
<body>
<p class="hint">Pull sheet on ${PAPERS[paper].name} paper. Print it with the browser’s own print command (Ctrl P), at 100 %.</p>
<main>${sections.join('\n')}</main>
</body>
</html>
`;
}

function headOf({ question, combinations, sentence, facts, start, notes, isInvented }: PullSheet): string {
  const listed = [...facts, ...start].map(
    ({ label, value }) => `<span><strong>${escaped(label)}:</strong> ${escaped(value)}</span>`,
  );
  return [
    `<h1>${escaped(question)}</h1>`,
    `<p>${escaped(combinations)}${isInvented ? ' · <strong>invented data</strong>' : ''}</p>`,
    `<p>${escaped(sentence)}</p>`,
    `<div class="facts">${listed.join('')}</div>`,
    ...(notes === '' ? [] : [`<p><strong>Notes:</strong> ${escaped(notes)}</p>`]),
    '<p>Day ____________ Cell ____________ Operator ____________ Fuel batch ____________</p>',
  ].join('\n');
}

interface Column {
  title: string;
  /** Share of the width. */
  share: number;
  cell: (row: PullSheet['rows'][number]) => string;
}

const blank = (title: string, share: number): Column => ({ title, share, cell: () => '<td></td>' });
const tick = (title: string): Column => ({
  title,
  share: 6.4,
  cell: () => '<td class="tick"><span></span></td>',
});
const given = (title: string, share: number, text: (row: PullSheet['rows'][number]) => string): Column => ({
  title,
  share,
  cell: (row) => `<td class="given">${escaped(text(row))}</td>`,
});

function columnsOf({ window, rate, withCharge }: PullSheet): Column[] {
  return [
    { title: 'No.', share: 4.5, cell: ({ order }) => `<td class="no">${order}</td>` },
    { title: 'Key', share: 4, cell: ({ key }) => `<td class="key">${escaped(key)}</td>` },
    { title: 'Combination', share: 11, cell: ({ name }) => `<td class="name">${escaped(name)}</td>` },
    tick('Coun­ted'),
    tick('Rejec­ted'),
    blank('Start oil', 6),
    blank('Start water', 6),
    blank('Start air', 6),
    ...(withCharge ? [blank('Start charge', 6)] : []),
    given('Wait', 5.5, ({ wait }) => wait),
    given('Window', 8.5, () => window),
    given('Rate', 7.5, () => rate),
    blank('Mix­ture', 5.5),
    blank('Spark', 5.5),
    blank('Comment; why rejected', 13),
  ];
}

function tableOf(sheet: PullSheet, rows: PullSheet['rows']): string {
  const columns = columnsOf(sheet);
  const whole = columns.reduce((sum, { share }) => sum + share, 0);
  const widths = columns.map(({ share }) => `<col style="width:${((100 * share) / whole).toFixed(2)}%">`);
  const body = rows.map((row) => {
    const cells = `<tr>${columns.map(({ cell }) => cell(row)).join('')}</tr>`;
    if (row.fitting === null) return cells;
    const { words, warmUps } = row.fitting;
    const boxes = '<span></span>'.repeat(warmUps);
    return `<tr class="fit"><td colspan="${columns.length}">${escaped(words)}${boxes}</td></tr>${cells}`;
  });
  return `<table><colgroup>${widths.join('')}</colgroup><thead><tr>${columns
    .map(({ title }) => `<th scope="col">${escaped(title)}</th>`)
    .join('')}</tr></thead><tbody>${body.join('')}</tbody></table>`;
}

function cardOf({ stopCriteria, planningAid, cautions }: PullSheet): string {
  const lines = stopCriteria.map(
    ({ label, limit, source }) =>
      `<li><strong>${escaped(label)}</strong> ${escaped(limit)} <small>${escaped(source)}</small></li>`,
  );
  return [
    '<div class="card"><h2>End the pull at once</h2>',
    `<ul>${lines.join('')}</ul>`,
    `<p class="aid">${escaped(planningAid)}</p></div>`,
    `<ul class="cautions">${cautions.map((one) => `<li>${escaped(one)}</li>`).join('')}</ul>`,
  ].join('\n');
}
