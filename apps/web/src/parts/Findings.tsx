import type { FindingGroup } from '@pullbook/views';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { type RuleOfSubject, useLetSpeak } from '../api/rules.ts';
import { Button } from './Button.tsx';
import { Card } from './Card.tsx';
import styles from './findings.module.css';
import { SilenceDialog } from './SilenceDialog.tsx';
import { Trouble } from './Trouble.tsx';

const LEVEL_WORD = { note: 'Note', caution: 'Caution', alarm: 'Alarm' } as const;

/** More sentences of one rule than this are folded. */
const UNFOLDED = 2;

/** What the rules say of a thing, in a card of its own; nothing where they say nothing. */
export function FindingsCard({ findings }: { findings: FindingGroup[] }) {
  if (findings.length === 0) return null;
  return (
    <Card title="Findings">
      <Findings findings={findings} />
      <p className={styles.catalogue}>
        <Link to="/rules">All rules and their thresholds</Link>
      </p>
    </Card>
  );
}

/** Each rule once with its sentences; a silenced one stays, dimmed, with the reason. */
export function Findings({ findings }: { findings: FindingGroup[] }) {
  const [silencing, setSilencing] = useState<RuleOfSubject | null>(null);
  return (
    <>
      <ul className={styles.list}>
        {findings.map((group) => (
          <li key={group.ruleId} className={group.silent ? styles.silent : undefined}>
            <div className={styles.head}>
              <span className={styles[group.level]}>{LEVEL_WORD[group.level]}</span>
              <h3 className={styles.title}>{group.title}</h3>
              <span className={styles.id}>{group.ruleId}</span>
            </div>
            {group.lines.length > UNFOLDED ? (
              <details>
                <summary>{group.lines.length} findings of this rule</summary>
                <Lines group={group} onSilence={setSilencing} />
              </details>
            ) : (
              <Lines group={group} onSilence={setSilencing} />
            )}
            <p className={styles.source}>Rests on: {group.source}</p>
          </li>
        ))}
      </ul>
      {silencing !== null && <SilenceDialog of={silencing} onClose={() => setSilencing(null)} />}
    </>
  );
}

function Lines({ group, onSilence }: { group: FindingGroup; onSilence: (of: RuleOfSubject) => void }) {
  return (
    <ul className={styles.lines}>
      {group.lines.map((line) => (
        <Line key={`${line.subject} ${line.text}`} ruleId={group.ruleId} line={line} onSilence={onSilence} />
      ))}
    </ul>
  );
}

/** A pull that is only looked at, or a what-if, has no id, and nothing can be silenced for it. */
const isKept = (subject: string): boolean => subject.includes(' ');

/** One button silences and lets speak again, so that the focus of a person at the keys is not lost with it. */
function Line({
  ruleId,
  line,
  onSilence,
}: {
  ruleId: string;
  line: FindingGroup['lines'][number];
  onSilence: (of: RuleOfSubject) => void;
}) {
  const of = { ruleId, subject: line.subject };
  const speak = useLetSpeak(of);
  const { silenced } = line;
  return (
    <li className={styles.line}>
      <p>
        {line.about !== '' && <span className={styles.about}>{line.about}: </span>}
        {line.text}
      </p>
      {silenced !== null && (
        <p className={styles.reason}>
          Silenced on {silenced.at}: {silenced.reason}
        </p>
      )}
      {isKept(line.subject) && (
        <Button
          small
          look="quiet"
          aria-label={
            silenced === null ? `Silence ${ruleId} ${line.about}`.trim() : `Let ${ruleId} speak again`
          }
          onPress={() => {
            if (silenced === null) onSilence(of);
            else if (!speak.isPending) speak.mutate();
          }}
        >
          {silenced === null ? 'Silence' : 'Let it speak'}
        </Button>
      )}
      <Trouble of={speak.error} />
    </li>
  );
}
