import {
  COMMON_TEST_PRESSURE,
  type CombinationSheet,
  FIELDS,
  FLOW_FIELDS,
  flowPoints,
  type SheetTable,
  type SheetValue,
} from '@pullbook/core/combination';
import type { ShownTable } from './model.ts';
import type { Showing } from './showing.ts';

/** Lines beside the points of a table, with their labels. */
export function tableDetails(field: string, table: SheetTable): { label: string; text: string }[] {
  const shape = FIELDS.find((known) => known.field === field && known.table !== null)?.table;
  return Object.entries(table.details).map(([name, { text }]) => ({
    label: shape?.details.find((detail) => detail.field === name)?.label ?? name,
    text,
  }));
}

/**
 * The points of a table in the units shown; a flow sheet with what follows from it: flow at the common test pressure where it
 * was taken at another, and the share of the ideal flow that passes the valve's curtain.
 */
export function sheetTable(
  sheet: CombinationSheet,
  field: string,
  label: string,
  value: SheetValue & { table: SheetTable },
  show: Showing,
): ShownTable {
  const flowField = FLOW_FIELDS.find((one) => one === field);
  const columns = flowField
    ? flowColumns(sheet, flowField, value.table, show)
    : [plainColumn(value.table.columns[1]!, 'Lift', show)];
  const [first] = value.table.columns;
  return {
    id: field,
    title: label,
    columns: columns.map(({ text }) => ({ text, combination: null })),
    rows: first!.values.map((place, index) => ({
      name: show.number(place, first!.kind),
      unit: show.unit(first!.kind),
      cells: columns.map(({ cells }) => cells[index]!),
    })),
  };
}

interface Column {
  text: string;
  cells: string[];
}

const plainColumn = (
  { values, kind }: SheetTable['columns'][number],
  label: string,
  show: Showing,
): Column => ({ text: `${label}, ${show.unit(kind)}`, cells: values.map((one) => show.number(one, kind)) });

function flowColumns(
  sheet: CombinationSheet,
  field: (typeof FLOW_FIELDS)[number],
  table: SheetTable,
  show: Showing,
): Column[] {
  const points = flowPoints(sheet, field);
  const pressure = table.details.testPressure;
  const isOther =
    pressure?.value != null && Math.abs(pressure.value / COMMON_TEST_PRESSURE - 1) > OTHER_PRESSURE;
  const own = plainColumn(table.columns[1]!, 'Flow', show);
  const numbers = (kind: 'volumeFlow' | 'ratio', of: (point: (typeof points)[number]) => number | null) =>
    points.map((point) =>
      show.number(of(point) ?? Number.NaN, kind, kind === 'ratio' ? { decimals: 2 } : {}),
    );
  const columns = [own];
  if (isOther)
    columns.push({
      text: `At 28 inH2O, ${show.unit('volumeFlow')}`,
      cells: numbers('volumeFlow', (point) => point.flowAtCommonPressure),
    });
  if (points.some(({ coefficient }) => coefficient !== null))
    columns.push(
      { text: 'Of ideal flow', cells: numbers('ratio', (point) => point.coefficient) },
      { text: 'Lift ÷ valve', cells: numbers('ratio', (point) => point.liftToDiameter) },
    );
  return columns;
}

/** Pressures within this share are one: inches of water are told at several temperatures of the water. */
const OTHER_PRESSURE = 0.005;
