import type { SectionId } from '../combination/index.ts';
import type { SheetEdit } from './model.ts';

/** Digits of a number as it is written on a sheet: enough that reading it back gives the number, short where it was short. */
const DIGITS = 12;

const digits = (value: number): string => `${Number(value.toPrecision(DIGITS))}`;

/** Values of the inside unit as a person would enter them. */
export const ENTERED = {
  length: (metres: number) => `${digits(metres * 1000)} mm`,
  share: (share: number) => `${digits(share * 100)} %`,
  pressure: (pascal: number) => `${digits(pascal / 1000)} kPa`,
  massFlow: (kilogramPerSecond: number) => `${digits(kilogramPerSecond)} kg/s`,
  temperature: (kelvin: number) => `${digits(kelvin - 273.15)} °C`,
  engineSpeed: (rpm: number) => `${digits(rpm)} rpm`,
  number: digits,
} as const;

export const edit = (section: SectionId, field: string, text: string | null): SheetEdit => ({
  section,
  field,
  text,
});
