import type { TrialPage } from '@pullbook/views';
import { ButtonLink } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { ChangeLines } from '../../parts/ChangeLines.tsx';
import styles from './trial.module.css';

/** What was changed from the baseline, for each other combination. */
export function Changes({ page }: { page: TrialPage }) {
  return page.changes.map(({ key, lines }) => {
    const combination = page.combinations.find((one) => one.key === key);
    return (
      <Card key={key} title={`What changed: ${key} ${combination?.shortName ?? ''}`}>
        {lines.length === 0 ? <p>Nothing on the sheets differs.</p> : <ChangeLines lines={lines} />}
        {combination !== undefined && combination.takenApart !== null && (
          <p>The engine was {!combination.takenApart && 'not '}taken apart for it: said by hand.</p>
        )}
        {combination !== undefined && (
          <div className={styles.foot}>
            <ButtonLink small to="/combinations/new" search={{ from: combination.id }}>
              Same as {key}, but …
            </ButtonLink>
          </div>
        )}
      </Card>
    );
  });
}
