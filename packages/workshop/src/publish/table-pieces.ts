import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Remark } from '@pullbook/core/remark';
import type { TrialAnswer } from '@pullbook/core/trial';
import { type OutTable, tablesToCsv, tablesToJson, trialTables, workbookOf } from '@pullbook/formats';
import { heldBack, plainText, trialPage } from '@pullbook/views';
import { publishedName } from './file-names.ts';
import type { FormatOf } from './model.ts';
import { type Making, type Piece, PLAIN } from './piece.ts';

/** The trial's figures and curves as tables for other programs; as CSV a folder, each table with its metadata. */
export async function tablePieces(making: Making): Promise<Piece[]> {
  const { answer, request, stem } = making;
  const at = new Date().toISOString();
  const tables = tablesOf(making, at);
  return request.formats.table.map((format) => ({
    kind: 'table',
    name: publishedName(stem, ['tables'], format === 'csv' ? '' : format),
    make: async (path) => ({
      ...PLAIN,
      remarks: await written(path, format, tables, { title: answer.trial.question, at }),
    }),
  }));
}

function tablesOf({ answer, options }: Making, at: string): OutTable[] {
  const page = trialPage(answer, options);
  return trialTables(withCountedCurves(answer), {
    sentence: plainText(page.sentence),
    verdicts: page.verdicts.map(({ name, chip, figures }) =>
      [name, chip.text, figures].filter(Boolean).join(' · '),
    ),
    warnings: heldBack(answer).length > 0 ? ['Not for publication'] : [],
    system: options.units,
    decimalMark: options.decimalMark,
    at,
  });
}

/** Pulls that do not count are named with their reason; their curves stay in the shop. */
function withCountedCurves(answer: TrialAnswer): TrialAnswer {
  const counted = new Set(
    answer.trial.pulls.flatMap(({ pullId, role }) => (role === 'counted' ? [pullId] : [])),
  );
  const pulls = [...answer.pulls].map(
    ([id, pull]) => [id, counted.has(id) ? pull : { ...pull, channels: [] }] as const,
  );
  return { ...answer, pulls: new Map(pulls) };
}

async function written(
  path: string,
  format: FormatOf<'table'>,
  tables: readonly OutTable[],
  about: { title: string; at: string },
): Promise<Remark[]> {
  if (format === 'xlsx') {
    const { bytes, remarks } = await workbookOf(tables, about);
    await writeFile(path, bytes);
    return remarks;
  }
  if (format === 'json') {
    await writeFile(path, `${JSON.stringify(tablesToJson(tables), null, 2)}\n`);
    return [];
  }
  await mkdir(path);
  for (const { path: name, bytes } of tablesToCsv(tables)) await writeFile(join(path, name), bytes);
  return [];
}
