import type { MatchPage } from '@pullbook/views/match';
import findings from '../../parts/findings.module.css';
import styles from './match.module.css';

/** What can hurt somebody stands at the top, beside the gain that tempts; the same is among the findings. */
export function Alarms({ of }: { of: MatchPage['findings'] }) {
  const lines = of.flatMap(({ ruleId, level, silent, lines: found }) =>
    level === 'alarm' && !silent
      ? found.flatMap((line) =>
          line.level === 'alarm' && line.silenced === null ? [{ ruleId, ...line }] : [],
        )
      : [],
  );
  return (
    <div role="status" aria-label="Alarms">
      {lines.length > 0 && (
        <ul className={styles.alarms}>
          {lines.map(({ ruleId, subject, about, text }) => (
            <li key={`${ruleId} ${subject} ${text}`}>
              <span className={findings.alarm}>Alarm</span> {about !== '' && <strong>{about}: </strong>}
              {text}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
