import type { RulesReport } from '@pullbook/workshop';
import { useQuery } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { rulesQuestion, useSetThreshold } from '../../api/rules.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog, DialogActions } from '../../parts/Dialog.tsx';
import { TextField } from '../../parts/Field.tsx';
import { FindField, holdsAllWords } from '../../parts/FindField.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import styles from './rules.module.css';

type Rule = RulesReport['rules'][number];
type Threshold = Rule['thresholds'][number];

const LEVEL_WORD = { note: 'Note', caution: 'Caution', alarm: 'Alarm' } as const;
const PLACE_WORD = {
  import: 'a file added',
  pull: 'a pull',
  comparison: 'a comparison',
  combination: 'a combination',
  session: 'a session',
  plan: 'a plan',
  match: 'a match',
} as const;

/** What figures are held against: every rule with its thresholds, where they come from, and the shop's own. */
export default function RulesPage() {
  const rules = useQuery(rulesQuestion(useViewChoices()));
  // A link to one rule names it behind the address.
  const [sought, setSought] = useState(() => location.hash.slice(1));
  const [setting, setSetting] = useState<Threshold | null>(null);
  const all = rules.data?.rules ?? [];
  const found = all.filter((rule) => holdsAllWords(wordsOf(rule), sought));
  return (
    <>
      <PageHead title="Rules" />
      <p className={styles.lead}>
        What figures are held against. A finding never stops anything from being kept, and a rule can be
        silenced for one thing with a reason. They help to plan and to doubt; they guard neither an engine nor
        a person.
      </p>
      <Trouble of={rules.error} />
      {rules.isPending && <Waiting />}
      {all.length > 0 && (
        <FindField what="rules" text={sought} onText={setSought} shown={found.length} all={all.length} />
      )}
      {found.length > 0 && (
        <ul className={styles.rules}>
          {found.map((rule) => (
            <li key={rule.id}>
              <RuleLine rule={rule} isAlone={found.length === 1} onSet={setSetting} />
            </li>
          ))}
        </ul>
      )}
      {setting !== null && <ThresholdDialog threshold={setting} onClose={() => setSetting(null)} />}
    </>
  );
}

const wordsOf = ({ id, title, statement, level, source, thresholds }: Rule): string[] => [
  id,
  title,
  statement,
  LEVEL_WORD[level],
  source,
  ...thresholds.map(({ label }) => label),
];

/** A rule in two lines; opened, where it looks, what it rests on and its thresholds. */
function RuleLine({
  rule,
  isAlone,
  onSet,
}: {
  rule: Rule;
  /** It was looked for: opened. */
  isAlone: boolean;
  onSet: (threshold: Threshold) => void;
}) {
  return (
    <details className={styles.rule} open={isAlone || undefined}>
      <summary>
        <h2>
          <span className={styles.id}>{rule.id}</span> {rule.title}
        </h2>
        <span className={styles.level}>
          {rule.thresholds.some(({ isOwn }) => isOwn) && <>The shop’s own threshold. </>}
          {LEVEL_WORD[rule.level]}
        </span>
        <span className={styles.statement}>{rule.statement}</span>
      </summary>
      <div className={styles.open}>
        {rule.elsewhere !== null && <p className={styles.elsewhere}>{rule.elsewhere}</p>}
        <p className={styles.soft}>
          Looked at in {rule.places.map((place) => PLACE_WORD[place]).join(', ')}. Rests on: {rule.source}
        </p>
        {rule.thresholds.length > 0 && <Thresholds of={rule.thresholds} onSet={onSet} />}
      </div>
    </details>
  );
}

function Thresholds({ of, onSet }: { of: readonly Threshold[]; onSet: (threshold: Threshold) => void }) {
  return (
    <ul>
      {of.map((threshold) => (
        <li key={threshold.id} className={styles.threshold}>
          <span>{threshold.label}</span>
          <span className={styles.value}>
            {threshold.text}
            {threshold.isOwn && (
              <span className={styles.soft}> the shop’s own; catalogue: {threshold.catalogueText}</span>
            )}
          </span>
          {threshold.canBeSet ? (
            <Button
              small
              look="quiet"
              aria-label={`Set: ${threshold.label}`}
              onPress={() => onSet(threshold)}
            >
              Set
            </Button>
          ) : (
            <span className={styles.soft}>fixed</span>
          )}
        </li>
      ))}
    </ul>
  );
}

function ThresholdDialog({ threshold, onClose }: { threshold: Threshold; onClose: () => void }) {
  const [value, setValue] = useState(threshold.text);
  const set = useSetThreshold();
  function submit(event: FormEvent) {
    event.preventDefault();
    set.mutate({ id: threshold.id, value }, { onSuccess: onClose });
  }
  return (
    <Dialog title={threshold.label} open onClose={onClose}>
      <form onSubmit={submit} style={{ display: 'contents' }}>
        <TextField
          label="The shop’s own, with its unit"
          help={`As the catalogue has it: ${threshold.catalogueText}. It holds on every screen and on the command line.`}
          value={value}
          onChange={(event) => setValue(event.target.value)}
        />
        <Trouble of={set.error} />
        <DialogActions>
          <Button look="main" type="submit" isDisabled={set.isPending}>
            Keep
          </Button>
          {threshold.isOwn && (
            <Button
              isDisabled={set.isPending}
              onPress={() => set.mutate({ id: threshold.id, value: null }, { onSuccess: onClose })}
            >
              As the catalogue
            </Button>
          )}
          <Button onPress={onClose}>Cancel</Button>
        </DialogActions>
      </form>
    </Dialog>
  );
}
