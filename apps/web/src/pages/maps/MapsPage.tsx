import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { mapsQuestion } from '../../api/maps.ts';
import { MapChart } from '../../chart/MapChart.tsx';
import { smallMapSize } from '../../chart/map-size.ts';
import { Chips } from '../../parts/Chips.tsx';
import listStyles from '../../parts/list.module.css';
import { Column, PageHead } from '../../parts/PageHead.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { AddMap } from './AddMap.tsx';
import styles from './maps.module.css';

/** The compressor maps of the book; a combination's sheet names its own. */
export default function MapsPage() {
  const maps = useQuery(mapsQuestion(useViewChoices()));
  return (
    <>
      <PageHead title="Compressor maps" />
      <Trouble of={maps.error} />
      {maps.isPending && <Waiting />}
      <Column>
        {maps.data?.length === 0 && (
          <p>
            None yet. Without one a match takes a generic stage, scaled from a rated point, and says so: its
            band is wide. A measured map narrows it.
          </p>
        )}
        {maps.data !== undefined && maps.data.length > 0 && (
          <ul className={styles.cards}>
            {maps.data.map(({ id, name, chips, facts, quality, picture }) => (
              <li key={id} className={styles.card}>
                {picture !== null && <MapChart map={picture} size={smallMapSize} />}
                <div>
                  <Link className={listStyles.name} to="/maps/$id" params={{ id }}>
                    {name}
                  </Link>
                  <p className={listStyles.soft}>{facts}</p>
                  <p className={listStyles.soft}>{quality}</p>
                  <Chips chips={chips} />
                </div>
              </li>
            ))}
          </ul>
        )}
        <AddMap />
      </Column>
    </>
  );
}
