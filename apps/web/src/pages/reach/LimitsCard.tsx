import type { ShownLimit } from '@pullbook/views/reach';
import { Card } from '../../parts/Card.tsx';
import figures from '../../parts/figures.module.css';
import findings from '../../parts/findings.module.css';
import { SourceLine } from './ReachLinks.tsx';
import styles from './reach.module.css';

const STATE = { within: 'Within', near: 'Near', passed: 'Passed' } as const;

/** Every limit that was looked at, with what is left of it, what it rests on, and what to do. */
export function LimitsCard({ limits }: { limits: ShownLimit[] }) {
  if (limits.length === 0) return null;
  return (
    <Card title="Limits">
      <table className={`${figures.figures} ${styles.limits}`}>
        <thead>
          <tr>
            <td />
            <th scope="col">This way</th>
            <th scope="col">Limit</th>
            <th scope="col">Left</th>
            <th scope="col" className={styles.at}>
              At
            </th>
          </tr>
        </thead>
        <tbody>
          {limits.map((limit) => (
            <LimitRow key={`${limit.id} ${limit.threshold} ${limit.at}`} limit={limit} />
          ))}
        </tbody>
      </table>
    </Card>
  );
}

/** The figures in a row, and under it what they mean and rest on, as wide as the table. */
function LimitRow({
  limit: { label, value, threshold, left, at, kind, state, text, restsOn, from },
}: {
  limit: ShownLimit;
}) {
  return (
    <>
      <tr>
        <th scope="row">{label}</th>
        <td>{value}</td>
        <td>{threshold}</td>
        <td>{left}</td>
        <td className={styles.at}>{at === '' ? '–' : at}</td>
      </tr>
      <tr className={styles.under}>
        <td colSpan={5} className={styles.meaning}>
          <p className={styles.advice}>{text}</p>
          <span className={styles.kind}>
            <span className={state === 'within' ? findings.note : findings.caution}>{STATE[state]}</span>{' '}
            {kind} · {restsOn} · limit:{' '}
          </span>
          <SourceLine from={from} />
        </td>
      </tr>
    </>
  );
}
