import { TextField } from '../../parts/Field.tsx';
import type { FileDetails } from './file-details.ts';
import { Marked } from './Marked.tsx';

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
      <Marked name="setUp" value={occasion.setUp}>
        {(help) => (
          <TextField
            label="Set-up"
            help="Which fitting on the brake it was."
            placeholder="second fitting"
            value={occasion.setUp}
            onChange={(event) => onOccasion({ setUp: event.target.value })}
            {...help}
          />
        )}
      </Marked>
      <Marked name="cell" value={occasion.cell}>
        {(help) => (
          <TextField
            label="Cell"
            value={occasion.cell}
            onChange={(event) => onOccasion({ cell: event.target.value })}
            {...help}
          />
        )}
      </Marked>
      <Marked name="recordedAt" value={occasion.recordedAt}>
        {(help) => (
          <TextField
            label="When"
            type="datetime-local"
            value={occasion.recordedAt}
            onChange={(event) => onOccasion({ recordedAt: event.target.value })}
            {...help}
          />
        )}
      </Marked>
    </>
  );
}
