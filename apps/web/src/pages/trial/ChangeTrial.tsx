import type { TrialPage } from '@pullbook/views';
import { useState } from 'react';
import { useKey } from '../../keys/use-key.ts';
import { Button } from '../../parts/Button.tsx';
import { ChangeTrialDialog } from './ChangeTrialDialog.tsx';

/** The way to another question, other names, another baseline. */
export function ChangeTrial({ page }: { page: TrialPage }) {
  const [open, setOpen] = useState(false);
  useKey('change', () => setOpen(true));
  return (
    <>
      <Button shortcut="change" onPress={() => setOpen(true)}>
        Change
      </Button>
      {open && <ChangeTrialDialog page={page} onClose={() => setOpen(false)} />}
    </>
  );
}
