import type { CardCell, LineStyle, PictureBody } from '@pullbook/charts';
import type { Showing } from '../showing.ts';
import type { Picture } from './picture.ts';

/** A card's table without its words. */
export type CardTable = Omit<Extract<PictureBody, { kind: 'table' }>, 'kind'>;

/** A table as a picture: read out column by column, its last row in full. */
export function tablePicture(table: CardTable, words: { headline: string; subline: string }): Picture {
  const names = table.columns.map(({ text, unit }) => (unit === '' ? text : `${text} (${unit})`));
  const last = table.rows.at(-1)?.map(({ text }, place) => `${names[place]}: ${text || 'no figure'}`) ?? [];
  return {
    ...words,
    body: { kind: 'table', ...table },
    alternative: `A table of ${names.join(', ')}, ${table.rows.length} rows. The last one: ${last.join('; ')}.`,
  };
}

export const cell = (text: string, style: LineStyle = 'ink'): CardCell => ({ text, style });

/** `+3.9`, without its unit, which stands in the heading; '' for what is not finite. */
export const perCentAlone = (show: Showing, ratio: number): string =>
  Number.isFinite(ratio) ? show.perCent(ratio, { sign: true }).replace('\u00a0%', '') : '';
