import { useQuery } from '@tanstack/react-query';
import { shopFiguresQuestion } from '../../api/shop.ts';
import { PlainChart } from '../../chart/PlainChart.tsx';
import { Card } from '../../parts/Card.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { ShownTable } from '../../parts/ShownTable.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { CalibrationLog } from './CalibrationLog.tsx';
import styles from './figures.module.css';
import { Ledger } from './Ledger.tsx';

/** What the shop's pulls, instruments and predictions say about the shop. */
export default function FiguresPage() {
  const { data: page, error, isPending } = useQuery(shopFiguresQuestion(useViewChoices()));
  return (
    <>
      <PageHead title="The shop’s own figures" />
      <Trouble of={error} />
      {isPending && <Waiting />}
      {page !== undefined && (
        <div className={styles.column}>
          <p className={styles.sentence}>{page.sentence}</p>
          {page.pullsNotRead > 0 && (
            <p className={styles.soft} role="status">
              {page.pullsNotRead} pulls are still being read and come in as they are.
            </p>
          )}
          <Card title="How pulls repeat">
            {page.chart !== null && <PlainChart chart={page.chart} />}
            {page.repeatability !== null && <ShownTable table={page.repeatability} />}
            <p className={styles.soft}>
              One set-up on one day counts once, however many pulls it has: engines and days differ more than
              pulls do. Rejected, aborted and warm-up pulls never count, nor do pulls of another tune.
            </p>
          </Card>
          <Card title="Set-ups, days, cells, drift">
            <ShownTable table={page.spreads} />
            {page.cellOffsets !== null && (
              <>
                <h3 className={styles.title}>{page.cellOffsets.title}</h3>
                <ShownTable table={page.cellOffsets} />
              </>
            )}
          </Card>
          {(page.sessions !== null || page.moved.length > 0) && (
            <Card title="How sessions moved">
              {page.moved.length > 0 && (
                <ul className={styles.moved}>
                  {page.moved.map((line) => (
                    <li key={line}>{line}</li>
                  ))}
                </ul>
              )}
              {page.sessions !== null && <ShownTable table={page.sessions} />}
            </Card>
          )}
          <Card title="Predictions">
            <Ledger ledger={page.predictions} />
          </Card>
          <Card title="Calibrations of instruments">
            <CalibrationLog rows={page.calibrations} />
          </Card>
        </div>
      )}
    </>
  );
}
