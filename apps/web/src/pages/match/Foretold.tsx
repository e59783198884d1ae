import type { MatchBundle } from '@pullbook/views/match';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useKeepPrediction } from '../../api/match.ts';
import { trialQuestion } from '../../api/questions.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { PredictionLines } from '../trial/PredictionLines.tsx';
import styles from './match.module.css';

/** What the match foretells of a combination that was never pulled, to be kept; and what was kept beside what came out. */
export function Foretold({ trialId, bundle }: { trialId: string; bundle: MatchBundle }) {
  const trial = useQuery(trialQuestion(trialId, {}, useViewChoices()));
  const keep = useKeepPrediction(trialId);
  const [kept, setKept] = useState<{ key: string; of: MatchBundle; ids: string[] }[]>([]);
  if (trial.data === undefined) return <Trouble of={trial.error} />;
  const { lines, open } = trial.data.predictions;
  const foretold = open.filter(({ key }) => bundle.combinations.some((one) => one.key === key));
  // As long as it stands in the book and the match still says the same.
  const isKept = (key: string) =>
    kept.some((one) => one.key === key && one.of === bundle && lines.some(({ id }) => one.ids.includes(id)));
  if (lines.length === 0 && foretold.length === 0) return null;
  return (
    <Card title="Predictions">
      {lines.length > 0 && <PredictionLines lines={lines} />}
      <Trouble of={keep.error} />
      {foretold.length > 0 && (
        <div className={styles.ways}>
          {foretold.map(({ key, shortName }) => (
            <Button
              key={key}
              onPress={() => {
                if (keep.isPending || isKept(key)) return;
                keep.mutate(key, {
                  onSuccess: ({ predictions }) =>
                    setKept([...kept, { key, of: bundle, ids: predictions.map(({ id }) => id) }]),
                });
              }}
            >
              {isKept(key) ? 'Kept' : 'Keep this prediction'}: {key}, {shortName}
            </Button>
          ))}
        </div>
      )}
      {foretold.length > 0 && (
        <p className={styles.soft}>
          As the sheet stands, without what is tried here. Once kept it is not altered any more.
        </p>
      )}
    </Card>
  );
}
