import { Fields, SelectField, TextArea, TextField } from '../../parts/Field.tsx';
import styles from './add-pulls.module.css';
import { EventsFields } from './EventsFields.tsx';
import { Marked } from './Marked.tsx';
import type { MoreDetails } from './more-details.ts';

type TextName = {
  [Name in keyof MoreDetails]: string extends MoreDetails[Name] ? Name : never;
}[keyof MoreDetails];

/**
 * Tune, places, inertia, what happened: all that may be said of a pull and seldom is. Folded, so that the quick way in
 * stays quick. `mends`: of a pull that is in the book already.
 */
export function MoreFields({
  details,
  onDetails,
  severalPulls = false,
  mends = false,
}: {
  details: MoreDetails;
  onDetails: (change: Partial<MoreDetails>) => void;
  severalPulls?: boolean;
  mends?: boolean;
}) {
  const text = (name: TextName, label: string, placeholder: string, help?: string) => (
    <Marked name={name} value={details[name]}>
      {(marked) => (
        <TextField
          label={label}
          placeholder={placeholder}
          value={details[name]}
          onChange={(event) => onDetails({ [name]: event.target.value })}
          {...(help === undefined ? {} : { help })}
          {...marked}
        />
      )}
    </Marked>
  );

  return (
    <details className={styles.more}>
      <summary>More about {severalPulls ? 'these pulls' : 'this pull'}</summary>
      <div className={styles.moreParts}>
        {severalPulls && <p className={styles.facts}>It is written to every pull of the file.</p>}
        <fieldset className={styles.part}>
          <legend className={styles.legend}>The tune</legend>
          <Fields>
            {text('sparkAdvance', 'Spark advance', '26 deg')}
            {text('targetLambda', 'Mixture aimed at', '0.80 lambda')}
            {text('jets', 'Jets', '82 primary, 88 secondary')}
            {text('fuelPressure', 'Fuel pressure', '300 kPa')}
            {text('coolerWater', 'Into the charge cooler', 'ice water, 3 °C')}
            {text('fuelBatch', 'Fuel batch', 'drum 4, opened 2 March')}
            {text('tuneNotes', 'Else about the tune', 'coldest plugs')}
          </Fields>
        </fieldset>
        <fieldset className={styles.part}>
          <legend className={styles.legend}>Where taps and probes sit</legend>
          <Fields>
            {text('boostTap', 'Boost read at', 'behind the throttle')}
            {text('chargeProbe', 'Charge probe', 'runner of cylinder 3')}
            {text('inletProbe', 'Inlet probe', 'in the air box')}
          </Fields>
        </fieldset>
        <fieldset className={styles.part}>
          <legend className={styles.legend}>Inertia</legend>
          <Fields>
            {text(
              'momentOfInertia',
              'Moment of inertia',
              '0.31 kg·m²',
              'Of all that turns at engine speed. A sweep hides the torque that speeds it up.',
            )}
            <SelectField
              label="In the figures already?"
              value={details.inertiaCompensated}
              options={[
                { value: '', text: 'Not said' },
                { value: 'yes', text: 'Yes, added back' },
                { value: 'no', text: 'No, as the brake read' },
                { value: 'unknown', text: 'Not known' },
              ]}
              onChange={(event) =>
                onDetails({
                  inertiaCompensated: event.target.value as MoreDetails['inertiaCompensated'],
                })
              }
            />
          </Fields>
        </fieldset>
        <fieldset className={styles.part}>
          <legend className={styles.legend}>In the cell</legend>
          <Fields>
            {text('operator', 'Operator', 'who ran the brake')}
            <SelectField
              label="How it ended"
              help="An aborted pull is kept: drift and soak need it."
              value={details.outcome}
              options={[
                { value: '', text: 'Not said: taken as completed' },
                { value: 'completed', text: 'Completed' },
                { value: 'aborted', text: 'Aborted in the cell' },
              ]}
              onChange={(event) => onDetails({ outcome: event.target.value as MoreDetails['outcome'] })}
            />
          </Fields>
          <EventsFields events={details.events} onEvents={(events) => onDetails({ events })} />
          <TextArea
            label="A note"
            rows={2}
            value={details.note}
            onChange={(event) => onDetails({ note: event.target.value })}
            {...(mends ? { help: 'It joins the notes that stand.' } : {})}
          />
        </fieldset>
      </div>
    </details>
  );
}
