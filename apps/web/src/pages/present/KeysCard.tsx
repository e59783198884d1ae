import { PRESENT_KEYS } from '../../keys/present-keys.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog, DialogActions } from '../../parts/Dialog.tsx';
import { KeyNames } from '../../parts/KeyNames.tsx';
import styles from './present.module.css';

/** The keys of the presentation, from the list that the page hears by. */
export function KeysCard({ open, onClose }: { open: boolean; onClose: () => void }) {
  return (
    <Dialog title="Keys while presenting" open={open} onClose={onClose}>
      <dl className={styles.keyList}>
        {PRESENT_KEYS.map(({ id, shown, does }) => (
          <div key={id}>
            <dt>
              <KeyNames shown={shown} />
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
      <p className={styles.keyHelp}>
        By touch: tap on the right or swipe for the next step, on the left for the one before; rest a finger
        on the curves for the figures.
      </p>
      <DialogActions>
        <Button onPress={onClose}>Close</Button>
      </DialogActions>
    </Dialog>
  );
}
