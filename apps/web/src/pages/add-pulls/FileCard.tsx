import { useMutation, useQuery } from '@tanstack/react-query';
import { type Ref, useEffect, useEffectEvent, useImperativeHandle, useState } from 'react';
import type { ColumnMapping, LikeReport, ReadFileReport } from '../../api/edge.ts';
import { checkFile, importFile, readFile } from '../../api/files.ts';
import { bookChanged } from '../../api/query-client.ts';
import { BaselineNotice } from '../../parts/BaselineNotice.tsx';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { Findings } from '../../parts/Findings.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import styles from './add-pulls.module.css';
import { Checked } from './Checked.tsx';
import { ColumnsTable } from './ColumnsTable.tsx';
import { DetailsFields } from './DetailsFields.tsx';
import { Layout, Look, PullLinks } from './FileParts.tsx';
import { type FileDetails, importDetails, sameAs, startingDetails } from './file-details.ts';
import { KnownKind } from './KnownKind.tsx';
import { RawRows } from './RawRows.tsx';

/** What the page asks of a file on it. */
export interface FileHandle {
  details: () => FileDetails;
  /** Adds it to the book: ids of its pulls, or `null` where it could not be added and the card says why. */
  add: () => Promise<string[] | null>;
}

/** `known`: nothing is left to be asked. */
export type FileState = 'waiting' | 'ready' | 'known';

export function FileCard({
  file,
  like,
  own,
  combinationId,
  detailsBefore,
  onState,
  onRemove,
  handle,
}: {
  file: File;
  /** The pull it starts like; `null`: blank. */
  like: LikeReport | null;
  /** Its own from the start: name and time. */
  own: Partial<FileDetails>;
  combinationId: string;
  detailsBefore: () => FileDetails | null;
  onState: (state: FileState) => void;
  onRemove: () => void;
  handle: Ref<FileHandle>;
}) {
  const report = useQuery({
    queryKey: ['file', file.name, file.size, file.lastModified],
    queryFn: () => readFile(file),
    // A file that is being looked over is not read again under the person's hands.
    staleTime: Number.POSITIVE_INFINITY,
    retry: false,
  });
  // As the book was when the file came: a pull added meanwhile does not change a form under the hands.
  const [before] = useState(like);
  const [typed, setTyped] = useState<FileDetails | null>(null);
  const [changedMapping, setMapping] = useState<ColumnMapping[] | null>(null);
  const [readAnew, setReadAnew] = useState(false);
  const [share, setShare] = useState(0);
  const known = report.data?.knownLayout ?? null;
  const said = known?.taken ? known.said : undefined;
  const started = { ...startingDetails({ like: before?.fields ?? null, said, combinationId }), ...own };
  const details = typed ?? started;
  const mapping = changedMapping ?? (report.data ? startingMapping(report.data, readAnew) : []);

  const add = useMutation({
    mutationFn: () => importFile(file, importDetails(details, mapping), setShare),
    onSuccess: bookChanged,
  });

  const check = useMutation({ mutationFn: () => checkFile(file, importDetails(details, mapping)) });

  useImperativeHandle(handle, () => ({
    details: () => details,
    add: () =>
      add.mutateAsync().then(
        ({ pulls }) => pulls.map((pull) => pull.id),
        () => null,
      ),
  }));

  const isReady = report.data !== undefined && report.data.known === null && !add.isSuccess;
  const isKnown = known?.taken === true && !readAnew && changedMapping === null;
  const state: FileState = !isReady ? 'waiting' : isKnown ? 'known' : 'ready';
  const tell = useEffectEvent(onState);
  useEffect(() => {
    tell(state);
    return () => tell('waiting');
  }, [state]);

  if (add.data !== undefined) {
    return (
      <Card title={file.name}>
        <div className={styles.done} role="status">
          <p>
            {add.data.alreadyKnown
              ? 'This file is in the book already; nothing was added: '
              : 'In the book: '}
            <PullLinks pulls={add.data.pulls} />
          </p>
          <Findings findings={add.data.findings} />
          <Remarks remarks={add.data.remarks} />
        </div>
      </Card>
    );
  }

  const fields = report.data && (
    <DetailsFields
      fileName={file.name}
      severalPulls={report.data.groups.length > 1}
      details={details}
      before={before && { words: `in ${before.like.name}`, details: alike(before) }}
      onDetails={setTyped}
      onSameAsLast={() => {
        const last = detailsBefore();
        if (last !== null) setTyped(sameAs(last, details));
      }}
    />
  );
  return (
    <Card
      title={file.name}
      beside={
        <Button look="quiet" small onPress={onRemove} aria-label={`Leave ${file.name} out`}>
          Leave out
        </Button>
      }
    >
      <div className={styles.file}>
        {report.isPending && <p role="status">Reading the file …</p>}
        <Trouble of={report.error} />
        {report.data !== undefined && (
          <>
            {known !== null && (
              <KnownKind
                known={known}
                readAnew={readAnew}
                onReadAnew={(anew) => {
                  setReadAnew(anew);
                  setMapping(null);
                }}
              />
            )}
            <Layout report={report.data} />
            {report.data.known !== null && (
              <p role="status">
                This very file is in the book already:{' '}
                <PullLinks pulls={report.data.known.pullIds.map((id) => ({ id, name: 'its pull' }))} />. There
                is nothing to add.
              </p>
            )}
            <Remarks remarks={report.data.remarks} />
            {report.data.known === null && (
              <>
                <Look open={!known?.taken || readAnew} title="What the columns are">
                  <ColumnsTable
                    report={report.data}
                    mapping={mapping}
                    onMapping={setMapping}
                    confirmedFor={readAnew || !known?.taken ? null : known.name}
                  />
                  <RawRows report={report.data} />
                </Look>
                {details.combinationId !== '' && <BaselineNotice next={details.combinationId} />}
                {fields}
                <Checked check={check} />
              </>
            )}
          </>
        )}
        {add.isPending && (
          <div className={styles.acts} role="status">
            <progress value={share} aria-label={`Adding ${file.name}`} /> Adding …
          </div>
        )}
        <Trouble of={add.error} />
      </div>
    </Card>
  );
}

/** As remembered or guessed; read anew, as each column suggests by itself. */
function startingMapping({ columns, mapping }: ReadFileReport, readAnew: boolean): ColumnMapping[] {
  if (!readAnew) return mapping;
  return columns.map(({ index, count, guess }) => ({
    index,
    meaning: count === 0 ? null : guess.meaning,
    unit: count === 0 ? '' : guess.unit,
  }));
}

/** The fields in which two pulls may be alike; name, time and outcome are each pull's own. */
function alike({ fields }: LikeReport): Partial<FileDetails> {
  const { name: _, recordedAt: __, outcome: ___, ...shared } = fields;
  return shared;
}
