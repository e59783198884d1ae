import {
  formatNumber,
  formatQuantity,
  heightFigure,
  type QuantityKind,
  toInside,
  writeSaid,
} from '@pullbook/core/quantity';
import type { Shared } from '../shared-options.ts';

type View = Shared['view'];

/** A figure of the JSON edge in the units a person asked for; `–` where there is none. */
export function figure(
  value: number | null,
  unit: string,
  kind: QuantityKind,
  view: View,
  options: { sign?: boolean; decimals?: number } = {},
): string {
  if (value === null) return '–';
  return formatQuantity(toInside(value, unit, kind), kind, {
    system: view.units,
    decimalMark: view.decimalMark,
    ...options,
  }).text;
}

/** `+3.4 %` of a percentage. */
export function percent(value: number | null, view: View): string {
  return value === null ? '–' : `${formatNumber(value, 1, view.decimalMark, { sign: true })} %`;
}

/** A height of land, m, whole: `690 ft`. */
export function height(metres: number | null, view: View): string {
  return metres === null ? '–' : writeSaid('', [heightFigure(metres)], view);
}

/** A bare number with so many decimals. */
export function number(value: number | null, decimals: number, view: View): string {
  return value === null ? '–' : formatNumber(value, decimals, view.decimalMark);
}

/** `2,000 to 6,500 rpm` */
export function window(range: [number, number] | null, view: View): string {
  if (!range) return '–';
  const low = formatNumber(range[0], 0, view.decimalMark, { thousands: true });
  return `${low} to ${figure(range[1], 'rpm', 'engineSpeed', view)}`;
}

/** `503 hp at 6,450 rpm`, `496 hp at 6,500 rpm, still climbing` */
export function peak(
  value: {
    figure: number | null;
    unit: string;
    kind: QuantityKind;
    atRpm: number | null;
    stillClimbing?: boolean;
  },
  view: View,
): string {
  if (value.figure === null) return '–';
  const at = value.atRpm === null ? '' : ` at ${figure(value.atRpm, 'rpm', 'engineSpeed', view)}`;
  return `${figure(value.figure, value.unit, value.kind, view)}${at}${value.stillClimbing ? ', still climbing' : ''}`;
}

/** The highest power of an edge report: `503 hp at 6,450 rpm`. */
export const peakPower = (
  of: { peakPowerKw: number | null; peakPowerRpm: number | null; stillClimbing: boolean },
  view: View,
): string =>
  peak(
    {
      figure: of.peakPowerKw,
      unit: 'kW',
      kind: 'power',
      atRpm: of.peakPowerRpm,
      stillClimbing: of.stillClimbing,
    },
    view,
  );
