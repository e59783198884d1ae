import { TextField } from '../../parts/Field.tsx';
import type { FileDetails } from './file-details.ts';

type Occasion = Pick<FileDetails, 'setUp' | 'recordedAt' | 'cell'>;

/** Which fitting, when and where: the same for a file that comes in and for a pull that is amended. */
export function OccasionFields({
  occasion,
  onOccasion,
}: {
  occasion: Occasion;
  onOccasion: (change: Partial<Occasion>) => void;
}) {
  return (
    <>
      <TextField
        label="Set-up"
        help="Which fitting on the brake it was."
        placeholder="second fitting"
        value={occasion.setUp}
        onChange={(event) => onOccasion({ setUp: event.target.value })}
      />
      <TextField
        label="When"
        type="datetime-local"
        value={occasion.recordedAt}
        onChange={(event) => onOccasion({ recordedAt: event.target.value })}
      />
      <TextField
        label="Cell"
        value={occasion.cell}
        onChange={(event) => onOccasion({ cell: event.target.value })}
      />
    </>
  );
}
