import { type ChartDescription, pointText } from '@pullbook/charts';
import type { CursorTable } from '@pullbook/views';
import type { ReactNode } from 'react';
import { nearest } from '../../chart/nearest.ts';
import { CombinationKey } from '../../parts/CombinationKey.tsx';
import styles from './present.module.css';
import type { PresentState } from './present-state.ts';

/** A quantity at every place: its columns are the combinations that have it there. */
interface Quantity {
  id: string;
  name: string;
  unit: string;
  columns: { key: string; combination: number | null; cells: string[] }[];
}

function quantitiesOf(table: CursorTable, nodes: number[]): Quantity[] {
  const rows = table.rows.map(({ id, name, unit, cells }) => ({
    id,
    name,
    unit,
    columns: table.columns.flatMap(({ key, combination }, index) => {
      const own = nodes.map((node) => cells[index]?.[node] ?? '');
      return own.some((cell) => cell !== '') ? [{ key, combination, cells: own }] : [];
    }),
  }));
  const gains = (table.gains ?? []).map(({ name, unit, cells }) => ({
    id: `gain ${name}`,
    name,
    unit,
    columns: [{ key: '', combination: null, cells: nodes.map((node) => cells[node] ?? '') }],
  }));
  return [...rows, ...gains].filter(({ columns }) =>
    columns.some(({ cells }) => cells.some((cell) => cell !== '')),
  );
}

/** Where a row of all figures would be smaller, px, each combination has a row of its own. */
const LEAST_WIDE_PX = 20;

/** The exact figures at the speeds that are held or pointed at, to be read from across a room. Looked up, never computed. */
export function Figures({
  chart,
  table,
  places,
  state,
  size,
  roomAbove,
}: {
  chart: ChartDescription;
  table: CursorTable;
  places: readonly number[];
  state: PresentState;
  size: { width: number; height: number };
  /** Height over the curves, where the figures cover nothing but words, px. */
  roomAbove: number;
}) {
  const quantities = quantitiesOf(
    table,
    places.map((at) => nearest(table.at, at)),
  );
  const columns = quantities.reduce((sum, { columns: own }) => sum + own.length, 0);
  const speed = (at: number) => (
    <>
      {pointText(chart, at)}
      {state.held.includes(at) && <small>held</small>}
    </>
  );
  const isTall = size.width < size.height;
  if (isTall) {
    return (
      <div className={styles.sheet} style={{ minHeight: roomAbove }}>
        {places.map((at, place) => (
          <section key={at}>
            <h2>{speed(at)}</h2>
            <dl>
              {quantities.map(({ id, name, unit, columns: own }) => (
                <div key={id}>
                  <dt>
                    {name} <span>{unit}</span>
                  </dt>
                  {own.map(({ key, combination, cells }) => (
                    <dd key={key}>
                      <CombinationKey
                        text={`${key} ${cells[place] || '–'}`.trim()}
                        combination={combination}
                      />
                    </dd>
                  ))}
                </div>
              ))}
            </dl>
          </section>
        ))}
      </div>
    );
  }
  const wide = (0.24 * size.width) / (columns + 1.6);
  if (wide < LEAST_WIDE_PX) {
    return <ManyFigures {...{ quantities, places, speed, size, roomAbove }} />;
  }
  return (
    <div
      className={styles.strip}
      style={{
        minHeight: roomAbove,
        // As large as all columns have room beside the speed, and as the rows have over the curves.
        fontSize: Math.max(14, Math.min(wide, (0.8 * roomAbove) / (1.2 * places.length + 0.9))),
      }}
    >
      <table>
        <thead>
          <tr>
            <td />
            {quantities.map(({ id, name, unit, columns: own }) => (
              <th key={id} scope="colgroup" colSpan={own.length}>
                {name} <span>{unit}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {places.map((at, place) => (
            <tr key={at}>
              <th scope="row">{speed(at)}</th>
              {quantities.flatMap(({ id, columns: own }) =>
                own.map(({ key, combination, cells }, index) => (
                  <td key={`${id} ${key}`} data-first={index === 0}>
                    <CombinationKey text={cells[place] || '–'} combination={combination} />
                    {key !== '' && (
                      <small>
                        <CombinationKey text={key} combination={combination} />
                      </small>
                    )}
                  </td>
                )),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Many combinations, one below the other: it may cover the upper part of the curves. */
function ManyFigures({
  quantities,
  places,
  speed,
  size,
  roomAbove,
}: {
  quantities: readonly Quantity[];
  places: readonly number[];
  speed: (at: number) => ReactNode;
  size: { width: number; height: number };
  roomAbove: number;
}) {
  const rows = new Map(
    quantities.flatMap(({ columns }) => columns.map(({ key, combination }) => [key, combination] as const)),
  );
  const fontSize = Math.min(
    (0.2 * size.width) / (quantities.length * places.length + 1),
    (0.5 * size.height) / (1.3 * (rows.size + 2)),
  );
  return (
    <div
      className={styles.strip}
      data-many="true"
      style={{ minHeight: roomAbove, fontSize: Math.max(14, fontSize) }}
    >
      <table>
        <thead>
          <tr>
            <td />
            {quantities.map(({ id, name, unit }) => (
              <th key={id} scope="colgroup" colSpan={places.length}>
                {name} <span>{unit}</span>
              </th>
            ))}
          </tr>
          <tr>
            <td />
            {quantities.flatMap(({ id }) =>
              places.map((at) => (
                <th key={`${id} ${at}`} scope="col">
                  {speed(at)}
                </th>
              )),
            )}
          </tr>
        </thead>
        <tbody>
          {[...rows].map(([key, combination]) => (
            <tr key={key}>
              <th scope="row">
                <CombinationKey text={key} combination={combination} />
              </th>
              {quantities.flatMap(({ id, columns }) => {
                const own = columns.find((one) => one.key === key);
                return places.map((at, place) => (
                  <td key={`${id} ${at}`}>
                    <CombinationKey text={own?.cells[place] ?? ''} combination={combination} />
                  </td>
                ));
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
