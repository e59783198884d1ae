import { ApiTrouble } from '../api/request.ts';
import { Remarks } from './Remarks.tsx';
import styles from './trouble.module.css';

/** Something could not be done: what, and what to do. Read out at once. */
export function Trouble({ of, goTo }: { of: Error | null; goTo?: (line: number) => void }) {
  if (of === null) return null;
  const remarks = of instanceof ApiTrouble ? of.remarks : [];
  // Where a remark says the same with its place, once is enough.
  const saidByRemark = remarks.some((one) => one.text === of.message);
  return (
    <div className={styles.trouble} role="alert">
      {!saidByRemark && <p className={styles.title}>{of.message}</p>}
      <Remarks remarks={remarks} {...(goTo === undefined ? {} : { goTo })} />
    </div>
  );
}

/** While the server is asked. Local answers come at once, so it is only words. */
export function Waiting() {
  return (
    <p className={styles.waiting} role="status">
      Reading the book …
    </p>
  );
}
