import type { TrialPage } from '@pullbook/views';
import { Card } from '../../parts/Card.tsx';
import { ShownTable } from '../../parts/ShownTable.tsx';

/** Engines of a survey side by side, peaks, averages and figures at chosen speeds. */
export function TrialTables({ page }: { page: TrialPage }) {
  return [page.survey, page.peaks, page.averages, page.atSpeeds].map(
    (table) =>
      table !== null &&
      table.rows.length > 0 && (
        <Card key={table.id} title={table.title}>
          <ShownTable table={table} />
        </Card>
      ),
  );
}
