import { formatNumber } from '../quantity/index.ts';

/** `6,500 rpm` */
export const speedText = (rpm: number): string => `${numberText(rpm, 0)} rpm`;

/** `1,234.5` */
export const numberText = (value: number, decimals: number): string =>
  formatNumber(value, decimals, '.', { thousands: true });

/** Row numbers as people count them, from 1: `rows 1-83`. */
export const rowsText = (fromRow: number, toRow: number): string =>
  fromRow === toRow ? `row ${fromRow + 1}` : `rows ${fromRow + 1}-${toRow + 1}`;

/** `12 %` of a ratio. */
export const percentText = (ratio: number, decimals = 0): string => `${numberText(ratio * 100, decimals)} %`;

/** A lag without its sign: `0.3 s`. */
export const lagText = (lagS: number): string => `${Number(Math.abs(lagS).toPrecision(3))} s`;
