import type { MatchBundle } from '@pullbook/views/match';
import { noMatchLines } from '@pullbook/views/match';
import type { MatchOf } from '../../api/match.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import styles from './match.module.css';
import { WayBack } from './WayBack.tsx';

/** Why there is no match yet, and the ways to what it lacks. */
export function NoMatch({ of, bundle }: { of: MatchOf; bundle: MatchBundle }) {
  const { id } = of;
  return (
    <article>
      <PageHead title="No match yet" />
      <WayBack of={of} title={bundle.title} />
      <div className={styles.narrow}>
        <Card title="What it lacks">
          <Remarks remarks={noMatchLines(bundle, useViewChoices())} />
        </Card>
        <Card title="How to enter it">
          <p className={styles.plain}>
            A match needs an engine without its supercharger, pulled or told of; the supercharger with its map
            or a rated point; two pulleys and the step-up.
          </p>
          <div className={styles.ways}>
            {of.kind === 'combination' && (
              <ButtonLink to="/combinations/$id/amend" params={{ id }}>
                Amend the sheet
              </ButtonLink>
            )}
            <ButtonLink to="/maps">Compressor maps</ButtonLink>
            <ButtonLink to="/add">Add pulls</ButtonLink>
            {of.kind === 'trial' && <ButtonLink to="/combinations">Combinations</ButtonLink>}
          </div>
        </Card>
      </div>
    </article>
  );
}
