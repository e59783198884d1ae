import { Link } from '@tanstack/react-router';
import { shownKey } from '../../keys/use-key.ts';
import { Key } from '../../parts/Button.tsx';
import { Panel } from '../../parts/Card.tsx';
import styles from './trials.module.css';

/** What a newcomer with an empty book does first, by mouse or by key. */
export function FirstSteps() {
  return (
    <Panel>
      <ol className={styles.steps}>
        <li>
          <div>
            <h2>
              <Link to="/add">Add the pulls you have</Link> <Key>{shownKey('addPulls')}</Key>
            </h2>
            <p>
              Drop the logged files here: text with columns, from any brake. Look over what each column is,
              say which combination was on the brake, and add them. A pull that you only remember goes in by
              its peaks.
            </p>
          </div>
        </li>
        <li>
          <div>
            <h2>
              <Link to="/trials/new">Ask one question</Link> <Key>{shownKey('startTrial')}</Key>
            </h2>
            <p>
              “What does this cam add at the same pulley?” Name the baseline, name what was changed, tick
              their pulls.
            </p>
          </div>
        </li>
        <li>
          <div>
            <h2>Read the answer, and show it</h2>
            <p>
              The trial says what the change did to power, torque and boost, on which pulls it rests, and what
              to know before believing it. Publish makes pictures, a clip and a report of it.
            </p>
          </div>
        </li>
      </ol>
      <p className={styles.firstLook}>
        To look round first: <code>pullbook serve --demo --open</code> opens a book of invented pulls beside
        this one. Every key is listed under <Key>{shownKey('keys')}</Key>
        <span className="unseen">the question mark</span>.
      </p>
    </Panel>
  );
}
