import type { TrialPage } from '@pullbook/views';
import { Card } from '../../parts/Card.tsx';
import { ChangeLines } from '../../parts/ChangeLines.tsx';

/** What was changed from the baseline, for each other combination. */
export function Changes({ page }: { page: TrialPage }) {
  return page.changes.map(({ key, lines }) => {
    const combination = page.combinations.find((one) => one.key === key);
    return (
      <Card key={key} title={`What changed: ${key} ${combination?.shortName ?? ''}`}>
        {lines.length === 0 ? <p>Nothing on the sheets differs.</p> : <ChangeLines lines={lines} />}
      </Card>
    );
  });
}
