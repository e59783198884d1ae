import { useQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { type FormEvent, useEffect, useRef, useState } from 'react';
import { likeQuestion } from '../../api/questions.ts';
import { useKey } from '../../keys/use-key.ts';
import { Button, ButtonLink } from '../../parts/Button.tsx';
import { Column, PageHead } from '../../parts/PageHead.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import styles from './add-pulls.module.css';
import { bringFiles, sendAway, useBroughtFiles } from './brought-files.ts';
import { FileCard, type FileHandle, type FileState } from './FileCard.tsx';
import { type FileDetails, nameAfter, startingDetails, thisMinute } from './file-details.ts';
import { SummaryDialog } from './SummaryDialog.tsx';

interface Added {
  fileId: number;
  pullIds: string[];
}

/** Files become pulls: looked over, confirmed with one button, added each whole or not at all. */
export default function AddPullsPage() {
  const { combination = '', like: likeAsked } = useSearch({ from: '/add' });
  const like = useQuery(likeQuestion(likeAsked ?? 'last', useViewChoices()));
  const files = useBroughtFiles();
  const chooser = useRef<HTMLInputElement>(null);
  const adder = useRef<HTMLButtonElement>(null);
  const handles = useRef(new Map<number, FileHandle>());
  const [states, setStates] = useState<ReadonlyMap<number, FileState>>(new Map());
  const [added, setAdded] = useState<readonly Added[]>([]);
  const [adding, setAdding] = useState(false);
  const [withoutFile, setWithoutFile] = useState(false);

  const isAdded = (id: number) => added.some((one) => one.fileId === id);
  const waiting = files.filter(({ id }) => (states.get(id) ?? 'waiting') !== 'waiting' && !isAdded(id));
  const allKnown = waiting.every(({ id }) => states.get(id) === 'known');
  const isReading = files.some(({ id }) => !states.has(id));
  const pullIds = added.flatMap((one) => one.pullIds);
  // Asked for by a key or a link, the pull was made just now; files that simply fell here may be of any day.
  const isNew = likeAsked !== undefined;

  function setState(id: number, state: FileState) {
    setStates((before) => (before.get(id) === state ? before : new Map(before).set(id, state)));
  }

  /** The details of the file above, else those of the pull added last. */
  function detailsBefore(id: number): FileDetails | null {
    const above = files[files.findIndex((one) => one.id === id) - 1];
    const last = like.data ? startingDetails({ like: like.data.fields, combinationId: '' }) : null;
    return (above === undefined ? null : handles.current.get(above.id)?.details()) ?? last;
  }

  async function addAll(event: FormEvent) {
    event.preventDefault();
    // A form in a dialog opened from here tells this one too.
    if (event.target !== event.currentTarget || adding) return;
    setAdding(true);
    for (const { id } of waiting) {
      const pulls = await handles.current.get(id)?.add();
      if (pulls) setAdded((before) => [...before, { fileId: id, pullIds: pulls }]);
    }
    setAdding(false);
  }

  useKey('next', () => chooser.current?.click());
  useEffect(() => {
    // With nothing left to be asked, Enter keeps: unless the person is at something already.
    const at = document.activeElement;
    if (
      waiting.length > 0 &&
      allKnown &&
      !isReading &&
      (at === null || at === document.body || at.id === CHOOSE)
    )
      adder.current?.focus();
  }, [waiting.length, allKnown, isReading]);

  return (
    <Column narrow>
      <PageHead title="Add pulls" />
      <div className={styles.invite}>
        <p>
          Drop logged files anywhere on this page. They are read here, on this computer; the originals are
          kept as they are.
        </p>
        {like.data && (
          <p>
            What is not in a file is filled in as in {like.data.like.name}, the{' '}
            {isNew ? 'pull you chose' : 'pull added last'}. What you change is marked.
          </p>
        )}
        <input
          ref={chooser}
          type="file"
          multiple
          hidden
          aria-label="Logged files"
          onChange={(event) => {
            bringFiles([...(event.target.files ?? [])]);
            event.target.value = '';
          }}
        />
        <div className={styles.acts}>
          <Button
            id={CHOOSE}
            look={files.length === 0 ? 'main' : 'plain'}
            autoFocus={isNew}
            onPress={() => chooser.current?.click()}
          >
            Choose files
          </Button>
          <Button look="quiet" onPress={() => setWithoutFile(true)}>
            Only peaks are known …
          </Button>
          <ButtonLink look="quiet" to="/open">
            Open a bundle
          </ButtonLink>
        </div>
        <Trouble of={like.error} />
        {like.data && <Remarks remarks={like.data.remarks} />}
      </div>
      <form className={styles.form} onSubmit={(event) => void addAll(event)}>
        {!like.isPending &&
          files.map(({ id, file }, place) => (
            <FileCard
              key={id}
              file={file}
              like={like.data ?? null}
              own={ownDetails(isNew ? (like.data?.fields.name ?? '') : '', place)}
              combinationId={combination}
              detailsBefore={() => detailsBefore(id)}
              onState={(state) => setState(id, state)}
              onRemove={() => {
                sendAway(id);
                handles.current.delete(id);
              }}
              handle={(handle) => {
                if (handle === null) handles.current.delete(id);
                else handles.current.set(id, handle);
              }}
            />
          ))}
        {(waiting.length > 0 || pullIds.length > 0) && (
          <div className={styles.foot}>
            {waiting.length > 0 && (
              <Button ref={adder} type="submit" look="main" isDisabled={adding}>
                {addWords(waiting.length, allKnown)}
              </Button>
            )}
            {pullIds.length > 0 && (
              <>
                <span role="status">
                  {pullIds.length === 1
                    ? '1 pull is in the book.'
                    : `${pullIds.length} pulls are in the book.`}
                </span>
                <ButtonLink
                  look={waiting.length === 0 ? 'main' : 'plain'}
                  to="/trials/new"
                  search={{ pulls: pullIds.join(',') }}
                >
                  {pullIds.length === 1 ? 'Start a trial with it' : 'Compare them'}
                </ButtonLink>
              </>
            )}
          </div>
        )}
      </form>
      {withoutFile && !like.isPending && (
        <SummaryDialog
          combinationId={combination}
          like={like.data ?? null}
          isNew={isNew}
          onClose={() => setWithoutFile(false)}
        />
      )}
    </Column>
  );
}

const CHOOSE = 'choose-files';

/** The name and time of a pull that was made just now; '' as name: it is not, and has neither yet. */
function ownDetails(firstName: string, place: number): Pick<FileDetails, 'name' | 'recordedAt'> {
  if (firstName === '') return { name: '', recordedAt: '' };
  return { name: nameAfter(firstName, place), recordedAt: thisMinute(new Date()) };
}

function addWords(count: number, allKnown: boolean): string {
  if (allKnown) return count === 1 ? 'Keep it' : `Keep all ${count}`;
  return count === 1 ? 'Add this file' : `Add these ${count} files`;
}
