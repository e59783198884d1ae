import { type FormEvent, useState } from 'react';
import { type RuleOfSubject, useSilence } from '../api/rules.ts';
import { Button } from './Button.tsx';
import { Dialog, DialogActions } from './Dialog.tsx';
import { TextArea } from './Field.tsx';
import { Trouble } from './Trouble.tsx';

/** Asks why a rule is known not to hold for a thing. */
export function SilenceDialog({ of, onClose }: { of: RuleOfSubject; onClose: () => void }) {
  const [reason, setReason] = useState('');
  const silence = useSilence(of);

  function submit(event: FormEvent) {
    event.preventDefault();
    silence.mutate({ reason }, { onSuccess: onClose });
  }

  const [kind = ''] = of.subject.split(' ');
  return (
    <Dialog title={`Silence ${of.ruleId}`} open onClose={onClose}>
      <form onSubmit={submit} style={{ display: 'contents' }}>
        <TextArea
          label="Why it does not hold here"
          help={`What you know of this ${kind} that the rule does not. What it says stays to be read, with your reason; it can speak again.`}
          rows={3}
          required
          value={reason}
          onChange={(event) => setReason(event.target.value)}
        />
        <Trouble of={silence.error} />
        <DialogActions>
          <Button look="main" type="submit" isDisabled={silence.isPending}>
            Silence it
          </Button>
          <Button onPress={onClose}>Cancel</Button>
        </DialogActions>
      </form>
    </Dialog>
  );
}
