import type { LineStyle, ThemeName } from './model.ts';
import { THEMES } from './theme.ts';

export type EndMark = 'circle' | 'square' | 'triangle' | 'diamond' | 'wedge' | 'plus' | 'hexagon' | 'bar';

/** How one combination looks on every page: told apart by colour, by dash and by end mark, each alone enough. */
export interface CombinationStyle {
  light: string;
  dark: string;
  /** Dash and gap in turn, in widths of the line; empty: solid. */
  dash: readonly number[];
  mark: EndMark;
}

/** Colours keep 4.5:1 against their grounds, since the names at the lines' ends are written in them. */
export const PALETTE: readonly CombinationStyle[] = [
  { light: '#0a5fa8', dark: '#7cc0f5', dash: [], mark: 'circle' },
  { light: '#b4470b', dark: '#ffa263', dash: [4, 2], mark: 'square' },
  { light: '#12776a', dark: '#4fcfa6', dash: [1.3, 1.5], mark: 'triangle' },
  { light: '#7a1f6e', dark: '#e27bc0', dash: [6, 1.6, 1.3, 1.6], mark: 'diamond' },
  { light: '#5b3000', dark: '#f0dd4a', dash: [9, 3], mark: 'wedge' },
  { light: '#7d54d9', dark: '#8b93ff', dash: [5, 1.5, 1.3, 1.5, 1.3, 1.5], mark: 'plus' },
  { light: '#1e249e', dark: '#a9e89a', dash: [2.6, 1.4], mark: 'hexagon' },
  { light: '#9b2f4f', dark: '#b8925f', dash: [8, 1.6, 2.6, 1.6], mark: 'bar' },
];

export interface DrawnStyle {
  colour: string;
  dash: readonly number[];
  mark: EndMark;
}

/** Colour, dash and mark of a line. A ninth combination takes the first look again. */
export function drawnStyle(style: LineStyle, theme: ThemeName): DrawnStyle {
  if (style === 'ink') return { colour: THEMES[theme].ink, dash: [], mark: 'circle' };
  const combination = PALETTE[style.combination % PALETTE.length];
  if (!combination)
    throw new Error(`No combination ${style.combination}: the index starts at 0 and is whole.`);
  return { colour: combination[theme], dash: combination.dash, mark: combination.mark };
}

export const isSameStyle = (one: LineStyle, other: LineStyle): boolean =>
  one === 'ink' || other === 'ink' ? one === other : one.combination === other.combination;
