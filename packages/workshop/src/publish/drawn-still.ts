import type { StillDescription, StillSize } from '@pullbook/charts';
import type { PublishedNumbers } from '../edge/published-numbers.ts';
import type { FormatOf } from './model.ts';

/** The bytes of one picture. Drawing is loaded only when it is asked for: the rest of the program starts without it. */
export async function drawnStill(
  still: StillDescription,
  size: StillSize,
  format: FormatOf<'still'>,
  numbers: PublishedNumbers,
): Promise<Uint8Array> {
  const { stillPdf, stillPng, stillSvg } = await import('@pullbook/publish');
  if (format === 'svg') return new TextEncoder().encode(stillSvg(still, size, { numbers }));
  return format === 'png' ? stillPng(still, size, { numbers }) : stillPdf(still, size, { numbers });
}
