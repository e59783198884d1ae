import type { ChartDescription, StillDescription } from '@pullbook/charts';

/** The curves of a picture that can be pointed at; `null`: it has none. */
export function chartOf({ body }: StillDescription): ChartDescription | null {
  return body.kind === 'stack' ? body.chart : null;
}
