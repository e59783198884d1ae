import type { Combination } from '@pullbook/core/combination';
import type { Pull, PullView } from '@pullbook/core/pull';
import { audienceChips } from './audience.ts';
import { inventedChips } from './chips.ts';
import { momentText } from './date.ts';
import type { Chip, PullRow, ViewOptions } from './model.ts';
import { type Showing, showingIn } from './showing.ts';
import { standardName } from './standard-name.ts';

/** A pull without its channels. */
export type PullHead = Omit<Pull, 'channels'>;

/** Of a view only what a list shows: it can be remembered as JSON. */
export interface ListView extends Pick<PullView, 'correction' | 'peakPower' | 'peakTorque'> {
  /** r/min, of the accepted window, else of the curve; `null`: neither. */
  windowRpm: [low: number, high: number] | null;
  hasCurve: boolean;
}

/** What a list shows of a view. */
export function listView(view: PullView): ListView {
  const speeds = view.curve?.engineSpeedRpm;
  const [low, high] = [speeds?.[0], speeds?.[speeds.length - 1]];
  const ofCurve: ListView['windowRpm'] = low === undefined || high === undefined ? null : [low, high];
  return {
    correction: view.correction,
    peakPower: view.peakPower,
    peakTorque: view.peakTorque,
    windowRpm: view.window?.windowRpm ?? ofCurve,
    hasCurve: view.curve !== null,
  };
}

/** A pull as one row of a list. */
export function pullRow(
  { pull, view }: { pull: PullHead; view: ListView },
  combination: Pick<Combination, 'name'> | null,
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
export function peakText(
  show: Showing,
  pull: PullHead,
  view: Pick<PullView, 'peakPower' | 'peakTorque'>,
  kind: 'power' | 'torque',
): string {
  const peak = kind === 'power' ? view.peakPower : view.peakTorque;
  if (peak && Number.isFinite(peak.atRpm)) return show.peak(peak, kind);
  const remembered = kind === 'power' ? pull.summary?.peakPower : pull.summary?.peakTorque;
  const value = peak?.value ?? remembered ?? null;
  return value === null ? '' : show.quantity(value, kind, { decimals: 0 });
}

export function pullChips(pull: PullHead, view: ListView): Chip[] {
  const chips: Chip[] = [];
  if (pull.form === 'summary') chips.push({ text: `Summary, ${pull.origin}`, tone: 'caution' });
  if (pull.outcome === 'aborted') chips.push({ text: 'Aborted', tone: 'caution' });
  // Where the standard itself reads "as recorded" it stands beside the figures already.
  if (!view.correction.reached && standardName(view.correction) !== 'as recorded')
    chips.push({ text: 'As recorded', tone: 'caution' });
  if (pull.form === 'curve' && !view.hasCurve) chips.push({ text: 'No curve', tone: 'caution' });
  if (pull.combinationId === null) chips.push({ text: 'No combination', tone: 'caution' });
  if (pull.weather === null && pull.form === 'curve') chips.push({ text: 'No weather', tone: 'caution' });
  return [...chips, ...audienceChips(pull.audience), ...inventedChips(pull.invented)];
}
