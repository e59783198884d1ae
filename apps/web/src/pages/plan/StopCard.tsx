import type { PlanPage } from '@pullbook/views';
import { useState } from 'react';
import type { Stamped } from '../../api/edge.ts';
import type { PlanAsk } from '../../api/plan.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import styles from './plan.module.css';
import { StopDialog } from './StopDialog.tsx';

/** What most lines rest on: said once below them, beside a line only what is not so. */
const USUAL = 'common practice, no source';

/** When to end a pull at once, with the cautions that go with this engine. */
export function StopCard({ page, ask }: { page: Stamped<PlanPage>; ask: PlanAsk }) {
  const [open, setOpen] = useState(false);
  return (
    <Card title="End the pull at once">
      <dl className={styles.stops}>
        {page.stopCriteria.map(({ id, label, limit, source }) => (
          <div key={id}>
            <dt>{label}</dt>
            <dd>
              {limit} {source !== USUAL && <small>{source}</small>}
            </dd>
          </div>
        ))}
      </dl>
      {page.stopCriteria.some(({ source }) => source === USUAL) && (
        <p className={styles.restsOn}>Where nothing else is said, a line rests on {USUAL}.</p>
      )}
      <p className={styles.aid}>{page.planningAid}</p>
      <ul className={styles.cautions}>
        {page.cautions.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
      <div>
        <Button onPress={() => setOpen(true)}>Change the lines</Button>
      </div>
      {open && <StopDialog page={page} ask={ask} onClose={() => setOpen(false)} />}
    </Card>
  );
}
