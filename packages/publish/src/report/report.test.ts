import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ReportDescription } from '@pullbook/views/publish';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { oddTrials } from '../../../views/src/publish/odd-trials.test-support.ts';
import { blown, reportOf } from '../../../views/src/report/report-of.test-support.ts';
import { htmlTexts } from '../numbers/read-html.ts';
import { readPublished } from '../numbers/read-published.ts';
import { reportBody, reportHtml } from './report-html.ts';
import { PAPER_SIZES, reportPdf } from './report-pdf.ts';

/** Figures of every table of a report, as they are shown. */
const cellsOf = (report: ReportDescription): string[] =>
  [...report.sections, ...report.appendix].flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === 'table' ? block.table.rows.flatMap(({ cells }) => cells) : [])),
  );
/** Words of a text in any line breaks and any space. */
const run = (texts: string): string => texts.replace(/\s+/gu, '');
const textsOf = (bytes: Uint8Array): string => {
  const read = readPublished(bytes);
  if (!read.ok) throw new Error(read.remarks[0]?.message);
  return run(read.value.texts.join(''));
};

// Words break over lines, and other scripts come as pictures in a PDF: figures stand whole.
const figuresOf = (report: ReportDescription): string[] =>
  cellsOf(report).filter((cell) => /^[−+\d., to%\u00a0]+$/u.test(cell));

test('the HTML shows every cell of every table, on any trial', () => {
  fc.assert(
    fc.property(oddTrials, (answer) => {
      const report = reportOf(answer);
      const shown = run(htmlTexts(`<body>${reportBody(report).body}</body>`).join(''));
      for (const cell of cellsOf(report)) expect(shown).toContain(run(cell));
    }),
    { seed: 7, numRuns: 8 },
  );
});

test('the PDF shows every figure, on any trial', async () => {
  await fc.assert(
    fc.asyncProperty(oddTrials, async (answer) => {
      const report = reportOf(answer);
      const shown = textsOf(await reportPdf(report));
      for (const figure of figuresOf(report)) expect(shown).toContain(run(figure));
    }),
    { seed: 7, numRuns: 2 },
  );
});

test('the same report gives the same bytes', async () => {
  const report = reportOf(blown());
  expect(Buffer.compare(await reportPdf(report), await reportPdf(report))).toBe(0);
  expect(await reportHtml(report)).toBe(await reportHtml(report));
});

test('the HTML asks nobody, and its policy lets nothing in', async () => {
  const html = await reportHtml(reportOf(blown(['<script>alert(1)</script>', '"&\''])), {
    numbers: { a: '</script>' },
  });
  expect(html).toContain("default-src 'none'");
  expect(html).not.toMatch(/(?:src|href)="(?!#|data:)/u);
  expect(html).not.toMatch(/url\((?!data:)/u);
  expect(html).not.toContain('<script>alert');
  expect(html.match(/<script>/gu)).toHaveLength(1);
});

const hasReader = spawnSync('pdftotext', ['-v']).error === undefined;

describe.skipIf(!hasReader)('a reader of PDF that is not ours', () => {
  const folder = mkdtempSync(join(tmpdir(), 'pullbook-report-'));
  const path = join(folder, 'report.pdf');
  const report = reportOf(blown(), { contact: 'Old Dairy Road' });
  const ask = (program: string, ...more: string[]) => execFileSync(program, more, { encoding: 'utf8' });

  beforeAll(async () => writeFileSync(path, await reportPdf(report, { numbers: { a: 1 }, paper: 'letter' })));
  afterAll(() => rmSync(folder, { recursive: true }));

  test('finds pages, title, tags and language', () => {
    const facts = ask('pdfinfo', path);
    expect(facts).toMatch(/Title: +What does it do\?/u);
    expect(facts).toMatch(/Tagged: +yes/u);
    expect(facts).toContain(`${PAPER_SIZES.letter.width} x ${PAPER_SIZES.letter.height} pts`);
    expect(facts).toMatch(/CreationDate: .*2026/u);
    const pages = Number(/Pages: +(\d+)/u.exec(facts)![1]);
    const words = ask('pdftotext', path, '-');
    expect(words).toContain(`Page ${pages} of ${pages}`);
    expect(words).toContain('Old Dairy Road');
  });

  test('reads every figure of the tables', () => {
    const words = run(ask('pdftotext', '-layout', path, '-'));
    const figures = cellsOf(report).filter((cell) => /^[−+]?[\d.,]+$/u.test(cell));
    expect(figures.length).toBeGreaterThan(60);
    for (const figure of figures) expect(words).toContain(figure);
  });

  test('finds the numbers as an attached file', () => {
    expect(ask('pdfdetach', '-list', path)).toContain('numbers.json');
  });
});
