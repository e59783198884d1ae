import { figureOf, speedFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import { type CountedPull, isNoted, numberCondition, rangeText, textCondition } from './condition.ts';
import type { ConditionDifference } from './model.ts';

/** How the pulls were driven and read: direction, rate, inertia, probes, bins. */
export function conditionsOfReading(
  pulls: readonly CountedPull[],
  ownViews: readonly CountedPull[],
  boosted: boolean,
): ConditionDifference[] {
  const swept = pulls.some(({ view }) => view.window?.sweepRateRpmPerS != null);
  const conditions = [
    textCondition(pulls, {
      id: 'kind-of-rows',
      label: 'Kind of rows',
      why: 'A sweep reads low by what its inertia hides (T = I · 2π/60 · dn/dt), a settled point does not: the two are not alike.',
      read: ({ view }) => view.curve?.kindOfRows ?? null,
      text: (kind) => (kind === 'points' ? 'settled points or a table' : 'samples of a sweep'),
    }),
    textCondition(pulls, {
      id: 'direction',
      label: 'Direction of the pull',
      why: 'A rising pull reads low and a falling one high, by the inertia of what turns: T = I · 2π/60 · dn/dt.',
      read: ({ view }) => view.window?.direction ?? null,
    }),
  ];
  if (swept)
    conditions.push(
      numberCondition(pulls, {
        id: 'sweep-rate',
        label: 'Sweep rate',
        why: 'What inertia hides grows with the rate; 20 % apart is let pass (common practice, no source).',
        read: ({ view }) => view.window?.sweepRateRpmPerS ?? null,
        text: rangeText((rate) => figureOf(rate, 'sweepRate')),
        differ: (low, high) => Math.abs(high - low) > 0.2 * Math.min(Math.abs(low), Math.abs(high)),
      }),
    );
  conditions.push(
    textCondition(pulls, {
      id: 'inertia',
      label: 'Inertia of the sweep',
      why: 'Figures with and without the torque that the sweep hides are not alike: 1 to 3 % of power at 300 rpm/s (by T = I · 2π/60 · dn/dt, for 0.25 to 0.6 kg·m²).',
      read: inertiaOf,
    }),
    textCondition(ownViews, {
      id: 'bin-width',
      label: 'Width of the bins',
      why: 'The widest of all is used for the comparison: finer logging of one side is not a difference of the engine (by the rule of the comparison).',
      read: ({ view }) =>
        view.curve === null
          ? null
          : view.curve.kindOfRows === 'points'
            ? 'rows as they are'
            : said`${speedFigure(view.curve.binWidthRpm)}`,
    }),
  );
  const places = [
    textCondition(pulls, {
      id: 'boost-tap',
      label: 'Boost tap',
      why: 'Boost at another place is another pressure: its difference is not shown as a gain or loss (common practice, no source).',
      read: ({ pull }) => pull.places.boostTap,
    }),
    textCondition(pulls, {
      id: 'charge-probe',
      label: 'Charge probe',
      why: 'A probe at another place reads another temperature: no other place is let pass (common practice, no source).',
      read: ({ pull }) => pull.places.chargeProbe,
    }),
    textCondition(pulls, {
      id: 'inlet-probe',
      label: 'Inlet probe',
      why: 'The factor is as good as the place its temperature is taken at: 5 K there are 1 % of power (by the correction formulas).',
      read: ({ pull }) => pull.places.inletProbe,
    }),
  ];
  // Without boost nobody asks for its tap; noted places are always shown.
  return [
    ...conditions,
    ...places.filter((place) => isNoted(place) || (boosted && place.id === 'boost-tap')),
  ];
}

function inertiaOf({ pull, view }: CountedPull): string | null {
  if (view.curve?.kindOfRows === 'points') return 'none: settled points';
  if (view.remarks.some((one) => one.code === 'inertia-added')) return 'added here';
  if (pull.sweep.inertiaCompensated === 'yes') return 'added by the file';
  return pull.sweep.inertiaCompensated === 'no' ? 'not added' : null;
}
