import { useSearch } from '@tanstack/react-router';
import { useRef, useState } from 'react';
import { Button, ButtonLink } from '../../parts/Button.tsx';
import { Column, PageHead } from '../../parts/PageHead.tsx';
import styles from './add-pulls.module.css';
import { bringFiles, sendAway, useBroughtFiles } from './brought-files.ts';
import { FileCard, type FileHandle } from './FileCard.tsx';
import { type FileDetails, lastDetails } from './file-details.ts';
import { SummaryDialog } from './SummaryDialog.tsx';

interface Added {
  fileId: number;
  pullIds: string[];
}

/** Files become pulls: looked over, confirmed with one button, added each whole or not at all. */
export default function AddPullsPage() {
  const { combination } = useSearch({ from: '/add' });
  const files = useBroughtFiles();
  const chooser = useRef<HTMLInputElement>(null);
  const handles = useRef(new Map<number, FileHandle>());
  const [ready, setReady] = useState<ReadonlySet<number>>(new Set());
  const [added, setAdded] = useState<readonly Added[]>([]);
  const [adding, setAdding] = useState(false);
  const [withoutFile, setWithoutFile] = useState(false);

  const waiting = files.filter(({ id }) => ready.has(id) && !added.some((one) => one.fileId === id));
  const pullIds = added.flatMap((one) => one.pullIds);

  function setFileReady(id: number, isReady: boolean) {
    setReady((before) => {
      if (before.has(id) === isReady) return before;
      const next = new Set(before);
      if (isReady) next.add(id);
      else next.delete(id);
      return next;
    });
  }

  /** The details of the file above, or of the last one that was added. */
  function detailsBefore(id: number): FileDetails | null {
    const place = files.findIndex((one) => one.id === id);
    const above = files[place - 1];
    return (above === undefined ? null : handles.current.get(above.id)?.details()) ?? lastDetails();
  }

  async function addAll() {
    setAdding(true);
    for (const { id } of waiting) {
      const pulls = await handles.current.get(id)?.add();
      if (pulls) setAdded((before) => [...before, { fileId: id, pullIds: pulls }]);
    }
    setAdding(false);
  }

  return (
    <Column narrow>
      <PageHead title="Add pulls" />
      <div className={styles.invite}>
        <p>
          Drop logged files anywhere on this page. They are read here, on this computer; the originals are
          kept as they are.
        </p>
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
          <Button look={files.length === 0 ? 'main' : 'plain'} onPress={() => chooser.current?.click()}>
            Choose files
          </Button>
          <Button look="quiet" onPress={() => setWithoutFile(true)}>
            Only peaks are known …
          </Button>
        </div>
      </div>
      {files.map(({ id, file }) => (
        <FileCard
          key={id}
          file={file}
          combinationId={combination ?? ''}
          detailsBefore={() => detailsBefore(id)}
          onReady={(isReady) => setFileReady(id, isReady)}
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
            <Button look="main" isDisabled={adding} onPress={() => void addAll()}>
              {waiting.length === 1 ? 'Add this file' : `Add these ${waiting.length} files`}
            </Button>
          )}
          {pullIds.length > 0 && (
            <>
              <span role="status">
                {pullIds.length === 1 ? '1 pull is in the book.' : `${pullIds.length} pulls are in the book.`}
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
      {withoutFile && (
        <SummaryDialog combinationId={combination ?? ''} onClose={() => setWithoutFile(false)} />
      )}
    </Column>
  );
}
