import type { ChartDescription, PictureBody } from '@pullbook/charts';
import { atMostPerCent, bandText, gainDecimals } from '../band-text.ts';
import { type SaidGain, saidGains } from '../said-gain.ts';
import { type CombinationInTrial, fullName, type TrialInView } from '../trial-in-view.ts';
import { listed } from '../wording.ts';
import { claimInTwo } from './claim-words.ts';
import { type Scale, stackAt } from './one-scale.ts';
import { channelPanel } from './panels.ts';
import type { NamedPicture } from './picture.ts';

type Number = Omit<Extract<PictureBody, { kind: 'number' }>, 'kind' | 'chart'>;

/**
 * The smallest picture: one number with its band, and two curves. Only a clear or a likely gain is shown as one; what is within
 * the noise shows the band instead, and what has no gain a number that claims none.
 */
export function thumbnail(view: TrialInView, scale: Scale | null): NamedPicture[] {
  const shown = numberShown(view);
  if (shown === null) return [];
  const { number, of } = shown;
  const body: PictureBody = { kind: 'number', ...number, chart: bareCurves(view, scale, of) };
  return [
    {
      name: 'thumbnail',
      key: null,
      title: 'Thumbnail',
      ...claimInTwo(view),
      // The number answers it: the claim in words would be the same number twice.
      headline: view.trial.question,
      body,
      alternative: `${[number.number, number.unit].filter(Boolean).join(' ')}, ${number.band}: ${number.what}.`,
    },
  ];
}

function numberShown(view: TrialInView): { number: Number; of: readonly CombinationInTrial[] } | null {
  const said = saidGains(view);
  const told = tellingOf(said);
  if (told !== null) {
    const changed = view.combinations.find(({ key }) => key === told.changed.key)!;
    return { number: gainNumber(told, said.length), of: [view.baseline, changed] };
  }
  const [peak] = view.comparison?.peakGains ?? [];
  if (peak !== undefined && view.state !== 'survey') return { number: peakNumber(view, peak), of: [] };
  const pulled = view.combinations.filter(({ figures }) => figures?.peakPower);
  const [first] = pulled;
  if (first === undefined) return null;
  if (view.state === 'survey' && pulled.length > 1) {
    const names = listed(pulled.map(({ key, shortName }) => shortName || key));
    return {
      number: {
        number: `${pulled.length}`,
        unit: 'engines',
        band: 'no gain claimed',
        what: `Side by side: ${names}`,
      },
      of: pulled.slice(0, 2),
    };
  }
  // Of a trial that misses a combination, the other's figure would be taken for the answer.
  if (view.combinations.length > 1) return null;
  return { number: highestNumber(view, first), of: [first] };
}

const ORDER = ['clear', 'likely', 'no-difference', 'within-noise'];

/** Of several gains the surest, and of those the largest. */
function tellingOf(said: readonly SaidGain[]): SaidGain | null {
  const rank = ({ gain: { verdict } }: SaidGain) =>
    verdict === null ? ORDER.length : ORDER.indexOf(verdict.word);
  const [first] = said.toSorted(
    (one, other) => rank(one) - rank(other) || Math.abs(other.gain.meanPower) - Math.abs(one.gain.meanPower),
  );
  return first ?? null;
}

function gainNumber(said: SaidGain, of: number): Number {
  const { gain, changed, baseline, show } = said;
  const { band, verdict } = gain;
  const name = changed.shortName || `${changed.key} against ${baseline.key}`;
  const what = `on average: ${of > 1 ? `${name}, of ${of} changes` : name}`;
  const unit = show.unit('power');
  if (band === null || verdict === null) {
    const number = show.number(gain.meanPower, 'power', { decimals: 0, sign: true });
    return { number, unit, band: 'how sure: not known', what };
  }
  if (verdict.word === 'no-difference') {
    const most = atMostPerCent(show, verdict.noDifferenceLargerThan, verdict.worthwhileRatio);
    return {
      number: `±${most.replace('\u00a0%', '')}`,
      unit: '%',
      band: 'no larger difference, if any',
      what,
    };
  }
  const isNoise = verdict.word === 'within-noise';
  const decimals = gainDecimals(show, gain.meanPower, band.meanPower, !isNoise);
  const fits = bandText(show, band.meanPower, { decimals });
  if (isNoise) return { number: fits, unit, band: 'within the noise', what };
  return {
    number: show.number(gain.meanPower, 'power', { decimals, sign: true }),
    unit,
    band: `${verdict.word === 'likely' ? 'likely, ' : ''}${fits}\u00a0${unit}`,
    what,
  };
}

/** Printed or remembered highest figures, where no curve lets more be said. */
function peakNumber(
  { show, combinations }: TrialInView,
  {
    changedKey,
    baselineKey,
    gain,
    low,
    high,
  }: { changedKey: string; baselineKey: string; gain: number; low: number; high: number },
): Number {
  const decimals = gainDecimals(show, gain, [low, high]);
  const unit = show.unit('power');
  const fits = bandText(show, [low, high], { decimals });
  const item = combinations.find(({ key }) => key === changedKey);
  const what = `${item?.shortName || changedKey} against ${baselineKey}, highest figures`;
  if (low <= 0 && high >= 0) return { number: fits, unit, band: 'cannot be told apart', what };
  return {
    number: show.number(gain, 'power', { decimals, sign: true }),
    unit,
    band: `${fits}\u00a0${unit}`,
    what,
  };
}

function highestNumber({ show }: TrialInView, item: CombinationInTrial): Number {
  const { peakPower, peakPowerBand } = item.figures!;
  const unit = show.unit('power');
  const climbing = peakPower!.stillClimbing ? 'still climbing' : '';
  const band = peakPowerBand ? `${bandText(show, peakPowerBand)}\u00a0${unit}` : '';
  return {
    number: show.number(peakPower!.value, 'power', { decimals: 0 }),
    unit,
    band: [band, climbing].filter(Boolean).join(', ') || 'no band known',
    what: fullName(item),
  };
}

/** Power of two at most, without figures and names. */
function bareCurves(
  view: TrialInView,
  scale: Scale | null,
  of: readonly CombinationInTrial[],
): ChartDescription | null {
  const own = { ...view, combinations: [...of], gains: [] };
  const chart =
    of.length === 0 ? null : stackAt(own, scale, [channelPanel(own, 'power', { labels: 'names' })]);
  return chart === null ? null : { ...chart, xWindow: null };
}
