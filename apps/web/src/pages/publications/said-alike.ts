import type { ShownPublication } from '@pullbook/views/publish';

/** Publications of one trial and one day that say the same and hold alike: the first of them, and those like it. */
export interface SaidAlike {
  first: ShownPublication;
  others: ShownPublication[];
}

/** In their order, put together where one would only say again what stands there already. `dayOf`: of an instant. */
export function saidAlike(
  publications: readonly ShownPublication[],
  dayOf: (instant: string) => string,
): SaidAlike[] {
  const groups = new Map<string, SaidAlike>();
  for (const one of publications) {
    const { trialId, at, question, sentence, stale, privateToo } = one;
    const key = JSON.stringify([trialId, dayOf(at), question, sentence, stale, privateToo]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { first: one, others: [] });
    else group.others.push(one);
  }
  return [...groups.values()];
}
