import type { Peak } from '@pullbook/core/pull';
import {
  decimalsFor,
  displayUnit,
  formatNumber,
  formatQuantity,
  fromInside,
  type QuantityKind,
  type Unit,
  unitFor,
} from '@pullbook/core/quantity';
import type { ViewOptions } from './model.ts';

/** Decimals of the kind in the units shown unless given; `unit` in place of the units' own. */
interface FigureStyle {
  decimals?: number;
  sign?: boolean;
  unit?: Unit;
}

/** Values as words of the page: everything a view says of a figure goes through here, so that it is said one way. */
export interface Showing {
  options: ViewOptions;
  /** `496 hp`: power in a sentence is whole, for no brake repeats closer. */
  power(watt: number): string;
  /** `1.1 psi`, without its sign. */
  boostStep(pascal: number): string;
  /** `6,500 rpm` */
  speed(rpm: number): string;
  /** `4,000 to 6,500 rpm` */
  speedRange(range: readonly [number, number]): string;
  /** `0.4 %` */
  perCent(ratio: number, more?: { sign?: boolean; decimals?: number }): string;
  /** `690 ft`, `210 m`: a height of land, whole. */
  height(metres: number): string;
  /** `0.3 s`, without its sign and with no digit too many. */
  seconds(value: number): string;
  /** `1.021` */
  factor(value: number): string;
  /** A value with its unit, decimals as the kind has them unless given. */
  quantity(value: number, kind: QuantityKind, more?: FigureStyle): string;
  /** The number alone, as a table holds it; '' for what is not finite. */
  number(value: number, kind: QuantityKind, more?: FigureStyle): string;
  unit(kind: QuantityKind): string;
  /** A bare number in the unit shown, for a chart; `null` where there is none. */
  plotted(value: number, kind: QuantityKind): number | null;
  /** `503 hp at 6,450 rpm`, `496 hp at 6,500 rpm, still climbing` */
  peak(peak: Peak, kind: 'power' | 'torque'): string;
}

/** The words in the units and with the decimal mark asked for. */
export function showingIn(options: ViewOptions): Showing {
  const { units: system, decimalMark } = options;
  const shown = { system, decimalMark };
  const heightUnit = unitFor(system === 'us' ? 'ft' : 'm', 'length')!;
  const plain = (value: number, decimals: number, more: { sign?: boolean } = {}) =>
    formatNumber(value, decimals, decimalMark, { ...more, thousands: true });
  const speed = (rpm: number) => formatQuantity(rpm, 'engineSpeed', shown).text;
  const power = (watt: number) => formatQuantity(watt, 'power', { ...shown, decimals: 0 }).text;
  return {
    options,
    power,
    boostStep: (pascal) => formatQuantity(Math.abs(pascal), 'gaugePressure', { ...shown, decimals: 1 }).text,
    speed,
    speedRange: ([low, high]) => `${plain(low, 0)} to ${speed(high)}`,
    perCent: (ratio, { sign = false, decimals = 1 } = {}) =>
      `${plain(100 * ratio, decimals, { sign })}\u00a0%`,
    height: (metres) => formatQuantity(metres, 'length', { ...shown, decimals: 0, unit: heightUnit }).text,
    seconds: (value) => `${String(Number(Math.abs(value).toPrecision(3))).replace('.', decimalMark)}\u00a0s`,
    factor: (value) => plain(value, 3),
    quantity: (value, kind, more = {}) => formatQuantity(value, kind, { ...shown, ...more }).text,
    number: (value, kind, more = {}) =>
      Number.isFinite(value) ? formatQuantity(value, kind, { ...shown, ...more }).number : '',
    unit: (kind) => displayUnit(kind, system).name,
    plotted: (value, kind) =>
      Number.isFinite(value) ? rounded(fromInside(value, displayUnit(kind, system)), kind) : null,
    peak(peak, kind) {
      const figure = formatQuantity(peak.value, kind, { ...shown, decimals: 0 }).text;
      const place = `${figure} at ${speed(wholeTens(peak.atRpm))}`;
      return peak.stillClimbing ? `${place}, still climbing` : place;
    },
  };

  /** Three digits finer than shown: enough for a drawing, short on the wire. */
  function rounded(value: number, kind: QuantityKind): number {
    const fine = 10 ** (decimalsFor(kind, system) + 3);
    return Math.round(value * fine) / fine;
  }
}

/** A peak's place is known to tens of r/min at best. */
export const wholeTens = (rpm: number): number => Math.round(rpm / 10) * 10;
