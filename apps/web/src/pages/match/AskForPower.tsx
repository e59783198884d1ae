import type { MatchBundle } from '@pullbook/views/match';
import { useNavigate } from '@tanstack/react-router';
import { useKey } from '../../keys/use-key.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import styles from './match.module.css';

/** The way from what a supercharger does to what would make a power; of the combination that was changed last. */
export function AskForPower({ bundle }: { bundle: MatchBundle }) {
  const navigate = useNavigate();
  const last = bundle.combinations.at(-1);
  useKey('askPower', () => {
    if (last !== undefined)
      void navigate({ to: '/combinations/$id/reach', params: { id: last.combinationId } });
  });
  if (last === undefined) return null;
  return (
    <div className={styles.ways}>
      <ButtonLink small to="/combinations/$id/reach" params={{ id: last.combinationId }} shortcut="askPower">
        Ask for a power{bundle.combinations.length > 1 && ` of ${last.key}`}
      </ButtonLink>
    </div>
  );
}
