import type { QuantityKind } from '@pullbook/core/quantity';
import type { RungCurve } from '@pullbook/core/reach';
import type { CursorTable } from '../model.ts';
import type { Showing } from '../showing.ts';
import type { ReachInView } from './reach-in-view.ts';
import { bandValues, drawnOf, type Figure, measuredValues, valuesOf } from './rung-chart.ts';

interface Row {
  id: string;
  name: string;
  kind: QuantityKind;
  decimals?: number;
  of(curve: RungCurve): readonly number[] | null;
}

/** Whole numbers where a decimal would say more than the bands do. */
const ROWS: readonly Row[] = [
  { id: 'power', name: 'Power', kind: 'power', decimals: 0, of: (curve) => valuesOf(curve, 'power') },
  { id: 'torque', name: 'Torque', kind: 'torque', decimals: 0, of: (curve) => valuesOf(curve, 'torque') },
  { id: 'boost', name: 'Boost', kind: 'gaugePressure', of: (curve) => valuesOf(curve, 'boost') },
  { id: 'airFlow', name: 'Air', kind: 'massFlow', decimals: 0, of: ({ airFlow }) => airFlow },
  { id: 'fuelFlow', name: 'Fuel', kind: 'massFlow', decimals: 0, of: ({ fuelFlow }) => fuelFlow },
  {
    id: 'impellerSpeedRpm',
    name: 'Impeller',
    kind: 'engineSpeed',
    of: ({ impellerSpeedRpm }) => impellerSpeedRpm,
  },
  {
    id: 'pressureRatio',
    name: 'Pressure ratio',
    kind: 'ratio',
    decimals: 2,
    of: ({ map }) => map?.pressureRatio ?? null,
  },
];

/** Figures at every engine speed that is drawn: a column for the engine as it is, one for the rung, one for what was measured. */
export function rungCursor(view: ReachInView): CursorTable {
  const { show, bundle, combination, chosen } = view;
  const drawn = drawnOf(view);
  const at = [...new Set(drawn.flatMap(({ curve }) => curve.engineSpeedRpm))].sort(
    (one, other) => one - other,
  );
  const measured = bundle?.measured ?? null;
  const rows = ROWS.flatMap(({ id, name, kind, decimals, of }): CursorTable['rows'] => {
    const write = writer(show, kind, decimals);
    const own = drawn.map(({ curve }) => cellsOf(at, curve.engineSpeedRpm, of(curve), write));
    if (own.every((cells) => cells.every((cell) => cell === ''))) return [];
    const pulled = measured === null || !isMeasured(id) ? null : measuredValues(measured, id);
    const beside = measured === null ? [] : [cellsOf(at, measured.engineSpeedRpm, pulled, write)];
    return [{ id, name, unit: show.unit(kind), cells: [...own, ...beside] }];
  });
  const bands = drawn.flatMap(({ key, curve }) =>
    (['power', 'boost'] as const).flatMap((figure): NonNullable<CursorTable['gains']> => {
      const band = bandValues(curve, figure);
      if (band === null) return [];
      const kind = figure === 'power' ? 'power' : 'gaugePressure';
      const write = writer(show, kind, figure === 'power' ? 0 : undefined);
      const place = nodesBy(curve.engineSpeedRpm);
      return [
        {
          name: `${figure === 'power' ? 'Power' : 'Boost'}, ${key}, 95\u00a0% at this speed`,
          unit: show.unit(kind),
          cells: at.map((rpm) => {
            const node = place.get(rpm);
            return node === undefined ? '' : `${write(band.low[node]!)} to ${write(band.high[node]!)}`;
          }),
        },
      ];
    }),
  );
  return {
    at,
    columns: [
      ...drawn.map(({ key, style }) => ({ key, combination: style === 'ink' ? null : style.combination })),
      ...(measured === null ? [] : [{ key: 'Now measured', combination }]),
    ],
    rows,
    ...(bands.length === 0 ? {} : { gains: bands }),
    start: Math.max(0, at.indexOf(chosen?.peakPower.atRpm ?? Number.NaN)),
  };
}

const isMeasured = (id: string): id is Figure => id === 'power' || id === 'torque' || id === 'boost';

const writer =
  (show: Showing, kind: QuantityKind, decimals?: number) =>
  (value: number): string =>
    show.number(value, kind, decimals === undefined ? {} : { decimals });

const nodesBy = (speeds: readonly number[]): Map<number, number> =>
  new Map(speeds.map((rpm, node) => [rpm, node]));

function cellsOf(
  at: readonly number[],
  speeds: readonly number[],
  values: readonly number[] | null,
  write: (value: number) => string,
): string[] {
  const place = nodesBy(speeds);
  return at.map((rpm) => {
    const node = place.get(rpm);
    return node === undefined || values === null ? '' : write(values[node] ?? Number.NaN);
  });
}
