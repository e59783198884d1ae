import { type ChartDescription, placeText } from '@pullbook/charts';
import type { CursorTable } from '@pullbook/views';
import type { ReactNode } from 'react';
import { Card } from '../parts/Card.tsx';
import { CombinationKey } from '../parts/CombinationKey.tsx';
import styles from '../parts/figures.module.css';
import { type Cursor, useNode } from './cursor.ts';

/** More bands than these are folded: the figures themselves come first. */
const UNFOLDED = 4;
/** So many columns have room on a telephone. */
const NARROW = 3;

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
  const gains = table.gains ?? [];
  return (
    <Card title={`At ${placeText(chart, at)}`}>
      <Scrolled isWide={table.columns.length > NARROW}>
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
      </Scrolled>
      {gains.length > UNFOLDED ? (
        <details>
          <summary>95 % bands at this speed alone</summary>
          <Bands of={gains} node={node} />
        </details>
      ) : (
        <Bands of={gains} node={node} />
      )}
    </Card>
  );
}

/** More columns than always have room are scrolled, by keys too. */
function Scrolled({ isWide, children }: { isWide: boolean; children: ReactNode }) {
  if (!isWide) return <div className={styles.scroll}>{children}</div>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than its place is scrolled by keys too
    <section className={styles.scroll} aria-label="Figures at the cursor" tabIndex={0}>
      {children}
    </section>
  );
}

function Bands({ of, node }: { of: NonNullable<CursorTable['gains']>; node: number }) {
  return of.map(({ name, unit, cells }) => (
    <p key={name} className={styles.under}>
      <span>{name}</span> <strong>{cells[node] ? `${cells[node]} ${unit}` : 'no band here'}</strong>
    </p>
  ));
}
