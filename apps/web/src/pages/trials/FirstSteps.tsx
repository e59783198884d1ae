import { Link } from '@tanstack/react-router';
import { Panel } from '../../parts/Card.tsx';
import styles from './trials.module.css';

/** What a newcomer with an empty book does first. */
export function FirstSteps() {
  return (
    <Panel>
      <ol className={styles.steps}>
        <li>
          <div>
            <h2>
              <Link to="/add">Add the pulls you have</Link>
            </h2>
            <p>
              Drop the logged files here: text with columns, from any brake. Look over what each column is,
              say which combination was on the brake, and add them.
            </p>
          </div>
        </li>
        <li>
          <div>
            <h2>
              <Link to="/trials/new">Ask one question</Link>
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
            <p>The trial says what the change did to power, torque and boost. Publish makes a still of it.</p>
          </div>
        </li>
      </ol>
    </Panel>
  );
}
