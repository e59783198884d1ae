import { CURSOR_KEYS, WINDOW_KEYS } from '../keys/cursor-keys.ts';
import { KEY_LIST } from '../keys/key-list.ts';
import { PRESENT_KEYS } from '../keys/present-keys.ts';
import { Button } from '../parts/Button.tsx';
import { Dialog, DialogActions } from '../parts/Dialog.tsx';
import { Choice } from '../parts/Field.tsx';
import { KeyNames } from '../parts/KeyNames.tsx';
import { chooseForShop } from '../view/use-shop-settings.ts';
import { useViewChoices } from '../view/view-choices.ts';
import styles from './frame.module.css';

const GROUPS = [
  ...[...new Set(KEY_LIST.map((key) => key.where))].map((where) => ({
    where,
    keys: KEY_LIST.filter((key) => key.where === where) as readonly { shown: string; does: string }[],
  })),
  { where: 'On the cursor of a chart', keys: CURSOR_KEYS },
  { where: 'On an end of the window on a chart', keys: WINDOW_KEYS },
  { where: 'While presenting', keys: PRESENT_KEYS },
];

/** Every key and what it does, from the list that the shortcuts listen by. */
export function KeysOverlay({ open, onClose }: { open: boolean; onClose: () => void }) {
  const { letterKeys } = useViewChoices();
  return (
    <Dialog title="Keys" open={open} onClose={onClose}>
      <div className={styles.keys}>
        {GROUPS.map(({ where, keys }) => (
          <section key={where}>
            <h3>{where}</h3>
            <dl>
              {keys.map(({ shown, does }) => (
                <div key={shown} style={{ display: 'contents' }}>
                  <dt>
                    <KeyNames shown={shown} />
                  </dt>
                  <dd>{does}</dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
        <Choice
          kind="checkbox"
          checked={letterKeys}
          onChange={(event) => chooseForShop({ letterKeys: event.target.checked })}
          help="Off: only Tab, arrows, Enter and Escape work, for those who speak to their machine."
        >
          Single-letter keys
        </Choice>
      </div>
      <DialogActions>
        <Button onPress={onClose}>Close</Button>
      </DialogActions>
    </Dialog>
  );
}
