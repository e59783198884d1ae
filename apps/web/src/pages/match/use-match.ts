import type { MatchBands, MatchCase } from '@pullbook/core/airpath';
import {
  type BandsThatCame,
  bandCases,
  bandsAtHand,
  type MatchBundle,
  type MatchPage,
  matchPage,
  revivedBands,
  type WhatIf,
  type WhatIfText,
  whatIfFromText,
} from '@pullbook/views/match';
import { useQuery } from '@tanstack/react-query';
import { useMemo, useRef } from 'react';
import { bandsQuestion, type MatchOf } from '../../api/match.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import { useSettled } from '../combination/use-settled.ts';

/** A match with what is tried on it, worked out in the page; its bands come from the server a moment later. */
export interface Match {
  page: MatchPage;
  /** Bands are still on their way. */
  isWaiting: boolean;
  trouble: Error | null;
}

export function useMatch(of: MatchOf, bundle: MatchBundle, text: WhatIfText): Match {
  const view = useViewChoices();
  const written = JSON.stringify(text);
  const whatIf = useReadable(bundle, written);
  const settled = useSettled(whatIf);
  const cases = useMemo(() => bandCases(bundle, settled), [bundle, settled]);
  const shown = useMemo(
    () => (whatIf === settled ? cases : bandCases(bundle, whatIf)),
    [bundle, whatIf, settled, cases],
  );
  const asked = useQuery(bandsQuestion([of.kind, of.id, nameOf(bundle), settled], cases));
  const came = useLast(asked.data, cases);
  // Bands of something else that was tried are no bands of this; those of the rest stay.
  const bands = useMemo(() => bandsAtHand(came, shown), [came, shown]);
  const page = useMemo(
    () => matchPage({ bundle, whatIf, bands }, { units: view.units, decimalMark: view.decimalMark }),
    [bundle, whatIf, bands, view.units, view.decimalMark],
  );
  return { page, isWaiting: came?.cases !== shown && asked.error === null, trouble: asked.error };
}

/** The bands that came last, with what they are of; kept until the next come. */
function useLast(data: MatchBands | undefined, cases: readonly MatchCase[]): BandsThatCame | null {
  const last = useRef<BandsThatCame | null>(null);
  return useMemo(() => {
    if (data !== undefined) last.current = { cases, bands: revivedBands(data) };
    return last.current;
  }, [data, cases]);
}

/** What is tried; while something typed cannot be read, what was tried before stands. */
function useReadable(bundle: MatchBundle, written: string): WhatIf | null {
  const last = useRef<WhatIf | null>(null);
  return useMemo(() => {
    const read = whatIfFromText(JSON.parse(written) as WhatIfText, bundle);
    if (read.ok) last.current = read.value;
    return last.current;
  }, [bundle, written]);
}

const names = new WeakMap<MatchBundle, number>();
let named = 0;

/** A short name for what a match rests on, in place of all its figures. */
function nameOf(bundle: MatchBundle): number {
  const known = names.get(bundle);
  if (known !== undefined) return known;
  named += 1;
  names.set(bundle, named);
  return named;
}
