import { Dialog } from '../../parts/Dialog.tsx';
import { blankSheet } from './blank-sheet.ts';
import { CombinationForm } from './CombinationForm.tsx';

/** A combination made on the spot, where one is asked for. */
export function NewCombinationDialog({
  name,
  onMade,
  onClose,
}: {
  /** Proposed: the name of the file it came with. */
  name: string;
  onMade: (combination: { id: string; name: string }) => void;
  onClose: () => void;
}) {
  return (
    <Dialog title="A new combination" open onClose={onClose} wide>
      <CombinationForm
        sheetText={blankSheet(name)}
        engineName=""
        madeFrom={null}
        onMade={(made) => {
          onMade(made);
          onClose();
        }}
        onCancel={onClose}
      />
    </Dialog>
  );
}
