import type { PlanPage } from '@pullbook/views';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import type { Stamped } from '../../api/edge.ts';
import { type PlanAsk, sheetAddress, useForgetPlan, useKeepPlan } from '../../api/plan.ts';
import { PlainChart } from '../../chart/PlainChart.tsx';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { Facts } from '../../parts/Facts.tsx';
import { Fields, TextArea, TextField } from '../../parts/Field.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { TwoColumns } from '../../parts/TwoColumns.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { PlannedOrder } from './PlannedOrder.tsx';
import { PrintLinks } from './PrintLinks.tsx';
import styles from './plan.module.css';
import { StopCard } from './StopCard.tsx';

export function PlanView({
  page,
  ask,
  typed,
  trouble,
  onType,
}: {
  page: Stamped<PlanPage>;
  ask: PlanAsk;
  typed: PlanAsk;
  trouble: Error | null;
  onType: (change: PlanAsk) => void;
}) {
  const view = useViewChoices();
  const keep = useKeepPlan(page.id);
  const forget = useForgetPlan(page.id);
  const gain = typed.gain ?? page.gain;
  const odds = typed.odds ?? page.odds;
  const [typedNotes, setNotes] = useState<string | null>(null);
  const notes = typedNotes ?? page.notes;
  return (
    <article className={styles.plan}>
      <PageHead title="Plan the next pulls">
        <PrintLinks
          letter={sheetAddress(page.id, ask, view, 'letter')}
          a4={sheetAddress(page.id, ask, view, 'a4')}
        />
        {page.isKept && (
          <Button onPress={() => forget.mutate(page.stamp)} isDisabled={forget.isPending}>
            Forget the plan
          </Button>
        )}
        <Button
          look="main"
          isDisabled={keep.isPending || trouble !== null}
          onPress={() => keep.mutate({ gain, odds, notes: notes.trim(), stamp: page.stamp })}
        >
          {page.isKept ? 'Keep it anew' : 'Keep the plan'}
        </Button>
      </PageHead>
      <p className={styles.question}>
        <Link to="/trials/$id" params={{ id: page.id }}>
          {page.question}
        </Link>
      </p>
      <Trouble of={keep.error ?? forget.error} />
      {page.risk !== '' && (
        <p className={styles.risk} role="status">
          {page.risk}
        </p>
      )}
      <TwoColumns
        parts={{
          ask: (
            <Card title="What is to be seen">
              <Fields>
                <TextField
                  label="Gain"
                  help="A share of the baseline, 2 %, or a power, 8 hp"
                  value={gain}
                  onChange={(event) => onType({ gain: event.target.value })}
                />
                <TextField
                  label="Odds to see it"
                  help="50 % to 99 %"
                  value={odds}
                  onChange={(event) => onType({ odds: event.target.value })}
                />
              </Fields>
              <div className={styles.notes}>
                <TextArea
                  label="Notes"
                  help="Kept with the plan and printed on its sheet"
                  rows={2}
                  maxLength={2000}
                  value={notes}
                  onChange={(event) => setNotes(event.target.value)}
                />
              </div>
              <Trouble of={trouble} />
              <p className={styles.sentence} role="status">
                {page.sentence}
              </p>
              <Remarks remarks={page.remarks} />
            </Card>
          ),
          order: <PlannedOrder page={page} />,
          chart: page.chart !== null && (
            <Card title="What more pulls are worth">
              <PlainChart chart={page.chart} />
            </Card>
          ),
          facts: (
            <Card title="What it gives">
              <Facts facts={page.facts} className={styles.facts} />
            </Card>
          ),
          start: (
            <Card title="Before each counted pull">
              <Facts facts={page.start} className={styles.facts} />
            </Card>
          ),
          stop: <StopCard page={page} ask={{ gain, odds }} />,
        }}
        main={['ask', 'order', 'chart', 'stop']}
        side={['facts', 'start']}
        narrow={['ask', 'order', 'facts', 'chart', 'start', 'stop']}
      />
    </article>
  );
}
