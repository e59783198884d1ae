import { PRESENT_KEYS, type PresentKeyId } from '../../keys/present-keys.ts';
import { Button, Key } from '../../parts/Button.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import styles from './present.module.css';

const SHOWN: readonly { id: PresentKeyId; text: string }[] = [
  { id: 'back', text: 'Back' },
  { id: 'next', text: 'Next' },
  { id: 'again', text: 'Again' },
  { id: 'dark', text: 'Dark' },
  { id: 'whole', text: 'Full screen' },
  { id: 'second', text: 'Second screen' },
  { id: 'keys', text: 'Keys' },
  { id: 'leave', text: 'Leave' },
];

const keyOf = (id: PresentKeyId) => PRESENT_KEYS.find((key) => key.id === id)!.shown;

/** What the keys do, for fingers and for who goes by Tab; only there while the pointer moves at the bottom, or they have the focus. */
export function Controls({
  isShown,
  of,
  onAct,
  leftOut,
}: {
  isShown: boolean;
  /** `2 / 8` */
  of: string;
  onAct: (id: PresentKeyId) => void;
  leftOut: readonly PresentKeyId[];
}) {
  const { letterKeys } = useViewChoices();
  return (
    <div className={styles.controls} data-shown={isShown} role="toolbar" aria-label="Presentation">
      <span className={styles.count}>{of}</span>
      {SHOWN.filter(({ id }) => !leftOut.includes(id)).map(({ id, text }) => (
        <Button key={id} small look="quiet" onPress={() => onAct(id)}>
          {text}
          {letterKeys && <Key>{keyOf(id)}</Key>}
        </Button>
      ))}
    </div>
  );
}
