import type { TrialPage } from '@pullbook/views';
import { Card } from '../../parts/Card.tsx';
import { ShownTable } from '../../parts/ShownTable.tsx';

/** Engines of a survey side by side, peaks, averages, figures at chosen speeds, and what the bands are made of. */
export function TrialTables({ page }: { page: TrialPage }) {
  return [page.survey, page.peaks, page.averages, page.atSpeeds, ...page.bands].map(
    (table) =>
      table !== null &&
      table.rows.length > 0 && (
        <Card key={table.id} title={table.title}>
          <ShownTable table={table} />
        </Card>
      ),
  );
}
