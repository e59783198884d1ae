import type { UseMutationResult } from '@tanstack/react-query';
import { TextField } from './Field.tsx';
import { KeepEnd } from './KeepEnd.tsx';

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
      <KeepEnd act={act} onClose={onClose} keep="Keep the change" />
    </>
  );
}
