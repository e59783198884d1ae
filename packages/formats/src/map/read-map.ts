import type { MapReference } from '@pullbook/core/airpath';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import type { WrittenMap } from '../match/model.ts';
import { columnMeant, readHeadedTable } from '../table/headed-table.ts';
import { delimiterOf, splitCells, type TableRow } from '../table/split-cells.ts';
import { MAP_COLUMNS } from './map-columns.ts';
import { type HeaderLine, isHeaderKey, type MapHeader, readMapHeader } from './map-header.ts';
import { mapPoints } from './map-points.ts';

/** A map has some hundred points; more is another file given by mistake. */
const LONGEST_MAP = 2_000_000;

/**
 * Reads a compressor map from open CSV: lines such as `# reference pressure: 100 kPa` (or `reference pressure,100 kPa`), then
 * a table whose heading names flow, pressure ratio, speed and efficiency with their units. `fileName` names it in messages,
 * and is its name where none is written. A map without its reference is refused, unless `assume` gives one.
 *
 * @example readMapText('# reference pressure: 100 kPa\n# reference temperature: 25 °C\nflow [kg/s],pressure ratio,…', 'blower.csv')
 */
export function readMapText(
  text: string,
  fileName: string,
  { assume = null }: { assume?: MapReference | null } = {},
): Result<WrittenMap> {
  if (text.length > LONGEST_MAP) {
    const message = `${fileName} has ${text.length} characters; a compressor map has at most ${LONGEST_MAP}. Was another file meant?`;
    return refused(remark('refusal', 'map-too-long', message));
  }
  const { header: headerLines, table } = partsOf(text);
  const header = readMapHeader(headerLines, fileName);
  if (!header.ok) return header;
  const rows = readHeadedTable(table, MAP_COLUMNS, fileName);
  if (!rows.ok) return { ok: false, remarks: [...rows.remarks, ...header.remarks] };
  const reference = referenceOf(header.value, assume, fileName);
  if (!reference.ok) return reference;
  const { geometry, designSpeedRpm, form, notes, name, leftEnd, origin, invented } = header.value;
  const points = mapPoints(rows.value, {
    reference: reference.value,
    wheelExitDiameter: geometry.wheelExitDiameter,
    designSpeedRpm,
    what: fileName,
  });
  if (!points.ok) return points;
  if (form === 'rated' && points.value.length !== 1) {
    const message = `${fileName}: a rated map has one point, this has ${points.value.length}. Write "# form: points", or keep the rated point alone.`;
    return refused(remark('refusal', 'map-rated-points', message));
  }
  const remarks = [header, rows, reference, points].flatMap((part) => part.remarks);
  const map: WrittenMap = {
    name: name ?? stemOf(fileName),
    form,
    reference: reference.value,
    geometry,
    points: points.value,
    leftEnd,
    origin,
    notes: notes.join('\n'),
    invented,
  };
  return accepted(map, remarks);
}

/** Lines of the header and rows of the table; empty lines are passed over. */
function partsOf(text: string): { header: HeaderLine[]; table: TableRow[] } {
  const header: HeaderLine[] = [];
  const table: TableRow[] = [];
  let delimiter: string | null = null;
  for (const [index, written] of text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .entries()) {
    const line = index + 1;
    const plain = withoutQuotes(written);
    if (plain.trim().replace(/[,;\t]/g, '') === '') continue;
    const said = delimiter === null ? headerLine(plain, written, line) : commentIn(plain);
    if (said === 'comment') continue;
    if (said !== null) {
      header.push(said);
      continue;
    }
    const isHeading = delimiter === null;
    delimiter ??= delimiterOf(written);
    table.push({
      cells: withoutEmptyEnd(splitCells(written, delimiter, isHeading), table[0]?.cells.length),
      line,
    });
  }
  return { header, table };
}

/** A comment below the heading says nothing of the points. */
const commentIn = (plain: string): 'comment' | null => (plain.startsWith('#') ? 'comment' : null);

/** A line of the header; a comment that is none; `null`: the heading of the table. */
function headerLine(plain: string, written: string, line: number): HeaderLine | 'comment' | null {
  if (plain.startsWith('#')) {
    const [, key, value] = /^#\s*([^:]+?)\s*:\s?(.*)$/.exec(plain) ?? [];
    if (key === undefined) return 'comment';
    return { key, value: isNotes(key) ? value! : value!.trim(), line };
  }
  const [key = '', ...values] = splitCells(written, delimiterOf(written));
  const isHeading = columnMeant(key, MAP_COLUMNS) !== null && !isHeaderKey(key);
  if (isHeading) return null;
  const value = values.find((one) => one !== '') ?? '';
  return isHeaderKey(key) || values.filter((one) => one !== '').length <= 1 ? { key, value, line } : null;
}

const isNotes = (key: string): boolean => key.trim().toLowerCase() === 'notes';

/** A line that a spreadsheet put in quotes, or followed by its empty cells, as it was. */
function withoutQuotes(written: string): string {
  const quoted = /^"(#(?:[^"]|"")*)"[,;\t]*$/.exec(written);
  if (quoted) return quoted[1]!.replaceAll('""', '"');
  return written.startsWith('#') ? written.replace(/[,;\t]{2,}$/, '') : written;
}

/** Without the empty cells at the end of a row that its heading does not have. */
function withoutEmptyEnd(cells: string[], count: number | undefined): string[] {
  const last = cells.findLastIndex((cell) => cell !== '');
  return cells.slice(0, Math.max(last + 1, Math.min(cells.length, count ?? 0)));
}

function referenceOf(
  { reference: { pressure, temperature } }: MapHeader,
  assume: MapReference | null,
  fileName: string,
): Result<MapReference> {
  if (pressure !== null && temperature !== null) return accepted({ pressure, temperature });
  const missing = [
    ...(pressure === null ? ['reference pressure'] : []),
    ...(temperature === null ? ['reference temperature'] : []),
  ];
  if (assume === null) {
    const message = `${fileName}: ${missing.join(' and ')} ${missing.length === 1 ? 'is' : 'are'} not told. Flow and speed of a map are corrected to some air, and without it they mean nothing. Look at its margin and write ${missing.map((one) => `"# ${one}: ${one.endsWith('pressure') ? '100 kPa' : '25 °C'}"`).join(' and ')} above the table.`;
    return refused(remark('refusal', 'map-reference-missing', message));
  }
  const message = `${fileName}: ${missing.join(' and ')} not told and assumed.`;
  const said: Remark = remark('caution', 'map-reference-assumed', message);
  return accepted({ pressure: pressure ?? assume.pressure, temperature: temperature ?? assume.temperature }, [
    said,
  ]);
}

/** `blower.csv` of a path gives `blower`. */
const stemOf = (fileName: string): string => fileName.replace(/^.*[\\/]/, '').replace(/\.[^.]*$/, '');
