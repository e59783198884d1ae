import type { ShownReachFigure } from '@pullbook/views/reach';
import { Card } from '../../parts/Card.tsx';
import { SourceLine } from './ReachLinks.tsx';
import styles from './reach.module.css';

/** Figures with their bands, each with the word for what it rests on and where that can be seen. */
export function FiguresCard({
  title,
  of,
  under = [],
}: {
  title: string;
  of: ShownReachFigure[];
  under?: string[];
}) {
  if (of.length === 0) return null;
  return (
    <Card title={title}>
      <dl className={styles.figures}>
        {of.map(({ label, value, band, ground, from }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>
              <span className={styles.value}>{value}</span>
              {band !== '' && <span className={styles.band}>{band}</span>}
              <Origin ground={ground} from={from} />
            </dd>
          </div>
        ))}
      </dl>
      {under.length > 0 && (
        <ul className={styles.lines}>
          {under.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </Card>
  );
}

/** What a figure rests on, in a word; opened, where it can be seen. */
function Origin({ ground, from }: Pick<ShownReachFigure, 'ground' | 'from'>) {
  if (from.text === '' && from.links.length === 0) return <span className={styles.from}>{ground}</span>;
  if (ground === null) return <SourceLine from={from} />;
  return (
    <details className={styles.origin}>
      <summary>{ground}</summary>
      <SourceLine from={from} />
    </details>
  );
}
