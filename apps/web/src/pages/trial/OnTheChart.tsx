import type { TrialPage } from '@pullbook/views';
import { Button } from '../../parts/Button.tsx';
import { CombinationKey } from '../../parts/CombinationKey.tsx';
import styles from './trial.module.css';
import type { HiddenOfTrial } from './use-hidden.ts';

/** Which combinations the chart shows, and that the answer does not care. */
export function OnTheChart({ page, hidden }: { page: TrialPage; hidden: HiddenOfTrial }) {
  return (
    <div className={styles.onTheChart}>
      <fieldset className={styles.toggles}>
        <legend className="unseen">Combinations on the chart</legend>
        {page.combinations.map(({ key, shortName, combination }) => {
          const isHidden = hidden.combinations.has(combination);
          return (
            <Button
              key={key}
              small
              look="quiet"
              aria-label={`${key} ${isHidden ? 'Show' : 'Hide'}: ${shortName}, on the chart`}
              onPress={() => hidden.toggle(key)}
            >
              <CombinationKey text={key} combination={combination} /> {isHidden ? 'Show' : 'Hide'}
            </Button>
          );
        })}
      </fieldset>
      {hidden.text !== '' && (
        <p role="status" className={styles.hidden}>
          Hidden on the chart: {hidden.text}. The answer counts them all the same.{' '}
          <Button small look="quiet" onPress={hidden.showAll}>
            Show all
          </Button>
        </p>
      )}
    </div>
  );
}
