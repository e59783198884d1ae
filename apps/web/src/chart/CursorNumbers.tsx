import { type ChartDescription, placeText } from '@pullbook/charts';
import type { CursorTable } from '@pullbook/views';
import { Card } from '../parts/Card.tsx';
import { CombinationKey } from '../parts/CombinationKey.tsx';
import styles from '../parts/figures.module.css';
import { type Cursor, useNode } from './cursor.ts';

/** The exact figures at the cursor, looked up and never computed here. */
export function CursorNumbers({
  chart,
  table,
  cursor,
}: {
  chart: ChartDescription;
  table: CursorTable;
  cursor: Cursor;
}) {
  const node = useNode(cursor, table);
  const at = table.at[node];
  if (at === undefined) return null;
  return (
    <Card title={`At ${placeText(chart, at)}`}>
      <div className={styles.scroll}>
        <table className={styles.figures}>
          <thead>
            <tr>
              <td />
              {table.columns.map(({ key, combination }) => (
                <th key={key} scope="col">
                  <CombinationKey text={key} combination={combination} />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.rows.map((row) => (
              <tr key={row.id}>
                <th scope="row">
                  {row.name} <span className={styles.unit}>{row.unit}</span>
                </th>
                {table.columns.map(({ key, combination }, column) => (
                  <td key={key}>
                    <CombinationKey text={row.cells[column]?.[node] || '–'} combination={combination} />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {table.gains?.map(({ name, unit, cells }) => (
        <p key={name} className={styles.under}>
          <span>{name}</span> <strong>{cells[node] ? `${cells[node]} ${unit}` : 'no band here'}</strong>
        </p>
      ))}
    </Card>
  );
}
