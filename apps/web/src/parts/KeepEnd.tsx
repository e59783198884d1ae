import type { UseMutationResult } from '@tanstack/react-query';
import { ActTrouble } from './ActTrouble.tsx';
import { Button } from './Button.tsx';
import { DialogActions } from './Dialog.tsx';

/** How a form in a dialog ends: what came of the last try, keep or cancel. */
export function KeepEnd<Change extends { stamp?: string | undefined }>({
  act,
  onClose,
  keep = 'Keep',
}: {
  act: UseMutationResult<unknown, Error, Change>;
  onClose: () => void;
  keep?: string;
}) {
  return (
    <>
      <ActTrouble act={act} onDone={onClose} onTheirs={onClose} />
      <DialogActions>
        <Button look="main" type="submit" isDisabled={act.isPending}>
          {keep}
        </Button>
        <Button onPress={onClose}>Cancel</Button>
      </DialogActions>
    </>
  );
}
