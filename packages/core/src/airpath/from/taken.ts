import type { Remark } from '../../remark/index.ts';

/**
 * What a match rests on, in the order of trust: what a person stated of the model, what stands on the sheet, what is assumed.
 * Keeps one remark for each thing that had to be assumed.
 */
export class Taken {
  readonly assumptions: Remark[] = [];

  /** The first that is known; else what is assumed, and its remark is kept. */
  first<T>(known: readonly (T | null | undefined)[], assumed: () => { value: T; because: Remark }): T {
    for (const one of known) if (one !== null && one !== undefined) return one;
    const { value, because } = assumed();
    this.assumptions.push(because);
    return value;
  }
}
