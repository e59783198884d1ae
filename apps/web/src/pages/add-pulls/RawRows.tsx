import type { ReadFileReport } from '../../api/edge.ts';
import styles from './add-pulls.module.css';

/** The first rows as they stand in the file. */
export function RawRows({ report }: { report: ReadFileReport }) {
  return (
    <details>
      <summary>The first rows as they stand in the file</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than its place is scrolled by keys too */}
      <section className={styles.scroll} aria-label={`First rows of ${report.fileName}`} tabIndex={0}>
        <table className={styles.preview}>
          <thead>
            <tr>
              {report.columns.map((column) => (
                <th key={column.index} scope="col">
                  {column.name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {report.preview.map((row, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a row of a file has no other name than its place
              <tr key={index}>
                {report.columns.map((column) => (
                  <td key={column.index}>{row[column.index] ?? ''}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}
