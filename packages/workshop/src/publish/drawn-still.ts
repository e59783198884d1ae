import type { StillDescription, StillSize } from '@pullbook/charts';
import type { FormatOf } from './model.ts';

/** The bytes of one picture, with its figures laid into it. Drawing is loaded only when it is asked for: the rest of the program starts without it. */
export async function drawnStill(
  still: StillDescription,
  size: StillSize,
  format: FormatOf<'still'>,
  numbers: object,
): Promise<Uint8Array> {
  const { stillPdf, stillPng, stillSvg } = await import('@pullbook/publish');
  if (format === 'svg') return new TextEncoder().encode(stillSvg(still, size, { numbers }));
  return format === 'png' ? stillPng(still, size, { numbers }) : stillPdf(still, size, { numbers });
}
