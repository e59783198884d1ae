import type { TrialPage } from '@pullbook/views';
import { useState } from 'react';
import { useKey } from '../../keys/use-key.ts';
import { Button } from '../../parts/Button.tsx';
import type { TrialSearch } from '../../search.ts';
import { PublishDialog } from './PublishDialog.tsx';

/** The way from the answer to a picture of it; there is none to publish before there is a chart. */
export function Publish({ page, look }: { page: TrialPage; look: TrialSearch }) {
  const [open, setOpen] = useState(false);
  const hasPicture = page.chart !== null;
  useKey('publish', () => setOpen(hasPicture));
  return (
    <>
      <Button look="main" shortcut="publish" isDisabled={!hasPicture} onPress={() => setOpen(true)}>
        Publish
      </Button>
      {open && <PublishDialog page={page} look={look} onClose={() => setOpen(false)} />}
    </>
  );
}
