import type { ShownTable as Table } from '@pullbook/views';
import { CombinationKey } from './CombinationKey.tsx';
import styles from './figures.module.css';

/** A longer cell holds words: it is set as such and may break. */
const LONGEST_FIGURE = 28;

/** A table as the views made it, cells ready to print. */
export function ShownTable({
  table,
  isBroken = false,
  isLong = false,
}: {
  table: Table;
  /** Cells break at their spaces, a band under its figure, so that more columns have room. */
  isBroken?: boolean;
  /** More rows than are looked at at once: where there is room for columns it scrolls in its place. */
  isLong?: boolean;
}) {
  return (
    <section
      className={isLong ? styles.longScroll : styles.scroll}
      aria-label={`Figures: ${table.title}`}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a table larger than its place is scrolled by keys too
      tabIndex={0}
    >
      <table className={isBroken ? styles.broken : styles.figures}>
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
          {table.rows.map((row, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: several rows may have one name, and their order is all there is
            <tr key={place}>
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
