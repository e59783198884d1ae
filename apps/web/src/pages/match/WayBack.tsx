import { Link } from '@tanstack/react-router';
import type { MatchOf } from '../../api/match.ts';
import styles from './match.module.css';

/** To the trial or the combination that the match is of. */
export function WayBack({ of, title }: { of: MatchOf; title: string }) {
  const { id } = of;
  return (
    <p className={styles.question}>
      {of.kind === 'trial' ? (
        <Link to="/trials/$id" params={{ id }}>
          {title}
        </Link>
      ) : (
        <Link to="/combinations/$id" params={{ id }}>
          {title}
        </Link>
      )}
    </p>
  );
}
