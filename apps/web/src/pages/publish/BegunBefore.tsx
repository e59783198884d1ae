import { useQuery } from '@tanstack/react-query';
import {
  openJobsQuestion,
  type PublishJob,
  publishedFileAddress,
  stopPublishing,
} from '../../api/publish.ts';
import { Button, DownloadLink } from '../../parts/Button.tsx';
import { bytesText } from '../../parts/bytes-text.ts';
import { Card } from '../../parts/Card.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { isFollowedHere } from './followed-jobs.ts';
import { makingText } from './making-text.ts';
import styles from './publish.module.css';

const KIND = { still: 'stills', clip: 'clip', report: 'report', table: 'data', bundle: 'bundle' } as const;

/** What was begun before this page was left or loaded again: how far it is, and its file, which nobody has fetched yet. */
export function BegunBefore({ id }: { id: string }) {
  const asked = useQuery(openJobsQuestion(id));
  const jobs = (asked.data ?? []).filter((job) => !isFollowedHere(job.id));
  if (jobs.length === 0) return null;
  return (
    <Card title="Begun before">
      <ul className={styles.parts}>
        {jobs.map((job) => (
          <Begun key={job.id} job={job} onStopped={() => void asked.refetch()} />
        ))}
      </ul>
    </Card>
  );
}

function Begun({ job, onStopped }: { job: PublishJob; onStopped: () => void }) {
  const kinds = job.kinds.map((kind) => KIND[kind]).join(', ');
  const what = kinds.charAt(0).toUpperCase() + kinds.slice(1);
  const isMaking = job.state === 'making';
  return (
    <li className={styles.begun}>
      <div>
        <p>
          <strong>{what}</strong>
          {job.file !== null && `: ${job.file.name}, ${bytesText(job.file.bytes)}`}
        </p>
        <p role="status" className={styles.soft}>
          {isMaking ? makingText(job) : job.file !== null ? 'Made, and not saved yet.' : ''}
        </p>
        <Remarks remarks={job.remarks} />
      </div>
      <div className={styles.acts}>
        {job.file !== null && <DownloadLink href={publishedFileAddress(job.id)}>Save it</DownloadLink>}
        <Button
          look="quiet"
          aria-label={isMaking ? `Cancel: ${what}` : `Put away: ${what}`}
          onPress={() => void stopPublishing(job.id).then(onStopped, onStopped)}
        >
          {isMaking ? 'Cancel' : 'Put away'}
        </Button>
      </div>
    </li>
  );
}
