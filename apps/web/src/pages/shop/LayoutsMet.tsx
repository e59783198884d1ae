import type { LayoutRow } from '@pullbook/workshop';
import { useMutation, useQuery } from '@tanstack/react-query';
import { bookChanged } from '../../api/query-client.ts';
import { sendJson } from '../../api/request.ts';
import { layoutsQuestion } from '../../api/shop.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import styles from './shop.module.css';

/** Kinds of file whose columns were confirmed once: the next of the kind asks nothing. */
export function LayoutsMet() {
  const layouts = useQuery(layoutsQuestion());
  const forget = useMutation({
    mutationFn: ({ fingerprint }: LayoutRow) =>
      sendJson<unknown>('DELETE', `/layouts/${encodeURIComponent(fingerprint)}`, {}),
    onSuccess: bookChanged,
  });
  return (
    <Card title="Kinds of file met before">
      <Trouble of={layouts.error ?? forget.error} />
      {layouts.data?.length === 0 && (
        <p className={styles.soft}>
          None yet. Once the columns of a file are confirmed, the next file of that kind asks nothing.
        </p>
      )}
      <ul>
        {layouts.data?.map((layout) => (
          <li key={layout.fingerprint} className={styles.row}>
            <div>
              <p className={styles.instrumentName}>
                {layout.name} <span className={styles.soft}>confirmed {layout.confirmedAt.slice(0, 10)}</span>
              </p>
              <p className={styles.soft}>
                {layout.columns.map(({ name, label }) => `${name}: ${label.toLowerCase()}`).join(' · ')}
              </p>
              {layout.said !== '' && <p className={styles.soft}>{layout.said}</p>}
            </div>
            <Button small onPress={() => forget.mutate(layout)} isDisabled={forget.isPending}>
              Forget <span className="unseen">{layout.name}</span>
            </Button>
          </li>
        ))}
      </ul>
    </Card>
  );
}
