import type { Leaving } from '@pullbook/views/publish';
import { Link } from '@tanstack/react-router';
import { Card } from '../../parts/Card.tsx';
import { Choice } from '../../parts/Field.tsx';
import styles from './publish.module.css';

/** What is in all that is made here, what is left out, and what stands in the way of letting it go. */
export function Leaves({
  leaving: { heldBack, heldBackInBundle, pulls, leftOut, contents },
  privateToo,
  onPrivateToo,
}: {
  leaving: Leaving;
  privateToo: boolean;
  onPrivateToo: (privateToo: boolean) => void;
}) {
  const held = [...heldBack, ...heldBackInBundle];
  return (
    <Card title="What will leave the shop">
      <div className={styles.parts}>
        {held.length > 0 && (
          <div className={styles.held}>
            <p>
              {heldBack.length > 0
                ? 'Not everything in it is for everyone. What is made says “Not for publication” itself.'
                : 'A bundle would carry what is not for everyone; all else leaves it out.'}
            </p>
            <ul>
              {held.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
            <Choice
              kind="checkbox"
              checked={privateToo}
              onChange={(event) => onPrivateToo(event.target.checked)}
            >
              Let it leave the shop all the same
            </Choice>
          </div>
        )}
        {contents.length > 0 && (
          <ul className={styles.contents}>
            {contents.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        )}
        <div>
          <h3>{pulls.length === 1 ? 'One pull is in it' : `${pulls.length} pulls are in it`}</h3>
          <ul className={styles.pulls}>
            {pulls.map(({ id, name, audience }) => (
              <li key={id}>
                <Link to="/pulls/$id" params={{ id }}>
                  {name}
                </Link>
                <span className={styles.soft}>{audience}</span>
              </li>
            ))}
          </ul>
        </div>
        {leftOut.length > 0 && (
          <div>
            <h3>Left out, but for a bundle</h3>
            <ul className={styles.pulls}>
              {leftOut.map(({ id, name, why }) => (
                <li key={id}>
                  <Link to="/pulls/$id" params={{ id }}>
                    {name}
                  </Link>
                  <span className={styles.soft}>{why}</span>
                </li>
              ))}
            </ul>
          </div>
        )}
      </div>
    </Card>
  );
}
