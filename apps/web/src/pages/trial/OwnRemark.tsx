import type { TrialPage } from '@pullbook/views';
import { useState } from 'react';
import { stampOnPage } from '../../api/query-client.ts';
import { ActTrouble } from '../../parts/ActTrouble.tsx';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { Dialog, DialogActions } from '../../parts/Dialog.tsx';
import { TextArea } from '../../parts/Field.tsx';
import { useChangeTrial } from './change-trial.ts';
import styles from './trial.module.css';

/** The person's own words under the answer. */
export function OwnRemark({ page }: { page: TrialPage }) {
  const [open, setOpen] = useState(false);
  const [text, setText] = useState(page.ownRemark);
  const [looked, setLooked] = useState<string>();
  const change = useChangeTrial(page.id);
  return (
    <Card title="Your remark">
      {page.ownRemark !== '' && <p className={styles.own}>{page.ownRemark}</p>}
      <div className={styles.foot}>
        <Button
          small
          onPress={() => {
            setText(page.ownRemark);
            setLooked(stampOnPage('trial', page.id));
            setOpen(true);
          }}
        >
          {page.ownRemark === '' ? 'Write a remark' : 'Change the remark'}
        </Button>
      </div>
      <Dialog title="Your remark" open={open} onClose={() => setOpen(false)}>
        <TextArea
          label="In your own words"
          rows={6}
          value={text}
          onChange={(event) => setText(event.target.value)}
          autoFocus
        />
        <ActTrouble act={change} onDone={() => setOpen(false)} onTheirs={() => setOpen(false)} />
        <DialogActions>
          <Button
            look="main"
            isDisabled={change.isPending}
            onPress={() =>
              change.mutate(
                { remark: text.trim(), reason: 'own remark written', stamp: looked },
                { onSuccess: () => setOpen(false) },
              )
            }
          >
            Keep the remark
          </Button>
          <Button onPress={() => setOpen(false)}>Cancel</Button>
        </DialogActions>
      </Dialog>
    </Card>
  );
}
