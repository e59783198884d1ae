import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { EngineRow } from '../../api/edge.ts';
import { enginesQuestion } from '../../api/questions.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import listStyles from '../../parts/list.module.css';
import { Trouble } from '../../parts/Trouble.tsx';
import styles from './combinations.module.css';
import { EngineDialog } from './EngineDialog.tsx';

/** The physical engines that the combinations are built on. */
export function Engines() {
  const engines = useQuery(enginesQuestion());
  const [open, setOpen] = useState<EngineRow | null>(null);
  if (engines.data?.length === 0) return null;
  return (
    <div className={styles.engines}>
      <Card title="Engines">
        <Trouble of={engines.error} />
        <ul className={styles.engineList}>
          {engines.data?.map((engine) => (
            <li key={engine.id}>
              <div>
                <p className={listStyles.name}>{engine.name}</p>
                <p className={listStyles.soft}>
                  Build {engine.buildRevision === '' ? 'not noted' : engine.buildRevision}
                  {engine.notes !== '' && ` · ${engine.notes}`}
                  {engine.invented && ' · invented data'}
                </p>
              </div>
              <Button small look="quiet" onPress={() => setOpen(engine)}>
                Change <span className="unseen">{engine.name}</span>
              </Button>
            </li>
          ))}
        </ul>
      </Card>
      {open !== null && <EngineDialog engine={open} onClose={() => setOpen(null)} />}
    </div>
  );
}
