import { type OwnPrior, PRIOR_PROVENANCE, type PriorFigure, type ScatterPrior } from '@pullbook/core/shop';
import type { ViewOptions } from './model.ts';
import { showingIn } from './showing.ts';

/** One figure of the shop's guess: what is built in, what the shop said, where the built-in one comes from. */
export interface PriorRow {
  /** Path under which it is set: `pull.injected`. */
  path: PriorFigure;
  label: string;
  builtIn: string;
  /** '' the shop said nothing */
  own: string;
  provenance: string;
}

const LABELS: Readonly<Record<PriorFigure, string>> = {
  'pull.injected': 'Pull to pull, injected',
  'pull.carburetted': 'Pull to pull, carburetted',
  'pull.supercharged': 'Pull to pull, supercharged',
  setUp: 'Another set-up, the same day',
  day: 'Another day, besides',
  cell: 'Another cell',
  driftPerHour: 'Drift in an hour',
  within: 'One engine speed against the pull',
  withinLengthRpm: 'Alike along the curve over',
};

/** The figures of a shop's guess as a form shows them. */
export function priorRows(builtIn: ScatterPrior, own: OwnPrior | null, options: ViewOptions): PriorRow[] {
  const show = showingIn(options);
  const text = (path: PriorFigure, value: number | null): string => {
    if (value === null) return '';
    return path === 'withinLengthRpm' ? show.speed(value) : show.perCent(value, { decimals: 2 });
  };
  return (Object.keys(LABELS) as PriorFigure[]).map((path) => ({
    path,
    label: LABELS[path],
    builtIn: text(path, figureOf(builtIn, path)),
    own: text(path, figureOf(own ?? {}, path)),
    provenance: PRIOR_PROVENANCE[path],
  }));
}

function figureOf(prior: ScatterPrior | OwnPrior, path: PriorFigure): number | null {
  switch (path) {
    case 'pull.injected':
      return prior.pull?.injected ?? null;
    case 'pull.carburetted':
      return prior.pull?.carburetted ?? null;
    case 'pull.supercharged':
      return prior.pull?.supercharged ?? null;
    default:
      return prior[path] ?? null;
  }
}

/** `0.50 %` */
export const shareText = (share: number, options: ViewOptions): string =>
  showingIn(options).perCent(share, { decimals: 2 });
