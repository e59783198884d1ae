import type { PublishAsk } from '../../api/publish.ts';
import { Button } from '../../parts/Button.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import type { Making } from './making.ts';
import { makingText } from './making-text.ts';
import styles from './publish.module.css';
import { useMake } from './use-make.ts';

/** Makes what is asked for and hands it to the browser to keep; what is under way can be cancelled, and what came of it is said. */
export function MakeButton({
  page,
  look,
  mayLeave,
  ask,
  text,
  name = text,
  isMain = false,
  isSmall = false,
  isDisabled = false,
}: Omit<Making, 'inShop'> & {
  ask: PublishAsk;
  text: string;
  /** For the ear, where `text` alone does not say what of; missing: it does. */
  name?: string;
  isMain?: boolean;
  isSmall?: boolean;
  isDisabled?: boolean;
}) {
  const { state, make, cancel } = useMake(page.id, look);
  const isRunning = state.kind === 'running';
  return (
    <div className={styles.make}>
      <Button
        look={isMain ? 'main' : 'plain'}
        small={isSmall}
        isDisabled={!isRunning && (isDisabled || !mayLeave)}
        aria-label={isRunning ? `Cancel: ${name}` : name}
        onPress={() => (isRunning ? cancel() : make(ask))}
      >
        {isRunning ? 'Cancel' : text}
      </Button>
      <div role="status" className={styles.state}>
        {isRunning && makingText(state.job)}
        {state.kind === 'ended' && (
          <>
            {state.job.file !== null && `Made: ${state.job.file.name}`}
            {state.job.state === 'cancelled' && ' Cancelled.'}
          </>
        )}
      </div>
      {state.kind === 'ended' && <Remarks remarks={state.job.remarks} />}
      {state.kind === 'failed' && <Trouble of={state.error} />}
    </div>
  );
}
