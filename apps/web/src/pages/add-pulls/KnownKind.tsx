import type { KnownLayoutReport } from '../../api/edge.ts';
import { Button } from '../../parts/Button.tsx';
import styles from './add-pulls.module.css';

/** That this kind of file was confirmed before, and is read so; or why it is asked about again. */
export function KnownKind({
  known,
  readAnew,
  onReadAnew,
}: {
  known: KnownLayoutReport;
  readAnew: boolean;
  onReadAnew: (anew: boolean) => void;
}) {
  const when = new Date(known.confirmedAt).toLocaleDateString('en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
  });
  if (!known.taken) return null;
  return (
    <div className={styles.known} role="status">
      <p>
        {readAnew ? 'Read anew, as the file itself suggests. Confirmed before, on ' : 'Read as confirmed on '}
        {when} for {known.name}
        {readAnew ? ', it was read otherwise.' : '. Nothing is left to be asked.'}
      </p>
      <Button small look="quiet" onPress={() => onReadAnew(!readAnew)}>
        {readAnew ? 'As confirmed before' : 'Read it anew'}
      </Button>
    </div>
  );
}
