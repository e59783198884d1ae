import type { PriorRow } from '@pullbook/views';
import type { SettingsReport } from '@pullbook/workshop';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { type FormEvent, useState } from 'react';
import { scatterPriorQuestion, useKeepSettings } from '../../api/shop.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { TextField } from '../../parts/Field.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { Kept } from './Kept.tsx';
import { priorChange } from './prior-change.ts';
import scatter from './scatter.module.css';
import styles from './shop.module.css';

/**
 * How much this shop scatters: its own guess beside the built-in one, until its pulls say better. The form begins anew where
 * the book has other figures than it began with.
 */
export function HowItScatters({ settings }: { settings: SettingsReport }) {
  const rows = useQuery(scatterPriorQuestion(useViewChoices()));
  const keep = useKeepSettings();
  return (
    <Card title="How much this shop scatters">
      <p className={styles.soft}>
        Every verdict rests on it. The shop’s own repeated pulls speak for themselves as they come in; these
        figures stand until then, one standard deviation each.
      </p>
      <p className={scatter.link}>
        <Link to="/shop/figures">What the shop’s pulls say so far</Link>
      </p>
      <Trouble of={rows.error} />
      {rows.data !== undefined && (
        <PriorForm key={JSON.stringify(rows.data)} settings={settings} keep={keep} {...rows.data} />
      )}
    </Card>
  );
}

function PriorForm({
  settings,
  keep,
  rows,
  worthwhileGain: worthwhileKept,
}: {
  settings: SettingsReport;
  keep: ReturnType<typeof useKeepSettings>;
  rows: readonly PriorRow[];
  worthwhileGain: string;
}) {
  const kept = () => Object.fromEntries(rows.map(({ path, own }) => [path, own]));
  const [typed, setTyped] = useState<Record<string, string>>(kept);
  const [worthwhile, setWorthwhile] = useState(worthwhileKept);

  function keepAll(event: FormEvent) {
    event.preventDefault();
    keep.mutate({
      scatterPrior: priorChange(typed, rows, settings.scatterPrior),
      ...(worthwhile === worthwhileKept ? {} : { worthwhileGain: worthwhile }),
      stamp: settings.stamp,
    });
  }

  return (
    <form className={styles.form} onSubmit={keepAll}>
      <div className={scatter.figures}>
        {rows.map(({ path, label, builtIn, provenance }) => (
          <TextField
            key={path}
            label={label}
            placeholder={builtIn}
            help={`Built in: ${builtIn} (${provenance}).`}
            value={typed[path] ?? ''}
            onChange={({ target }) => setTyped((before) => ({ ...before, [path]: target.value }))}
          />
        ))}
        <TextField
          label="Smallest gain that matters"
          placeholder="1 %"
          help="Of average power. What lies surely within it is called no difference. Blank: 1 %."
          value={worthwhile}
          onChange={({ target }) => setWorthwhile(target.value)}
        />
      </div>
      <div>
        <Button type="submit" isDisabled={keep.isPending}>
          Keep these figures
        </Button>
      </div>
      <Kept
        act={keep}
        onTheirs={() => {
          setTyped(kept());
          setWorthwhile(worthwhileKept);
        }}
      />
    </form>
  );
}
