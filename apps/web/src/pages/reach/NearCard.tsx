import type { ShownNear } from '@pullbook/views/reach';
import { Card } from '../../parts/Card.tsx';
import { ReachLinks } from './ReachLinks.tsx';
import styles from './reach.module.css';

/** What was pulled near the target, above and below it, and how far the chosen way is from each. */
export function NearCard({ near }: { near: ShownNear[] }) {
  if (near.length === 0) return null;
  const sides = [
    { title: 'Above the target', of: near.filter(({ side }) => side === 'above') },
    { title: 'Below it', of: near.filter(({ side }) => side === 'below') },
  ].filter(({ of }) => of.length > 0);
  return (
    <Card title="Nearest measured pulls">
      {sides.map(({ title, of }) => (
        <section key={title} className={styles.side} aria-label={title}>
          <h3 className={styles.small}>{title}</h3>
          <ul className={styles.near}>
            {of.map((one) => (
              <Near key={`${one.combinationId} ${one.measured}`} one={one} />
            ))}
          </ul>
        </section>
      ))}
    </Card>
  );
}

function Near({
  one: { name, measured, distance, isSameEngine, separates, lines, links },
}: {
  one: ShownNear;
}) {
  return (
    <li>
      <p className={styles.nearHead}>
        <span className={styles.title}>{name}</span>
        <span className={styles.value}>{measured}</span>
      </p>
      <p className={styles.from}>
        {[distance, isSameEngine ? '' : 'another engine'].filter((text) => text !== '').join(' · ')}{' '}
        <ReachLinks links={links} />
      </p>
      {separates !== '' &&
        (lines.length === 0 ? (
          <p className={styles.from}>{separates}</p>
        ) : (
          <details>
            <summary>{separates}</summary>
            <table className={styles.separates}>
              <thead>
                <tr>
                  <td />
                  <th scope="col">Pulled</th>
                  <th scope="col">This way</th>
                </tr>
              </thead>
              <tbody>
                {lines.map(({ label, pulled, rung }) => (
                  <tr key={label}>
                    <th scope="row">{label}</th>
                    <td>{pulled === '' ? '–' : pulled}</td>
                    <td>{rung === '' ? '–' : rung}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </details>
        ))}
    </li>
  );
}
