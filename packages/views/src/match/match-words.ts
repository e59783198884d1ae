import type { MatchFigure, MatchState } from '@pullbook/core/airpath';
import {
  displayUnit,
  formatNumber,
  fromInside,
  type QuantityKind,
  type Unit,
  unitFor,
} from '@pullbook/core/quantity';
import type { ViewOptions } from '../model.ts';
import type { Showing } from '../showing.ts';
import type { MatchedInView } from './match-in-view.ts';

/** How a figure of a match is called and shown. */
interface FigureWords {
  name: string;
  kind: QuantityKind;
  decimals: Record<ViewOptions['units'], number>;
}

/** The figures that a page shows, in the order of reading. */
export const SHOWN_FIGURES = {
  brakePower: { name: 'Power', kind: 'power', decimals: { us: 1, si: 1 } },
  brakeTorque: { name: 'Torque', kind: 'torque', decimals: { us: 1, si: 1 } },
  boost: { name: 'Boost', kind: 'gaugePressure', decimals: { us: 1, si: 1 } },
  manifoldTemperature: { name: 'Charge', kind: 'temperature', decimals: { us: 0, si: 1 } },
  dischargeTemperature: { name: 'Behind the compressor', kind: 'temperature', decimals: { us: 0, si: 1 } },
  airFlow: { name: 'Air', kind: 'massFlow', decimals: { us: 1, si: 3 } },
  impellerSpeedRpm: { name: 'Impeller', kind: 'engineSpeed', decimals: { us: 0, si: 0 } },
  pressureRatio: { name: 'Pressure ratio', kind: 'ratio', decimals: { us: 2, si: 2 } },
  efficiency: { name: 'Efficiency', kind: 'ratio', decimals: { us: 0, si: 0 } },
  drivePower: { name: 'Drive', kind: 'power', decimals: { us: 1, si: 1 } },
  surgeMargin: { name: 'To surge', kind: 'ratio', decimals: { us: 0, si: 0 } },
  chokeMargin: { name: 'To choke', kind: 'ratio', decimals: { us: 0, si: 0 } },
} as const satisfies Partial<Record<MatchFigure, FigureWords>>;
export type ShownFigure = keyof typeof SHOWN_FIGURES;

/** A flow on a map: in the units that maps are told in. */
export function airFlowUnit({ options }: Showing): { unit: Unit; decimals: number } {
  const isUs = options.units === 'us';
  return { unit: unitFor(isUs ? 'lb/min' : 'kg/s', 'massFlow')!, decimals: isUs ? 1 : 3 };
}

const PERCENT = unitFor('%', 'ratio')!;

/** Shares in per cent, air in the map's unit, the rest as everywhere. */
function unitOf(show: Showing, figure: ShownFigure): Unit | undefined {
  if (figure === 'airFlow') return airFlowUnit(show).unit;
  return ['efficiency', 'surgeMargin', 'chokeMargin'].includes(figure) ? PERCENT : undefined;
}

export function figureUnit(show: Showing, figure: ShownFigure, isDifference = false): string {
  const { kind } = SHOWN_FIGURES[figure];
  return unitOf(show, figure)?.name ?? show.unit(isDifference ? differenceKindOf(kind) : kind);
}

interface WriterStyle {
  sign?: boolean;
  decimals?: number;
  isDifference?: boolean;
}

/** Writes the number alone, as a table has it; '' for what is not finite. For many values: the unit is looked up once. */
export function figureWriter(
  show: Showing,
  figure: ShownFigure,
  { sign = false, decimals, isDifference = false }: WriterStyle = {},
): (value: number) => string {
  const { kind, decimals: usual } = SHOWN_FIGURES[figure];
  const { units, decimalMark } = show.options;
  const unit = unitOf(show, figure) ?? displayUnit(isDifference ? differenceKindOf(kind) : kind, units);
  const digits = decimals ?? usual[units];
  const style = { sign, thousands: true };
  return (value) =>
    Number.isFinite(value) ? formatNumber(fromInside(value, unit), digits, decimalMark, style) : '';
}

/** One number alone. */
export const figureNumber = (
  show: Showing,
  figure: ShownFigure,
  value: number,
  style: WriterStyle = {},
): string => figureWriter(show, figure, style)(value);

/** The same with its unit. */
export function figureText(
  show: Showing,
  figure: ShownFigure,
  value: number,
  more: WriterStyle = {},
): string {
  const unit = figureUnit(show, figure, more.isDifference);
  return `${figureNumber(show, figure, value, more)}${unit === '' ? '' : `\u00a0${unit}`}`;
}

/** Writes a band, in the decimals of its figure: `484 to 508`. '' without one. */
export function rangeWriter(
  show: Showing,
  figure: ShownFigure,
  style: { decimals?: number; isDifference?: boolean } = {},
): (range: readonly [number, number] | null) => string {
  const plain = figureWriter(show, figure, style);
  const signed = figureWriter(show, figure, { ...style, sign: true });
  return (range) => {
    if (range === null) return '';
    const [low, high] = range;
    const write = style.isDifference === true && low < 0 && high > 0 ? signed : plain;
    return `${write(low)} to ${write(high)}`;
  };
}

/** One band. */
export const rangeNumbers = (
  show: Showing,
  figure: ShownFigure,
  range: readonly [number, number] | null,
  style: { decimals?: number; isDifference?: boolean } = {},
): string => rangeWriter(show, figure, style)(range);

/** Makes bare numbers for a chart, no finer than a drawing needs; `null` where there is none. */
export function figurePlotter(show: Showing, figure: ShownFigure): (value: number) => number | null {
  const { kind, decimals } = SHOWN_FIGURES[figure];
  const { units } = show.options;
  const unit = unitOf(show, figure) ?? displayUnit(kind, units);
  const fine = 10 ** (decimals[units] + 3);
  return (value) => (Number.isFinite(value) ? Math.round(fromInside(value, unit) * fine) / fine : null);
}

const differenceKindOf = (kind: QuantityKind): QuantityKind =>
  kind === 'temperature' ? 'temperatureDifference' : kind;

/** `B, longer cam`; the key alone where it has no name. */
export function matchedName({ combination: { key, name } }: MatchedInView): string {
  return name === '' ? key : `${key}, ${name}`;
}

/** What a state means, for whoever reads it in a table; '' where nothing is to be said. */
export const STATE_WORDS: Record<MatchState, string> = {
  'on the map': '',
  'beyond the measured map': 'beyond the measured map',
  'surge risk': 'left of the highest pressure: surge risk',
  surge: 'in surge',
  choked: 'choked',
  bypassed: 'bypassed',
  'no solution': 'no solution',
};

/** Displayed decimals decide whether two figures read alike. */
export function readsAsNothing(show: Showing, figure: ShownFigure, difference: number): boolean {
  return !/[1-9]/u.test(figureNumber(show, figure, difference, { isDifference: true }));
}
