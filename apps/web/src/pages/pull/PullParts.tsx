import type { PullPage } from '@pullbook/views';
import { Link } from '@tanstack/react-router';
import { apiAddress } from '../../api/request.ts';
import { DownloadLink } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import styles from './pull.module.css';

export function Lines({ title, lines }: { title: string; lines: string[] }) {
  if (lines.length === 0) return null;
  return (
    <Card title={title}>
      <ul className={styles.lines}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Card>
  );
}

export function InTrials({ trials }: { trials: PullPage['trials'] }) {
  if (trials.length === 0) return null;
  return (
    <Card title="In these trials">
      <ul className={styles.lines}>
        {trials.map(({ id, question }) => (
          <li key={id}>
            <Link to="/trials/$id" params={{ id }}>
              {question}
            </Link>
          </li>
        ))}
      </ul>
    </Card>
  );
}

/** The bytes as they came, with the hash that proves it. */
export function OriginalFile({ file }: { file: NonNullable<PullPage['file']> }) {
  return (
    <Card title="The original file">
      <div className={styles.lines}>
        <p>
          {file.name}
          <br />
          <span className={styles.hash}>SHA-256 {file.hash}</span>
        </p>
        <div>
          <DownloadLink small href={apiAddress(`/originals/${file.hash}`)}>
            Save the original
          </DownloadLink>
        </div>
      </div>
    </Card>
  );
}
