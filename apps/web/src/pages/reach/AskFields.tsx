import type { ChangePart } from '@pullbook/core/reach';
import { CHANGE_LABELS } from '@pullbook/views/reach';
import { Choice, Fields, TextField } from '../../parts/Field.tsx';
import { OneOf } from '../../parts/OneOf.tsx';
import type { ReachAsk } from '../../search.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import styles from './reach.module.css';
import { endsOf } from './with-unit.ts';

/** What is asked: how much power, of which figure, within what, and by what kinds of change. */
export function AskFields({ ask, onChange }: { ask: ReachAsk; onChange: (change: ReachAsk) => void }) {
  const { units } = useViewChoices();
  const isUs = units === 'us';
  const [from, to] = endsOf(ask.window);
  const left = new Set((ask.without ?? '').split(',').filter((part) => part !== ''));
  const setWindow = (ends: [string, string]) =>
    onChange({ window: ends.every((end) => end === '') ? undefined : ends.join('-') });
  const may = (part: ChangePart, isAllowed: boolean) => {
    const next = Object.keys(CHANGE_LABELS).filter((one) => (one === part ? !isAllowed : left.has(one)));
    onChange({ without: next.join(',') || undefined });
  };
  return (
    <div className={styles.ask}>
      <Fields>
        <TextField
          label="Power"
          help={isUs ? '520 hp, 390 kW' : '390 kW, 520 hp'}
          value={ask.power ?? ''}
          onChange={(event) => onChange({ power: event.target.value })}
        />
        <TextField
          label="Boost at most"
          help="Blank: as far as the limits let it."
          value={ask.boostCap ?? ''}
          placeholder={isUs ? '10 psi' : '70 kPa'}
          onChange={(event) => onChange({ boostCap: event.target.value })}
        />
      </Fields>
      <OneOf
        title="Which power"
        chosen={ask.what ?? 'peak power'}
        options={[
          { value: 'peak power', text: 'The highest' },
          { value: 'power at a speed', text: 'At an engine speed' },
          { value: 'average power', text: 'On average between two speeds' },
        ]}
        onChoose={(what) =>
          onChange({ what: what === 'peak power' ? undefined : what, at: undefined, window: undefined })
        }
      />
      {ask.what === 'power at a speed' && (
        <Fields>
          <TextField
            label="Engine speed"
            value={ask.at ?? ''}
            placeholder="6,000 rpm"
            onChange={(event) => onChange({ at: event.target.value })}
          />
        </Fields>
      )}
      {ask.what === 'average power' && (
        <Fields>
          <TextField
            label="From"
            value={from}
            placeholder="3,000 rpm"
            onChange={(event) => setWindow([event.target.value, to])}
          />
          <TextField
            label="To"
            value={to}
            placeholder="6,500 rpm"
            onChange={(event) => setWindow([from, event.target.value])}
          />
        </Fields>
      )}
      <details className={styles.more} open={left.size > 0 || undefined}>
        <summary>What may be changed{left.size > 0 && `: all but ${kindsOf(left)}`}</summary>
        <fieldset className={styles.kinds}>
          <legend className="unseen">What may be changed</legend>
          {(Object.keys(CHANGE_LABELS) as ChangePart[]).map((part) => (
            <Choice
              key={part}
              kind="checkbox"
              checked={!left.has(part)}
              onChange={(event) => may(part, event.target.checked)}
            >
              {CHANGE_LABELS[part]}
            </Choice>
          ))}
        </fieldset>
      </details>
    </div>
  );
}

/** `fuel, cooler`; more of them are counted. */
function kindsOf(left: ReadonlySet<string>): string {
  if (left.size > 3) return `${left.size} kinds`;
  return Object.entries(CHANGE_LABELS)
    .flatMap(([part, label]) => (left.has(part) ? [label.toLowerCase()] : []))
    .join(', ');
}
