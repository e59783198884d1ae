import type { Erratum, Publication, PublishedFigure, SaidFigure } from '@pullbook/core/publication';
import type { ViewOptions } from '../model.ts';
import { type Showing, showingIn, wholeTens } from '../showing.ts';

/** A publication as a page shows it: its figures in words, in the units in which they were said. */
export interface ShownPublication
  extends Pick<
    Publication,
    'id' | 'trialId' | 'question' | 'sentence' | 'kinds' | 'files' | 'privateToo' | 'links' | 'at'
  > {
  /** Those that it rests on; '' for one that is no longer in the book. */
  pulls: { id: string; name: string }[];
  /** `B, average power`, `412 hp`. */
  figures: { label: string; value: string }[];
  /** Figures that are no longer so; empty: all hold. */
  stale: { label: string; said: string; now: string | null }[];
}

const LABELS: Record<PublishedFigure['id'], string> = {
  averagePower: 'average power',
  peakPower: 'highest power',
  peakTorque: 'highest torque',
  highestBoost: 'highest boost',
  meanGain: 'gain in average power',
  meanGainRatio: 'gain in average power as a share',
};

/** What left the shop, beside what the same pulls give today. `pullNames`: by id. */
export function shownPublication(
  { publication, stale }: Erratum,
  pullNames: ReadonlyMap<string, string>,
  options: ViewOptions,
): ShownPublication {
  const as = ({ units }: SaidFigure) => showingIn({ ...options, units });
  const { id, trialId, question, sentence, kinds, files, privateToo, links, at, figures, pullIds } =
    publication;
  return {
    ...{ id, trialId, question, sentence, kinds, files, privateToo, links, at },
    pulls: pullIds.map((pullId) => ({ id: pullId, name: pullNames.get(pullId) ?? '' })),
    figures: figures.map((figure) => ({ label: labelOf(figure), value: figureText(as(figure), figure) })),
    stale: stale.map(({ said, now }) => ({
      label: labelOf(said),
      said: figureText(as(said), said),
      now: now && figureText(as(said), now),
    })),
  };
}

const labelOf = ({ id, key }: PublishedFigure): string => `${key}, ${LABELS[id]}`;

/** `412.3 hp at 6,450 rpm`; with its band, where one is known: `+12.4 hp (10.1 hp to 14.7 hp)`. */
function figureText(show: Showing, { id, kind, value, low, high, engineSpeedRpm }: PublishedFigure): string {
  const sign = id === 'meanGain' || id === 'meanGainRatio';
  const text = (figure: number) =>
    kind === 'ratio' ? show.perCent(figure, { sign, decimals: 2 }) : show.quantity(figure, kind, { sign });
  const place = engineSpeedRpm === null ? '' : ` at ${show.speed(wholeTens(engineSpeedRpm))}`;
  const band = low === null || high === null ? '' : ` (${text(low)} to ${text(high)})`;
  return `${text(value)}${place}${band}`;
}
