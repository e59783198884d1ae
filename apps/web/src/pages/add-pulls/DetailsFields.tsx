import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Fields, TextField } from '../../parts/Field.tsx';
import { NewCombinationDialog } from '../combination/NewCombinationDialog.tsx';
import styles from './add-pulls.module.css';
import { CarriedFields } from './CarriedFields.tsx';
import { CombinationField } from './CombinationField.tsx';
import { type FileDetails, NO_DETAILS } from './file-details.ts';
import { type Before, BesideBefore } from './Marked.tsx';
import { MoreFields } from './MoreFields.tsx';
import { OccasionFields } from './OccasionFields.tsx';
import { WeatherFields } from './WeatherFields.tsx';

/** What was on the brake, when, in which air, and what the file's figures already carry. */
export function DetailsFields({
  fileName,
  severalPulls,
  details,
  before,
  onDetails,
  onSameAsLast,
}: {
  fileName: string;
  severalPulls: boolean;
  details: FileDetails;
  before: Before | null;
  onDetails: (details: FileDetails) => void;
  onSameAsLast: () => void;
}) {
  const [making, setMaking] = useState(false);
  const set = (change: Partial<FileDetails>) => onDetails({ ...details, ...change });

  return (
    <BesideBefore before={before}>
      <div className={styles.part}>
        <h3>What was on the brake</h3>
        <div className={styles.acts}>
          <Button small onPress={onSameAsLast}>
            Same as the last
          </Button>
          <Button small look="quiet" onPress={() => onDetails(NO_DETAILS)}>
            All blank
          </Button>
          <Button small look="quiet" onPress={() => setMaking(true)}>
            New combination from a sheet …
          </Button>
        </div>
        <Fields>
          <CombinationField
            combinationId={details.combinationId}
            onCombination={(combinationId) => set({ combinationId })}
          />
          {!severalPulls && (
            <TextField
              label="Name of the pull"
              placeholder={fileName.replace(/\.[^.]+$/, '')}
              value={details.name}
              onChange={(event) => set({ name: event.target.value })}
            />
          )}
          <OccasionFields occasion={details} onOccasion={set} />
        </Fields>
      </div>
      <WeatherFields weather={details} onWeather={set} />
      <CarriedFields carried={details} onCarried={set} />
      <MoreFields details={details} onDetails={set} severalPulls={severalPulls} />
      {making && (
        <NewCombinationDialog
          name={fileName.replace(/\.[^.]+$/, '')}
          onMade={({ id }) => set({ combinationId: id })}
          onClose={() => setMaking(false)}
        />
      )}
    </BesideBefore>
  );
}
