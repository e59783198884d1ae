import { cellNamed, type Pull, type ShopReading } from '@pullbook/core/pull';
import type { Book } from '@pullbook/store';
import { settingsOf } from './settings.ts';

/** What the shop says of the reading of its pulls: its bin width and its described cells. */
export async function shopReadingOf(book: Book): Promise<ShopReading> {
  const [{ binWidthRpm }, cells] = [await settingsOf(book), await book.cells()];
  return { binWidthRpm, cells };
}

/** What of it a view of this pull rests on, for the key under which the view is remembered. */
export function shopKey({ cell }: Pick<Pull, 'cell'>, shop: ShopReading): unknown[] {
  return [shop.binWidthRpm, cellNamed(shop.cells, cell)?.altitude ?? null];
}
