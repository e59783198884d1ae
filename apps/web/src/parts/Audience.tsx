import type { ShownAudience } from '@pullbook/views';
import { useState } from 'react';
import { AudienceDialog } from './AudienceDialog.tsx';
import styles from './audience.module.css';
import { Button } from './Button.tsx';

/** Who may see a pull or a trial outside the book, and the way to say otherwise. */
export function Audience({
  kind,
  id,
  audience,
}: {
  kind: 'pull' | 'trial';
  id: string;
  audience: ShownAudience;
}) {
  const [open, setOpen] = useState(false);
  return (
    <p className={styles.line}>
      <span>May be seen by: {audience.words}.</span>
      <Button small look="quiet" onPress={() => setOpen(true)}>
        Change <span className="unseen">who may see it</span>
      </Button>
      {open && <AudienceDialog kind={kind} id={id} audience={audience} onClose={() => setOpen(false)} />}
    </p>
  );
}
