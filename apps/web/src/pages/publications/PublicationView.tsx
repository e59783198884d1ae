import type { ShownPublication } from '@pullbook/views/publish';
import { Link } from '@tanstack/react-router';
import { bytesText } from '../../parts/bytes-text.ts';
import { Facts } from '../../parts/Facts.tsx';
import { momentHere } from '../../view/moment-here.ts';
import { Links } from './Links.tsx';
import styles from './publications.module.css';

const KIND = { still: 'still', clip: 'clip', report: 'report', table: 'data', bundle: 'bundle' } as const;

/** One publication: what was said, what of it is no longer so, its files, the pulls it rests on, where it appeared. */
export function PublicationView({
  publication,
  withQuestion = false,
  saidNow = '',
  isSaidAbove = false,
}: {
  publication: ShownPublication;
  /** Where it does not stand on its trial's own page. */
  withQuestion?: boolean;
  /** The trial's sentence of now, where it stands beside: what was said alike is not said again. */
  saidNow?: string;
  /** One that says the same and holds alike stands over it. */
  isSaidAbove?: boolean;
}) {
  const { id, trialId, question, sentence, kinds, files, figures, stale, pulls, links, privateToo, at } =
    publication;
  return (
    <article className={styles.publication} aria-label={`Published ${momentHere(at)}: ${question}`}>
      <p className={styles.when}>
        <time dateTime={at}>{momentHere(at)}</time>
        <span>{kinds.map((kind) => KIND[kind]).join(', ')}</span>
        {stale.length > 0 && <strong className={styles.erratum}>Erratum</strong>}
        {privateToo && <span>not for publication</span>}
      </p>
      {withQuestion && (
        <p className={styles.question}>
          <Link to="/trials/$id/publish" params={{ id: trialId }}>
            {question}
          </Link>
        </p>
      )}
      {!isSaidAbove && sentence !== saidNow && <p className={styles.sentence}>{sentence}</p>}
      {!isSaidAbove && stale.length > 0 && (
        <table className={styles.stale}>
          <caption>Said, and no longer so</caption>
          <thead>
            <tr>
              <th scope="col">Figure</th>
              <th scope="col">Said</th>
              <th scope="col">Now</th>
            </tr>
          </thead>
          <tbody>
            {stale.map(({ label, said, now }) => (
              <tr key={label}>
                <th scope="row">{label}</th>
                <td>{said}</td>
                <td>{now ?? 'no such figure any more'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <Links id={id} links={links} />
      <details>
        <summary className={styles.summary}>
          {files.length === 1 ? 'One file' : `${files.length} files`},{' '}
          {pulls.length === 1 ? 'one pull' : `${pulls.length} pulls`}, the figures
        </summary>
        <div className={styles.more}>
          <Facts facts={figures} />
          <ul>
            {files.map(({ name, bytes }) => (
              <li key={name}>
                {name} <span className={styles.soft}>{bytesText(bytes)}</span>
              </li>
            ))}
          </ul>
          <p>
            Resting on{' '}
            {pulls.map((pull, place) => (
              <span key={pull.id}>
                {place > 0 && ', '}
                <Link to="/pulls/$id" params={{ id: pull.id }}>
                  {pull.name}
                </Link>
              </span>
            ))}
            .
          </p>
        </div>
      </details>
    </article>
  );
}
