import { lazy, Suspense } from 'react';
import { clipQuestion, useNotePublication } from '../../api/publish.ts';
import { queryClient } from '../../api/query-client.ts';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { ClipByProgram } from './ClipByProgram.tsx';
import type { Making } from './making.ts';
import styles from './publish.module.css';

const ClipMaker = lazy(() =>
  import('../../clip/ClipMaker.tsx').then((part) => ({ default: part.ClipMaker })),
);

/** The clip as a file: made in the page, or by the program where the page cannot. */
export function ClipFile(making: Making) {
  const { page, look, mayLeave } = making;
  const view = useViewChoices();
  const note = useNotePublication(page.id, look, view);
  return (
    <div className={styles.clipFile}>
      <h3>The file</h3>
      <Suspense fallback={<Waiting />}>
        <ClipMaker
          // As it leaves the shop, and asked for now: whether it may is the server's to say.
          askClip={() => queryClient.fetchQuery({ ...clipQuestion(page.id, look, view), staleTime: 0 })}
          fileName={`${page.stem}-clip`}
          isDisabled={!mayLeave}
          onMade={(file) => note.mutate({ kind: 'clip', ...file })}
        />
      </Suspense>
      <Trouble of={note.error} />
      <ClipByProgram {...making} />
    </div>
  );
}
