import type { Origin } from '../quantity/index.ts';
import { accepted, type Remark, type Result, remark } from '../remark/index.ts';
import { plainName, type SheetField } from './fields.ts';
import type { SheetTable, SheetValue } from './model.ts';
import { readPoints } from './read-points.ts';
import { readFieldValue } from './read-value.ts';
import type { TableShape } from './table-shapes.ts';

/**
 * Reads a table of a sheet from its plain form: what the points were taken with, and the points as text.
 *
 * ```yaml
 * flowIntake:
 *   testPressure: 28 inH2O
 *   bore: 96 mm
 *   points: |
 *     lift mm, flow L/s
 *     2, 28
 *     4, 56
 * ```
 */
export function readTable(
  field: SheetField & { table: TableShape },
  entered: Readonly<Record<string, unknown>>,
  origin: Origin,
  place: string,
): Result<SheetValue> {
  const remarks: Remark[] = [];
  const details: SheetTable['details'] = {};
  let points: string | null = null;
  for (const [key, value] of Object.entries(entered)) {
    if (plainName(key) === 'points') {
      if (typeof value === 'string') points = value.trim();
      continue;
    }
    const detail = field.table.details.find((one) => plainName(one.field) === plainName(key));
    if (detail === undefined || typeof value === 'object') {
      const known = field.table.details.map((one) => one.field).join(', ');
      const message = `${place}.${key}: not a line of this table. Its lines are ${known}, origin and points.`;
      remarks.push(remark('refusal', 'table-line-not-known', message));
      continue;
    }
    const text = typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value ?? 'unknown');
    const read = readFieldValue(detail, text, 'not stated', `${place}.${key}`);
    remarks.push(...read.remarks);
    if (read.ok) details[detail.field] = read.value;
  }
  for (const { field: name, label, example, needed } of field.table.details) {
    if (!needed || Object.hasOwn(details, name) || remarks.some(({ level }) => level === 'refusal')) continue;
    const message = `${place}.${name}: ${label.toLowerCase()} must be told with such a table; without it the points mean nothing. Write "${name}: ${example}", or "${name}: unknown".`;
    remarks.push(remark('refusal', 'table-line-missing', message));
  }
  const columns = readPoints(points ?? '', field.table, `${place}.points`);
  remarks.push(...columns.remarks);
  if (!columns.ok || remarks.some(({ level }) => level === 'refusal')) return { ok: false, remarks };
  const table: SheetTable = { points: points!, columns: columns.value, details };
  return accepted({ text: summaryOf(table), value: null, kind: 'table', origin, table }, remarks);
}

/** `8 points at 28 inH2O` */
function summaryOf({ columns, details }: SheetTable): string {
  const pressure = details.testPressure;
  const at =
    pressure === undefined
      ? ''
      : pressure.value === null
        ? ', test pressure unknown'
        : ` at ${pressure.text}`;
  return `${columns[0]!.values.length} points${at}`;
}
