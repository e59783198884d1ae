import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { combinationsQuestion } from '../../api/questions.ts';
import { Button } from '../../parts/Button.tsx';
import { Fields, SelectField, TextField } from '../../parts/Field.tsx';
import { NewCombinationDialog } from '../combination/NewCombinationDialog.tsx';
import styles from './add-pulls.module.css';
import { CarriedFields } from './CarriedFields.tsx';
import type { FileDetails } from './file-details.ts';
import { MoreFields } from './MoreFields.tsx';
import { OccasionFields } from './OccasionFields.tsx';
import { WeatherFields } from './WeatherFields.tsx';

/** What was on the brake, when, in which air, and what the file's figures already carry. */
export function DetailsFields({
  fileName,
  severalPulls,
  details,
  onDetails,
  onSameAsLast,
}: {
  fileName: string;
  severalPulls: boolean;
  details: FileDetails;
  onDetails: (details: FileDetails) => void;
  onSameAsLast: () => void;
}) {
  const combinations = useQuery(combinationsQuestion());
  const [making, setMaking] = useState(false);
  const set = (change: Partial<FileDetails>) => onDetails({ ...details, ...change });

  return (
    <>
      <div className={styles.part}>
        <h3>What was on the brake</h3>
        <div className={styles.acts}>
          <Button small onPress={onSameAsLast}>
            Same as the last
          </Button>
          <Button small look="quiet" onPress={() => setMaking(true)}>
            New combination from a sheet …
          </Button>
        </div>
        <Fields>
          <SelectField
            label="Combination"
            value={details.combinationId}
            onChange={(event) => set({ combinationId: event.target.value })}
            options={[
              { value: '', text: 'Not said yet' },
              ...(combinations.data ?? []).map((one) => ({
                value: one.id,
                text: `${one.name} · ${one.engineName}`,
              })),
            ]}
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
    </>
  );
}
