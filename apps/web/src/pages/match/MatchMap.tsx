import type { MatchBundle, MatchPage } from '@pullbook/views/match';
import { Link } from '@tanstack/react-router';
import type { Cursor } from '../../chart/cursor.ts';
import { MapChart } from '../../chart/MapChart.tsx';
import { Card } from '../../parts/Card.tsx';
import styles from './match.module.css';

/** Where on the compressor's map each combination runs, with a mark that follows the cursor of the panels. */
export function MatchMap({
  page: { map, cursor: table },
  bundle,
  cursor,
}: {
  page: MatchPage;
  bundle: MatchBundle;
  cursor: Cursor;
}) {
  return (
    <Card title="On the compressor’s map">
      {map === null ? (
        <p className={styles.plain}>
          The combinations have different compressors: there is no one map to show them on.
        </p>
      ) : (
        <MapChart map={map} follow={{ cursor, table }} />
      )}
      <Source bundle={bundle} />
    </Card>
  );
}

/** Which maps it is, and where one is only assumed. */
function Source({ bundle }: { bundle: MatchBundle }) {
  const maps = bundle.combinations.map(({ input }) => input.compressor.map);
  const kept = new Map(maps.flatMap(({ mapId, name }) => (isInBook(mapId) ? [[mapId, name] as const] : [])));
  const isAssumed = maps.some(({ shape }) => shape.kind === 'generic');
  return (
    <>
      {[...kept].map(([id, name]) => (
        <p key={id} className={styles.soft}>
          <Link to="/maps/$id" params={{ id }}>
            {name}
          </Link>
        </p>
      ))}
      {isAssumed && (
        <p className={styles.soft}>
          <strong>Assumed:</strong> a generic stage stands in for a measured map, and the bands are as wide as
          that. <Link to="/maps">Add the map</Link>
        </p>
      )}
    </>
  );
}

/** A stage that was made of a sheet's own lines has no page. */
const isInBook = (mapId: string | null): mapId is string => mapId !== null && !mapId.startsWith('sheet ');
