import { extentOf } from '../numeric/index.ts';
import { fitPolynomial, polynomialAt } from '../numeric/polynomial-fit.ts';
import { MEANINGS } from '../pull/index.ts';
import { figureOf, percentFigure, speedFigure, speedRange } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Finding } from './model.ts';
import type { PullAtHand } from './pull-at-hand.ts';

/** Bins over which torque is looked at, r/min. */
const BIN_RPM = 100;
/** Bins about each bin that make its own smooth curve, and how often torque must cross it there to be called a swing. */
const STRETCH = 11;
const CROSSINGS = 4;

/** V30: a peak at the edge, a row that would have been one. V31: torque that swings. */
export const curveShape = (at: PullAtHand): Finding[] => [
  ...peaksAtEdge(at),
  ...rowsAbovePeak(at),
  ...swings(at),
];

function peaksAtEdge(at: PullAtHand): Finding[] {
  const { view, curve } = at;
  if (view.window === null || curve === null || curve.kindOfRows !== 'samples') return [];
  const near = at.limit('V30.bins') * curve.binWidthRpm;
  const [low, high] = view.window.windowRpm;
  return (['Power', 'Torque'] as const).flatMap((what) => {
    const peak = what === 'Power' ? view.peakPower : view.peakTorque;
    if (peak === null || peak.stillClimbing) return [];
    const fromEnd = high - peak.atRpm;
    // At the start of the window only power tells something: torque there has its own remark.
    const fromStart = what === 'Power' ? peak.atRpm - low : Number.POSITIVE_INFINITY;
    const distance = Math.min(fromEnd, fromStart);
    if (!(distance < near)) return [];
    return [
      at.find('V30', {
        input: `${what} and the window`,
        kind: 'engineSpeed',
        value: distance,
        threshold: near,
        said: said`${what} is highest at ${speedFigure(peak.atRpm)}, ${speedFigure(distance)} from the ${fromEnd <= fromStart ? 'end' : 'start'} of the window: nearer than ${speedFigure(near)} its place is not sure. Pull further if the engine may.`,
      }),
    ];
  });
}

function rowsAbovePeak(at: PullAtHand): Finding[] {
  return (['torque', 'power'] as const).flatMap((meaning) => {
    const values = at.values(meaning);
    const highest = values === null ? Number.NaN : extentOf(values)[1];
    // A spike is as recorded, the curve in the standard of the view: each is held against what it should have been.
    const above = at.view.spikes.filter(
      (spike) => spike.meaning === meaning && spike.value > spike.expected && spike.value > highest,
    );
    const [worst] = above.toSorted((one, other) => other.value - one.value);
    if (worst === undefined) return [];
    const { label, kind } = MEANINGS[meaning];
    return [
      at.find('V30', {
        input: `${label}, row ${worst.row + 1}`,
        kind,
        value: worst.value,
        threshold: worst.expected,
        said: said`Row ${worst.row + 1} has ${figureOf(worst.value, kind)} where its neighbours say ${figureOf(worst.expected, kind)}. It is left out; counted, it would have been the headline.`,
      }),
    ];
  });
}

function swings(at: PullAtHand): Finding[] {
  const torque = at.values('torque');
  if (torque === null || at.curve === null) return [];
  const bins = binned(at.curve.engineSpeedRpm, torque);
  const allowed = at.limit('V31.swing');
  let worst: { swing: number; from: number; to: number } | null = null;
  for (let start = 0; start + STRETCH <= bins.length; start++) {
    const stretch = bins.slice(start, start + STRETCH);
    if (stretch.at(-1)!.speed - stretch[0]!.speed > 2 * STRETCH * BIN_RPM) continue;
    const middle = stretch[(STRETCH - 1) / 2]!.speed;
    const fit = fitPolynomial(
      stretch.map(({ speed }) => (speed - middle) / BIN_RPM),
      stretch.map((bin) => bin.torque),
      2,
    );
    if (fit === null) continue;
    const off = stretch.map((bin) => bin.torque - polynomialAt(fit, (bin.speed - middle) / BIN_RPM));
    const crossings = off.filter((value, bin) => bin > 0 && value * off[bin - 1]! < 0).length;
    const [low, high] = extentOf(off);
    const swing = (high - low) / Math.abs(polynomialAt(fit, 0));
    if (crossings >= CROSSINGS && swing > (worst?.swing ?? allowed))
      worst = { swing, from: stretch[0]!.speed, to: stretch.at(-1)!.speed };
  }
  if (worst === null || !Number.isFinite(worst.swing)) return [];
  return [
    at.find('V31', {
      input: `Torque, ${BIN_RPM} r/min bins`,
      kind: 'ratio',
      value: worst.swing,
      threshold: allowed,
      said: said`From ${speedRange(worst.from, worst.to, ' to ')} torque swings by ${percentFigure(worst.swing, 1)} about its own curve; ${percentFigure(allowed, 1)} is let pass. Brake control, belt surge, or a misfire: listen, and look at the brake before believing a peak there.`,
    }),
  ];
}

/** Means of torque over bins of 100 r/min; a curve with wider steps keeps its own nodes. */
function binned(speeds: Float64Array, torque: Float64Array): { speed: number; torque: number }[] {
  const sums = new Map<number, { speed: number; torque: number; count: number }>();
  for (const [node, value] of torque.entries()) {
    const speed = speeds[node]!;
    if (!Number.isFinite(value) || !Number.isFinite(speed)) continue;
    const bin = Math.round(speed / BIN_RPM);
    const sum = sums.get(bin) ?? { speed: 0, torque: 0, count: 0 };
    sums.set(bin, { speed: sum.speed + speed, torque: sum.torque + value, count: sum.count + 1 });
  }
  return [...sums.values()].map((sum) => ({ speed: sum.speed / sum.count, torque: sum.torque / sum.count }));
}
