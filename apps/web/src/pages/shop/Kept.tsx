import type { SettingsChange, useKeepSettings } from '../../api/shop.ts';
import { ActTrouble } from '../../parts/ActTrouble.tsx';
import styles from './shop.module.css';

/** What became of a change: kept, said politely to eye and ear; or why not. `onTheirs`: what was typed is let go. */
export function Kept({ act, onTheirs }: { act: ReturnType<typeof useKeepSettings>; onTheirs?: () => void }) {
  const takeTheirs = () => {
    onTheirs?.();
    act.reset();
  };
  return (
    <>
      <ActTrouble<SettingsChange> act={act} onDone={() => {}} onTheirs={takeTheirs} />
      <output className={styles.kept}>{act.isSuccess && !act.isPending ? 'Kept.' : ''}</output>
    </>
  );
}
