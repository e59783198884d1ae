import type { ShownTable as Table } from '@pullbook/views';
import { CombinationKey } from './CombinationKey.tsx';
import styles from './figures.module.css';

/** A longer cell holds words: it is set as such and may break. */
const LONGEST_FIGURE = 28;

/** A table as the views made it, cells ready to print. */
export function ShownTable({ table }: { table: Table }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than its place is scrolled by keys too
    <section className={styles.scroll} aria-label={`Figures: ${table.title}`} tabIndex={0}>
      <table className={styles.figures}>
        <thead>
          <tr>
            <td />
            {table.columns.map(({ text, combination }) => (
              <th key={text} scope="col">
                <CombinationKey text={text} combination={combination} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row) => (
            <tr key={`${row.name} ${row.unit}`}>
              <th scope="row">
                {row.name} <span className={styles.unit}>{row.unit}</span>
              </th>
              {row.cells.map((cell, index) => (
                <td
                  key={table.columns[index]?.text ?? index}
                  className={cell.length > LONGEST_FIGURE ? styles.long : undefined}
                >
                  <CombinationKey
                    text={cell === '' ? '–' : cell}
                    combination={table.columns[index]?.combination ?? null}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
