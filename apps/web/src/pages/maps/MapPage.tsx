import type { MapPage as Page } from '@pullbook/views/match';
import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import type { Stamped } from '../../api/edge.ts';
import { mapQuestion } from '../../api/maps.ts';
import { apiAddress } from '../../api/request.ts';
import { MapChart } from '../../chart/MapChart.tsx';
import { Button, DownloadLink } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { Chips } from '../../parts/Chips.tsx';
import { Facts } from '../../parts/Facts.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { ShownTable } from '../../parts/ShownTable.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { TwoColumns } from '../../parts/TwoColumns.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { ChangeMapDialog } from './ChangeMapDialog.tsx';
import styles from './maps.module.css';

/** One compressor map: its picture, how well it meets its own points, the points. */
export default function MapPage() {
  const { id } = useParams({ from: '/maps/$id' });
  const map = useQuery(mapQuestion(id, useViewChoices()));
  if (map.data === undefined) return map.isPending ? <Waiting /> : <Trouble of={map.error} />;
  return <MapView key={map.data.id} page={map.data} />;
}

function MapView({ page }: { page: Stamped<Page> }) {
  const [open, setOpen] = useState(false);
  return (
    <article>
      <div className={styles.head}>
        <PageHead title={page.name}>
          <DownloadLink href={apiAddress(`/maps/${encodeURIComponent(page.id)}/csv`)}>As CSV</DownloadLink>
          <Button onPress={() => setOpen(true)}>Name and notes</Button>
        </PageHead>
        <p className={styles.plain}>
          <Link to="/maps">Compressor maps</Link>
        </p>
        <Chips chips={page.chips} />
      </div>
      <TwoColumns
        even
        parts={{
          picture: (
            <Card title="The map">
              {page.picture === null ? (
                <p className={styles.plain}>It cannot be drawn: the remarks say why.</p>
              ) : (
                <MapChart map={page.picture} />
              )}
            </Card>
          ),
          facts: (
            <Card title="What it is">
              <Facts facts={page.facts} />
              {page.notes !== '' && <p className={styles.notes}>{page.notes}</p>}
            </Card>
          ),
          quality: page.quality.length > 0 && (
            <Card title="How well it meets its own points">
              <ul className={styles.lines}>
                {page.quality.map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            </Card>
          ),
          points: (
            <Card title={page.points.title}>
              <ShownTable table={page.points} isLong />
            </Card>
          ),
          remarks: page.remarks.length > 0 && (
            <Card title="Remarks">
              <Remarks remarks={page.remarks} />
            </Card>
          ),
        }}
        main={['picture', 'quality']}
        side={['facts', 'remarks', 'points']}
        narrow={['picture', 'facts', 'quality', 'remarks', 'points']}
      />
      {open && <ChangeMapDialog page={page} onClose={() => setOpen(false)} />}
    </article>
  );
}
