import { useRef } from 'react';
import { Button } from '../../parts/Button.tsx';
import { TextField } from '../../parts/Field.tsx';
import styles from './add-pulls.module.css';
import type { TypedEvent } from './more-details.ts';

/** What happened at which speed: knock, a misfire, a lifted throttle. */
export function EventsFields({
  events,
  onEvents,
}: {
  events: readonly TypedEvent[];
  onEvents: (events: readonly TypedEvent[]) => void;
}) {
  const more = useRef<HTMLButtonElement>(null);
  return (
    <>
      {events.map((event, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an event being typed has no other name than its place
        <fieldset key={index} className={styles.event}>
          <legend className="unseen">Event {index + 1}</legend>
          <TextField
            label="At"
            placeholder="5600 rpm"
            value={event.engineSpeed}
            onChange={(change) =>
              onEvents(events.with(index, { ...event, engineSpeed: change.target.value }))
            }
            autoFocus
          />
          <TextField
            label="What happened"
            placeholder="throttle lifted"
            required={event.engineSpeed.trim() !== ''}
            value={event.text}
            onChange={(change) => onEvents(events.with(index, { ...event, text: change.target.value }))}
          />
          <Button
            look="quiet"
            aria-label={`Remove event ${index + 1}`}
            onPress={() => {
              onEvents(events.toSpliced(index, 1));
              more.current?.focus();
            }}
          >
            Remove
          </Button>
        </fieldset>
      ))}
      <div className={styles.acts}>
        <Button ref={more} small onPress={() => onEvents([...events, { engineSpeed: '', text: '' }])}>
          {events.length === 0 ? 'Something happened at a speed' : 'One more event'}
        </Button>
      </div>
    </>
  );
}
