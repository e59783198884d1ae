import type { Combination } from '@pullbook/core/combination';
import type { Pull, PullView } from '@pullbook/core/pull';
import { inventedChips } from './chips.ts';
import { momentText } from './date.ts';
import type { Chip, PullRow, ViewOptions } from './model.ts';
import { type Showing, showingIn } from './showing.ts';
import { standardName } from './standard-name.ts';

/** A pull without its channels. */
export type PullHead = Omit<Pull, 'channels'>;

/** A pull as one row of a list. */
export function pullRow(
  { pull, view }: { pull: PullHead; view: PullView },
  combination: Combination | null,
  options: ViewOptions,
): PullRow {
  const show = showingIn(options);
  return {
    id: pull.id,
    name: pull.name,
    combinationId: pull.combinationId,
    combinationName: combination?.name ?? '',
    recordedAt: momentText(pull.recordedAt),
    cell: pull.cell ?? '',
    peakPower: peakText(show, pull, view, 'power'),
    peakTorque: peakText(show, pull, view, 'torque'),
    standard: standardName(view.correction),
    chips: pullChips(pull, view),
  };
}

/** The view's peak; for a summary without a speed the figure alone; '' where there is none. */
export function peakText(show: Showing, pull: PullHead, view: PullView, kind: 'power' | 'torque'): string {
  const peak = kind === 'power' ? view.peakPower : view.peakTorque;
  if (peak && Number.isFinite(peak.atRpm)) return show.peak(peak, kind);
  const remembered = kind === 'power' ? pull.summary?.peakPower : pull.summary?.peakTorque;
  const value = peak?.value ?? remembered ?? null;
  return value === null ? '' : show.quantity(value, kind, { decimals: 0 });
}

export function pullChips(pull: PullHead, view: PullView): Chip[] {
  const chips: Chip[] = [];
  if (pull.form === 'summary') chips.push({ text: `Summary, ${pull.origin}`, tone: 'caution' });
  if (pull.outcome === 'aborted') chips.push({ text: 'Aborted', tone: 'caution' });
  // Where the standard itself reads "as recorded" it stands beside the figures already.
  if (!view.correction.reached && standardName(view.correction) !== 'as recorded')
    chips.push({ text: 'As recorded', tone: 'caution' });
  if (pull.form === 'curve' && !view.curve) chips.push({ text: 'No curve', tone: 'caution' });
  if (pull.combinationId === null) chips.push({ text: 'No combination', tone: 'caution' });
  if (pull.weather === null && pull.form === 'curve') chips.push({ text: 'No weather', tone: 'caution' });
  return [...chips, ...inventedChips(pull.invented)];
}
