import type { TrialPage } from '@pullbook/views';
import { Card } from '../../parts/Card.tsx';
import { ShownTable } from '../../parts/ShownTable.tsx';
import styles from './trial.module.css';

/** Engines of a survey side by side, peaks, averages, figures at chosen speeds; folded: what the bands are made of. */
export function TrialTables({ page }: { page: TrialPage }) {
  return (
    <>
      {[page.survey, page.peaks, page.averages, page.atSpeeds].map(
        (table) =>
          table !== null &&
          table.rows.length > 0 && (
            <Card key={table.id} title={table.title}>
              <ShownTable table={table} />
            </Card>
          ),
      )}
      {page.bands.length > 0 && (
        <Card title="More figures">
          <details className={styles.later}>
            <summary>{page.bands.map(({ title }) => title).join('; ')}</summary>
            {page.bands.map((table) => (
              <div key={table.id}>
                <h3 className={styles.figuresName}>{table.title}</h3>
                <ShownTable table={table} />
              </div>
            ))}
          </details>
        </Card>
      )}
    </>
  );
}
