import { type ChartDescription, placeText } from '@pullbook/charts';
import type { CursorTable } from '@pullbook/views';
import { type Cursor, useNode } from '../../chart/cursor.ts';
import styles from './pull.module.css';

/** The exact figures of every channel where the cursor stands; they stay in sight under a tall stack. */
export function RecordedNumbers({
  chart,
  table,
  cursor,
}: {
  chart: ChartDescription;
  table: CursorTable;
  cursor: Cursor;
}) {
  const node = useNode(cursor, table);
  return (
    <dl className={styles.recordedNumbers}>
      <div>
        <dt>At</dt>
        <dd>{placeText(chart, table.at[node]!)}</dd>
      </div>
      {table.rows.map(({ id, name, unit, cells: [cells] }) => (
        <div key={id}>
          <dt>{name}</dt>
          <dd>{`${cells?.[node] || '–'} ${unit}`}</dd>
        </div>
      ))}
    </dl>
  );
}
