import type { TrialPage } from '@pullbook/views';
import { ButtonLink } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { ChangeLines } from '../../parts/ChangeLines.tsx';

/** What was changed from the baseline, for each other combination. */
export function Changes({ page }: { page: TrialPage }) {
  return page.changes.map(({ key, lines }) => {
    const combination = page.combinations.find((one) => one.key === key);
    return (
      <Card key={key} title={`What changed: ${key} ${combination?.shortName ?? ''}`}>
        {lines.length === 0 ? <p>Nothing on the sheets differs.</p> : <ChangeLines lines={lines} />}
        {combination !== undefined && (
          <p>
            <ButtonLink small to="/combinations/new" search={{ from: combination.id }}>
              Same as {key}, but …
            </ButtonLink>
          </p>
        )}
      </Card>
    );
  });
}
