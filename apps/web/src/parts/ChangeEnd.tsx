import type { UseMutationResult } from '@tanstack/react-query';
import { ActTrouble } from './ActTrouble.tsx';
import { Button } from './Button.tsx';
import { DialogActions } from './Dialog.tsx';
import { TextField } from './Field.tsx';

/** How a form ends that changes what is in the book: the reason, what came of the last try, keep or cancel. */
export function ChangeEnd<Change extends { stamp?: string | undefined }>({
  reason,
  onReason,
  act,
  onClose,
}: {
  reason: string;
  onReason: (reason: string) => void;
  act: UseMutationResult<unknown, Error, Change>;
  onClose: () => void;
}) {
  return (
    <>
      <TextField
        label="Reason"
        help="It stands in the history."
        required
        value={reason}
        onChange={(event) => onReason(event.target.value)}
      />
      <ActTrouble act={act} onDone={onClose} onTheirs={onClose} />
      <DialogActions>
        <Button look="main" type="submit" isDisabled={act.isPending}>
          Keep the change
        </Button>
        <Button onPress={onClose}>Cancel</Button>
      </DialogActions>
    </>
  );
}
