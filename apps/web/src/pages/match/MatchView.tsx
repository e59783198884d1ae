import type { MatchBundle } from '@pullbook/views/match';
import type { MatchOf } from '../../api/match.ts';
import { CursorNumbers } from '../../chart/CursorNumbers.tsx';
import { useCursor } from '../../chart/cursor.ts';
import { PlainChart } from '../../chart/PlainChart.tsx';
import { Card } from '../../parts/Card.tsx';
import { Facts } from '../../parts/Facts.tsx';
import { FindingsCard } from '../../parts/Findings.tsx';
import { useTabName } from '../../parts/PageHead.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { ShownTable } from '../../parts/ShownTable.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { TwoColumns } from '../../parts/TwoColumns.tsx';
import type { MatchSearch } from '../../search.ts';
import { Alarms } from './Alarms.tsx';
import { AskForPower } from './AskForPower.tsx';
import { FitCard } from './FitCard.tsx';
import { Foretold } from './Foretold.tsx';
import { MatchChart } from './MatchChart.tsx';
import { MatchMap } from './MatchMap.tsx';
import styles from './match.module.css';
import { useMatch } from './use-match.ts';
import { useWhatIf } from './use-what-if.ts';
import { WayBack } from './WayBack.tsx';
import { WhatIfCard } from './WhatIfCard.tsx';

/** What the supercharger does for this engine, and what another pulley, cooler or day would do. */
export function MatchView({ of, bundle, search }: { of: MatchOf; bundle: MatchBundle; search: MatchSearch }) {
  useTabName(`Match: ${bundle.title}`);
  const cursor = useCursor();
  const asked = useWhatIf(search);
  const { page, isWaiting, trouble } = useMatch(of, bundle, asked.text);
  return (
    <article>
      <header className={styles.head}>
        <WayBack of={of} title={page.title} />
        <h1 className={styles.answer}>
          <Sentence parts={page.sentence} />
        </h1>
        <p className={styles.computed}>
          Computed, not measured. <span role="status">{bandWords(isWaiting, trouble)}</span>
        </p>
        <Alarms of={page.findings} />
        <AskForPower bundle={bundle} />
      </header>
      <Trouble of={trouble} />
      <TwoColumns
        even
        parts={{
          whatIf: (
            <WhatIfCard bundle={bundle} text={asked.text} onChange={asked.change} onReset={asked.reset} />
          ),
          chart: <MatchChart page={page} cursor={cursor} search={search} onZoom={asked.zoom} />,
          map: <MatchMap page={page} bundle={bundle} cursor={cursor} />,
          numbers: <CursorNumbers chart={page.chart} table={page.cursor} cursor={cursor} />,
          why: page.why.length > 0 && (
            <Card title="Why">
              <ul className={styles.lines}>
                {page.why.map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            </Card>
          ),
          powerGoes: (
            <Card title="Where the crank’s power goes">
              <PlainChart chart={page.powerGoes} />
            </Card>
          ),
          table: (
            <Card title={page.table.title}>
              <ShownTable table={page.table} isBroken />
            </Card>
          ),
          drive: page.drive.length > 0 && (
            <Card title="Drive">
              <Facts facts={page.drive} />
            </Card>
          ),
          fit: <FitCard fits={page.fit} />,
          foretold: of.kind === 'trial' && <Foretold trialId={of.id} bundle={bundle} />,
          findings: <FindingsCard findings={page.findings} />,
          assumptions: page.assumptions.length > 0 && (
            <Card title="Assumed">
              <Remarks remarks={page.assumptions} />
            </Card>
          ),
          left: page.left.length > 0 && (
            <Card title="Not matched">
              <Remarks
                remarks={page.left.map(({ name, reason }) => ({ level: 'note', text: `${name}: ${reason}` }))}
              />
            </Card>
          ),
          remarks: page.remarks.length > 0 && (
            <Card title="Remarks">
              <Remarks remarks={page.remarks} />
            </Card>
          ),
          cautions: page.cautions.length > 0 && (
            <Card title="Cautions">
              <ul className={styles.lines}>
                {page.cautions.map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            </Card>
          ),
        }}
        main={['chart', 'numbers', 'why', 'powerGoes', 'drive', 'cautions', 'remarks']}
        side={['map', 'whatIf', 'findings', 'foretold', 'fit', 'assumptions', 'left']}
        below={['table']}
        narrow={[
          'chart',
          'map',
          'whatIf',
          'findings',
          'numbers',
          'why',
          'foretold',
          'powerGoes',
          'table',
          'drive',
          'cautions',
          'fit',
          'assumptions',
          'left',
          'remarks',
        ]}
      />
    </article>
  );
}

function bandWords(isWaiting: boolean, trouble: Error | null): string {
  if (isWaiting) return 'Its bands are being worked out …';
  return trouble === null ? 'Tints: 95 of 100 cases.' : 'Not all bands: they did not come.';
}
