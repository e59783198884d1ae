import type { Figure, Said, SaidParts } from '../remark/index.ts';
import { formatQuantity } from './format.ts';
import type { DecimalMark, QuantityKind, UnitSystem } from './model.ts';
import { unitFor } from './unit-table.ts';

export interface FigureOptions {
  /** In the plain message, where it is not SI with the decimals of the kind. */
  plain?: string;
  decimals?: number;
  units?: { us: string; si: string };
  isBare?: true;
}

/** How figures are written: units and decimal mark. */
export interface FigureStyle {
  units: UnitSystem;
  decimalMark: DecimalMark;
}

/**
 * A value of the inside unit as a figure of a sentence; see `said`.
 *
 * @example figureOf(98_200, 'absolutePressure').plain // '98.20 kPa'
 */
export function figureOf(value: number, kind: QuantityKind, options: FigureOptions = {}): Figure {
  const { plain, ...style } = options;
  return plain === undefined ? plainly({ value, kind, ...style }) : { plain, value, kind, ...style };
}

/** The number of a figure alone. */
export const withoutUnit = (figure: Figure): Figure => plainly({ ...figure, isBare: true });

/** Whether two figures are written the same in either system of units. */
export const readsAlike = (one: Figure, other: Figure): boolean =>
  (['us', 'si'] as const).some((units) => {
    const style = { units, decimalMark: '.' } as const;
    return written(one, style) === written(other, style);
  });

function plainly(figure: Omit<Figure, 'plain'>): Figure {
  const plain = written({ ...figure, plain: '–' }, { units: 'si', decimalMark: '.' });
  return { ...figure, plain: plain.replace('\u00a0', ' ') };
}

/** `6,500 rpm` */
export const speedFigure = (rpm: number): Figure => figureOf(rpm, 'engineSpeed');

/** `2,000-6,500 rpm`, or with other words between. */
export function speedRange(low: number, high: number, between = '-'): Said {
  return rangeOf(low, high, 'engineSpeed', between);
}

/** Two figures of one kind with the unit once: `10.0 to 90.0 °C`. */
export function rangeOf(
  low: number,
  high: number,
  kind: QuantityKind,
  between = ' to ',
  options: FigureOptions = {},
): Said {
  const parts = [figureOf(low, kind, { ...options, isBare: true }), between, figureOf(high, kind, options)];
  return { text: plainOf(parts), parts };
}

/** `12 %` of a ratio. */
export const percentFigure = (ratio: number, decimals = 0): Figure =>
  figureOf(ratio, 'ratio', { units: { us: '%', si: '%' }, decimals });

/** A bare number: `1.0213`. */
export const numberFigure = (value: number, decimals: number): Figure =>
  figureOf(value, 'ratio', { decimals });

/** A height of land, whole: `210 m`, `690 ft`. */
export const heightFigure = (metres: number, plain?: string): Figure =>
  figureOf(metres, 'length', {
    units: { us: 'ft', si: 'm' },
    decimals: 0,
    ...(plain === undefined ? {} : { plain }),
  });

/**
 * A text whose figures are known, in the units and with the decimal mark asked for.
 *
 * @example writeSaid('', said`It hides ${figureOf(10, 'torque')}.`.parts, { units: 'us', decimalMark: ',' }) // 'It hides 7,4 lb-ft.'
 */
export function writeSaid(plain: string, parts: SaidParts | undefined, style: FigureStyle): string {
  return parts?.map((part) => (typeof part === 'string' ? part : written(part, style))).join('') ?? plain;
}

const plainOf = (parts: SaidParts): string =>
  parts.map((part) => (typeof part === 'string' ? part : part.plain)).join('');

function written(figure: Figure, { units: system, decimalMark }: FigureStyle): string {
  const { value, units, decimals, isBare, plain } = figure;
  if (!Number.isFinite(value)) return plain;
  const kind = figure.kind as QuantityKind;
  const unit = units === undefined ? undefined : unitFor(units[system], kind);
  if (unit === null) throw new Error(`no unit "${units?.[system]}" of ${kind} in the table`);
  const shown = formatQuantity(value, kind, {
    system,
    decimalMark,
    ...(decimals === undefined ? {} : { decimals }),
    ...(unit === undefined ? {} : { unit }),
  });
  return isBare ? shown.number : shown.text;
}
