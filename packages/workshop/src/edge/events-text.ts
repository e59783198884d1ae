import type { PullEvent } from '@pullbook/core/pull';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { optionalQuantityFromText } from './quantity-text.ts';

/** Something that happened in the pull. `engineSpeed`: `5600 rpm`; missing: not tied to a speed. */
export interface EventText {
  engineSpeed?: string | null | undefined;
  text: string;
}

/** Events from what a person wrote; each that cannot be read has its own remark. */
export function eventsFromText(events: readonly EventText[]): Result<PullEvent[]> {
  const read = events.map(eventFromText);
  const remarks = read.flatMap((one) => (one.ok ? [] : one.remarks));
  if (remarks.length > 0) return refused(...(remarks as [Remark, ...Remark[]]));
  return accepted(read.flatMap((one) => (one.ok ? [one.value] : [])));
}

function eventFromText({ engineSpeed, text }: EventText): Result<PullEvent> {
  const speed = optionalQuantityFromText(engineSpeed, 'engineSpeed', 'Engine speed of the event');
  if (!speed.ok) return speed;
  if (text.trim() === '')
    return refused(remark('refusal', 'event-without-words', 'An event needs words: say what happened.'));
  if (speed.value !== null && !(speed.value > 0 && speed.value <= 30_000))
    return refused(
      remark(
        'refusal',
        'absurd-value',
        `Engine speed of the event: ${engineSpeed} cannot be. Accepted: more than 0, up to 30,000 r/min.`,
      ),
    );
  return accepted({ engineSpeedRpm: speed.value, text: text.trim() });
}
