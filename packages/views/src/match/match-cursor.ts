import type { CursorTable } from '../model.ts';
import { bandAt, figureAt, type MatchedInView, type MatchInView, toldSpeed } from './match-in-view.ts';
import { figureUnit, figureWriter, rangeWriter, SHOWN_FIGURES, type ShownFigure } from './match-words.ts';

/** What the book holds of a combination under the figures of a match. */
const MEASURED_AS: Partial<Record<ShownFigure, 'power' | 'torque' | 'boost' | 'chargeTemperature'>> = {
  brakePower: 'power',
  brakeTorque: 'torque',
  boost: 'boost',
  manifoldTemperature: 'chargeTemperature',
};
/** Figures whose bands stand beside the cursor. */
const BANDED = ['brakePower', 'boost', 'manifoldTemperature', 'drivePower'] as const;

/**
 * Exact figures at every engine speed that some match has: a column a combination, one for each difference to the reference, one
 * for what was measured of each. Bands for one speed alone stand under them.
 */
export function matchCursor(view: MatchInView): CursorTable {
  const { matched, reference } = view;
  const at = [...new Set(matched.flatMap(({ curve }) => curve.engineSpeedRpm))].sort(
    (one, other) => one - other,
  );
  const pulled = matched.filter(({ combination }) => combination.measured !== null);
  const others = matched.slice(1);
  const rows = (Object.keys(SHOWN_FIGURES) as ShownFigure[]).flatMap((figure): CursorTable['rows'] => {
    const write = figureWriter(view.show, figure);
    const writeDifference = figureWriter(view.show, figure, { sign: true, isDifference: true });
    const own = matched.map((one) => at.map((rpm) => write(figureAt(one, figure, rpm))));
    if (own.every((cells) => cells.every((cell) => cell === ''))) return [];
    const measured = pulled.map((one) => at.map((rpm) => write(measuredAt(one, figure, rpm))));
    const differences = others.map((one) =>
      at.map((rpm) => {
        const before = reference === null ? Number.NaN : figureAt(reference, figure, rpm);
        return writeDifference(figureAt(one, figure, rpm) - before);
      }),
    );
    return [
      {
        id: figure,
        name: SHOWN_FIGURES[figure].name,
        unit: figureUnit(view.show, figure),
        cells: [...own, ...differences, ...measured],
      },
    ];
  });
  const bands = bandRows(view, at);
  return {
    at,
    columns: [
      ...matched.map(({ combination: { key, combination } }) => ({ key, combination })),
      ...others.map(({ combination: { key } }) => ({
        key: `${key} − ${reference?.combination.key}`,
        combination: null,
      })),
      ...pulled.map(({ combination: { key, combination } }) => ({ key: `${key} measured`, combination })),
    ],
    rows,
    ...(bands.length === 0 ? {} : { gains: bands }),
    start: Math.max(0, at.indexOf(toldSpeed(view) ?? Number.NaN)),
  };
}

function measuredAt({ combination: { measured } }: MatchedInView, figure: ShownFigure, rpm: number): number {
  const channel = MEASURED_AS[figure];
  const node = measured?.engineSpeedRpm.indexOf(rpm) ?? -1;
  return (channel === undefined ? null : measured?.[channel])?.[node] ?? Number.NaN;
}

function bandRows(
  { matched, reference, show }: MatchInView,
  at: readonly number[],
): NonNullable<CursorTable['gains']> {
  return BANDED.flatMap((figure) =>
    matched.flatMap((one) => {
      const { key } = one.combination;
      const rows = [
        { name: `${key}`, bands: one.bands, isDifference: false },
        { name: `${key} − ${reference?.combination.key}`, bands: one.difference, isDifference: true },
      ];
      return rows.flatMap(({ name, bands, isDifference }) => {
        if (bands === null) return [];
        const write = rangeWriter(show, figure, { isDifference });
        return [
          {
            name: `${SHOWN_FIGURES[figure].name}, ${name}, 95\u00a0% at this speed`,
            unit: figureUnit(show, figure, isDifference),
            cells: at.map((rpm) => write(bandAt(one, bands, figure, rpm))),
          },
        ];
      });
    }),
  );
}
