import type { ReachPage, ShownRung } from '@pullbook/views/reach';
import { type ReactNode, useId } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { ChipOf } from '../../parts/Chips.tsx';
import { useWide } from '../../view/use-wide.ts';
import styles from './reach.module.css';

/** The rungs, cheapest first, and the engine as it is: arrow keys walk them, Enter goes on to the chosen one. */
export function Ladder({
  page,
  onChoose,
  onOpen,
  acts,
}: {
  page: ReachPage;
  onChoose: (id: string) => void;
  /** The eye and the keys go to what the chosen rung is. */
  onOpen: () => void;
  /** What can be done with the chosen one. */
  acts: ReactNode;
}) {
  const { now, rungs, chosen } = page;
  const group = useId();
  // Where there is no room for columns, what a rung is stands far below it.
  const isWide = useWide();
  const all = now === null ? rungs : [now, ...rungs];
  if (all.length === 0) return null;
  return (
    <Card title={titleOf(page)}>
      <fieldset className={styles.ladder}>
        <legend className="unseen">Ways to the target, cheapest first</legend>
        <ol className={styles.rungs}>
          {all.map((rung) => {
            const isChosen = rung.id === chosen?.rung.id;
            return (
              <li key={rung.id} className={styles.rung} data-chosen={isChosen} data-reaches={rung.reaches}>
                <label className={styles.pick}>
                  <input
                    type="radio"
                    name={group}
                    value={rung.id}
                    checked={isChosen}
                    aria-label={rung.spoken}
                    onChange={() => onChoose(rung.id)}
                    onKeyDown={(event) => {
                      if (event.key !== 'Enter') return;
                      event.preventDefault();
                      onOpen();
                    }}
                  />
                  <RungWords rung={rung} />
                </label>
                {isChosen && !isWide && (
                  <div className={styles.acts}>
                    <Button onPress={onOpen}>Its curves and limits</Button>
                  </div>
                )}
                {isChosen && acts}
              </li>
            );
          })}
        </ol>
      </fieldset>
    </Card>
  );
}

function titleOf({ isFinished, infeasible }: ReachPage): string {
  if (!isFinished) return 'The ladder so far';
  return infeasible === null ? 'The ladder, cheapest first' : 'What comes nearest, cheapest first';
}

function RungWords({ rung }: { rung: ShownRung }) {
  const { number, title, reached, band, chance, state, cost, bindsFirst, cautions, ground } = rung;
  const isNow = number === '';
  return (
    <>
      <span className={styles.number}>{number}</span>
      <span className={styles.words}>
        <span className={styles.title}>{title}</span>
        <span className={styles.state}>
          {rung.reaches && <Tick />}
          {[state, chance].filter((text) => text !== '').join(' · ')}
        </span>
        {bindsFirst !== '' && <span className={styles.binds}>Binds first: {bindsFirst}</span>}
        <span className={styles.chips}>
          <ChipOf chip={{ text: ground, tone: 'quiet' }} />
          {!isNow && <ChipOf chip={{ text: cost, tone: 'quiet' }} />}
          {cautions > 0 && (
            <ChipOf chip={{ text: cautions === 1 ? '1 caution' : `${cautions} cautions`, tone: 'caution' }} />
          )}
        </span>
      </span>
      <span className={styles.reached}>
        <strong>{reached}</strong>
        <span className={styles.band}>{band === '' ? 'band to come' : band}</span>
      </span>
    </>
  );
}

/** Beside the words that say the same. */
function Tick() {
  return (
    <svg className={styles.tick} viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
      <path d="M1.5 6.5 4.5 9.5 10.5 2.5" fill="none" stroke="currentColor" strokeWidth="2" />
    </svg>
  );
}
