import type { PullRow } from '@pullbook/views';
import { Choice } from './Field.tsx';

/** Pulls to tick, each with its day, its peak and what is odd about it. */
export function PullTicks({
  legend,
  pulls,
  ticked,
  onTick,
}: {
  legend: string;
  pulls: readonly PullRow[];
  ticked: (pullId: string) => boolean;
  onTick: (pullId: string, ticked: boolean) => void;
}) {
  return (
    <fieldset>
      <legend className="unseen">{legend}</legend>
      {pulls.map((pull) => (
        <Choice
          key={pull.id}
          kind="checkbox"
          checked={ticked(pull.id)}
          onChange={(event) => onTick(pull.id, event.target.checked)}
          help={[
            pull.recordedAt,
            pull.peakPower,
            ...pull.chips.filter((chip) => chip.tone === 'caution').map((chip) => chip.text),
          ]
            .filter((text) => text !== '')
            .join(' · ')}
        >
          {pull.name}
        </Choice>
      ))}
    </fieldset>
  );
}
