import type { ThemeName } from './model.ts';

/** Colours of pages and pictures that belong to no combination. */
export interface Theme {
  /** Ground of a page and of a still. */
  paper: string;
  /** Ground of a card, and of a chart on it. */
  card: string;
  ink: string;
  softInk: string;
  rule: string;
  grid: string;
  quietChip: string;
  cautionChip: string;
  cautionInk: string;
}

export const THEMES: Record<ThemeName, Theme> = {
  light: {
    paper: '#f4f6f7',
    card: '#ffffff',
    ink: '#14202b',
    softInk: '#586672',
    rule: '#d3dbe1',
    grid: '#e6ebee',
    quietChip: '#e3ebf1',
    cautionChip: '#fbecc8',
    cautionInk: '#7a4d00',
  },
  dark: {
    paper: '#10171d',
    card: '#17212a',
    ink: '#eef3f6',
    softInk: '#9fb0bd',
    rule: '#2c3a45',
    grid: '#22303a',
    quietChip: '#24343f',
    cautionChip: '#3a3016',
    cautionInk: '#f3c86d',
  },
};
