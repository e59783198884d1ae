import { useMutation, useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { type Ref, useEffect, useEffectEvent, useImperativeHandle, useState } from 'react';
import type { ColumnMapping, ReadFileReport } from '../../api/edge.ts';
import { importFile, readFile } from '../../api/files.ts';
import { bookChanged } from '../../api/query-client.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import styles from './add-pulls.module.css';
import { ColumnsTable } from './ColumnsTable.tsx';
import { DetailsFields } from './DetailsFields.tsx';
import { type FileDetails, importDetails, NO_DETAILS, rememberDetails, sameAs } from './file-details.ts';
import { RawRows } from './RawRows.tsx';

/** What the page asks of a file on it. */
export interface FileHandle {
  details: () => FileDetails;
  /** Adds it to the book: ids of its pulls, or `null` where it could not be added and the card says why. */
  add: () => Promise<string[] | null>;
}

export function FileCard({
  file,
  combinationId,
  detailsBefore,
  onReady,
  onRemove,
  handle,
}: {
  file: File;
  combinationId: string;
  detailsBefore: () => FileDetails | null;
  onReady: (ready: boolean) => void;
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
  const [details, setDetails] = useState<FileDetails>({ ...NO_DETAILS, combinationId });
  const [changedMapping, setMapping] = useState<ColumnMapping[] | null>(null);
  const [share, setShare] = useState(0);
  const mapping = changedMapping ?? report.data?.mapping ?? [];

  const add = useMutation({
    mutationFn: () => importFile(file, importDetails(details, mapping), setShare),
    onSuccess: async () => {
      rememberDetails(details);
      await bookChanged();
    },
  });

  useImperativeHandle(handle, () => ({
    details: () => details,
    add: () =>
      add.mutateAsync().then(
        ({ pulls }) => pulls.map((pull) => pull.id),
        () => null,
      ),
  }));

  const isReady = report.data !== undefined && report.data.known === null && !add.isSuccess;
  const tell = useEffectEvent(onReady);
  useEffect(() => {
    tell(isReady);
    return () => tell(false);
  }, [isReady]);

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
          <Remarks remarks={add.data.remarks} />
        </div>
      </Card>
    );
  }

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
                <ColumnsTable report={report.data} mapping={mapping} onMapping={setMapping} />
                <RawRows report={report.data} />
                <DetailsFields
                  fileName={file.name}
                  severalPulls={report.data.groups.length > 1}
                  details={details}
                  onDetails={setDetails}
                  onSameAsLast={() => {
                    const before = detailsBefore();
                    if (before !== null) setDetails(sameAs(before, details));
                  }}
                />
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

function Layout({ report }: { report: ReadFileReport }) {
  const { layout, rowCount, groups } = report;
  const delimiter = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'bar', ' ': 'space' }[
    layout.delimiter
  ];
  return (
    <p className={styles.facts}>
      {rowCount === 1 ? '1 row' : `${rowCount} rows`}, {report.columns.length} columns, parted by{' '}
      {delimiter ?? layout.delimiter}, decimal {layout.decimalMark === ',' ? 'comma' : 'point'},{' '}
      {layout.encoding}.
      {groups.length > 1 && ` ${groups.length} pulls in it: ${groups.map((group) => group.name).join(', ')}.`}
    </p>
  );
}

function PullLinks({ pulls }: { pulls: { id: string; name: string }[] }) {
  return pulls.map((pull, index) => (
    <span key={pull.id}>
      {index > 0 && ', '}
      <Link to="/pulls/$id" params={{ id: pull.id }}>
        {pull.name}
      </Link>
    </span>
  ));
}
