import type { TrialPage } from '@pullbook/views';
import { useNavigate } from '@tanstack/react-router';
import { CursorNumbers } from '../../chart/CursorNumbers.tsx';
import { useCursor } from '../../chart/cursor.ts';
import { useKey } from '../../keys/use-key.ts';
import { Audience } from '../../parts/Audience.tsx';
import { ButtonLink } from '../../parts/Button.tsx';
import { Chips } from '../../parts/Chips.tsx';
import { FindingsCard } from '../../parts/Findings.tsx';
import { useTabName } from '../../parts/PageHead.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { TwoColumns } from '../../parts/TwoColumns.tsx';
import type { TrialSearch } from '../../search.ts';
import { Caveats } from './Caveats.tsx';
import { Changes } from './Changes.tsx';
import { ChangeTrial } from './ChangeTrial.tsx';
import { Evidence } from './Evidence.tsx';
import { LikeForLike } from './LikeForLike.tsx';
import { MayAndMayNot } from './MayAndMayNot.tsx';
import { Missing } from './Missing.tsx';
import { OwnRemark } from './OwnRemark.tsx';
import { PlanCard } from './PlanCard.tsx';
import { Predictions } from './Predictions.tsx';
import { Publish } from './Publish.tsx';
import { TrialChart } from './TrialChart.tsx';
import { TrialRemarks } from './TrialRemarks.tsx';
import { TrialTables } from './TrialTables.tsx';
import styles from './trial.module.css';
import { useHidden } from './use-hidden.ts';
import { Verdict } from './Verdict.tsx';
import { Why } from './Why.tsx';

export function TrialView({ page, look }: { page: TrialPage; look: TrialSearch }) {
  useTabName(page.question);
  const cursor = useCursor();
  const hidden = useHidden(page, look);
  const navigate = useNavigate();
  const hasPicture = page.chart !== null;
  useKey('present', () => {
    if (hasPicture) void navigate({ to: '/trials/$id/present', params: { id: page.id } });
  });
  useKey('match', () => {
    if (page.isSupercharged) void navigate({ to: '/trials/$id/match', params: { id: page.id } });
  });
  // What was changed last is what one asks more of.
  const last = page.combinations.at(-1);
  useKey('askPower', () => {
    if (last !== undefined) void navigate({ to: '/combinations/$id/reach', params: { id: last.id } });
  });

  return (
    <article>
      <header className={styles.head}>
        <p className={styles.question}>{page.question}</p>
        <h1 className={styles.answer}>
          <Sentence parts={page.sentence} />
        </h1>
        <Verdict verdicts={page.verdicts} />
        <Chips chips={page.chips} />
        <p className={styles.basis}>{page.basis}</p>
        <Audience kind="trial" id={page.id} audience={page.audience} />
        <div className={styles.publish}>
          <Publish page={page} look={look} />
          {hasPicture && (
            <ButtonLink to="/trials/$id/present" params={{ id: page.id }} shortcut="present">
              Present
            </ButtonLink>
          )}
          <ChangeTrial page={page} />
          {page.isSupercharged && (
            <ButtonLink to="/trials/$id/match" params={{ id: page.id }} shortcut="match">
              Match
            </ButtonLink>
          )}
          {last !== undefined && (
            <ButtonLink to="/combinations/$id/reach" params={{ id: last.id }} shortcut="askPower">
              Ask for a power
            </ButtonLink>
          )}
        </div>
      </header>
      <TwoColumns
        parts={{
          missing: <Missing page={page} />,
          chart: <TrialChart page={page} look={look} cursor={cursor} hidden={hidden} />,
          numbers: page.chart !== null && page.cursor !== null && (
            <CursorNumbers chart={page.chart} table={page.cursor} cursor={cursor} />
          ),
          mayAndMayNot: <MayAndMayNot of={page.mayAndMayNot} />,
          caveats: <Caveats caveats={page.caveats} />,
          likeForLike: <LikeForLike badges={page.badges} conditions={page.likeForLike} />,
          changes: <Changes page={page} />,
          why: <Why of={page.why} matchOf={page.isSupercharged ? page.id : null} />,
          evidence: <Evidence page={page} hidden={hidden} />,
          plan: <PlanCard page={page} />,
          tables: <TrialTables page={page} />,
          predict: page.predictions.open.length > 0 && <Predictions page={page} />,
          predictions: page.predictions.open.length === 0 && <Predictions page={page} />,
          ownRemark: <OwnRemark page={page} />,
          findings: <FindingsCard findings={page.findings} />,
          remarks: <TrialRemarks remarks={page.remarks} />,
        }}
        main={['missing', 'predict', 'chart', 'why', 'evidence', 'plan', 'tables', 'findings', 'remarks']}
        side={['numbers', 'mayAndMayNot', 'caveats', 'likeForLike', 'changes', 'predictions', 'ownRemark']}
        narrow={[
          'missing',
          'predict',
          'chart',
          'numbers',
          'why',
          'mayAndMayNot',
          'caveats',
          'likeForLike',
          'changes',
          'evidence',
          'plan',
          'tables',
          'predictions',
          'ownRemark',
          'findings',
          'remarks',
        ]}
      />
    </article>
  );
}
