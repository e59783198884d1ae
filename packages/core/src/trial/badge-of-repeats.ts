import type { ComparedCombination, Comparison } from '../compare/index.ts';
import { mean } from '../numeric/mean.ts';
import { percentFigure } from '../quantity/index.ts';
import { joined, piecesOf, type Said, said } from '../remark/index.ts';
import { listed } from './listed.ts';
import type { Badge } from './model.ts';

/** Two consecutive readings may lie 2 % apart (UN Regulation 85, from memory). */
const FURTHEST_APART = 0.02;
/** Range of 2, 3, 4, … normal values over their standard deviation, 95 % point (studentized range, from memory). */
export const RANGE_OVER_SIGMA = [2.77, 3.31, 3.63, 3.86, 4.03, 4.17, 4.29, 4.39, 4.47];

/** At least two counted pulls on each side that agree: within 2 %, and within the scatter that the band stands on. */
export function repeatsBadge(comparison: Comparison): Badge {
  const few = comparison.combinations.filter(({ pullIds }) => pullIds.length < 2);
  const apart = comparison.combinations.filter((one) => !agrees(one, comparison));
  const earned = few.length === 0 && apart.length === 0;
  const lines = [
    ...(few.length > 0
      ? [said`Only one counted pull of ${listed(few.map(({ key }) => key))}: make a second.`]
      : []),
    ...(apart.length > 0
      ? [
          said`The pulls of ${listed(apart.map(({ key }) => key))} do not agree (${spreads(comparison)}): find out why before believing their mean.`,
        ]
      : []),
  ];
  const why = earned
    ? said`At least two counted pulls on each side, and those of each agree (${spreads(comparison)}).`
    : joined(lines, ' ');
  return { id: 'repeats', label: 'Repeats', earned, why: why.text, ...piecesOf(why) };
}

/** The averages of one combination's pulls lie within 2 %, and no further apart than the band's own scatter lets them. */
function agrees(combination: ComparedCombination, comparison: Comparison): boolean {
  const range = rangeOfPulls(combination, comparison);
  if (range === null) return true;
  const sigma = comparison.gains.find(({ band }) => band !== null)?.band?.scatter.spreads.pull.sigma;
  const times = RANGE_OVER_SIGMA[Math.min(combination.pullIds.length - 2, RANGE_OVER_SIGMA.length - 1)]!;
  return range <= Math.min(FURTHEST_APART, sigma === undefined ? Number.POSITIVE_INFINITY : times * sigma);
}

/** Highest less lowest average power of the pulls, as a share; `null` with fewer than two. */
function rangeOfPulls({ channels }: ComparedCombination, comparison: Comparison): number | null {
  const [low, high] = comparison.averagesWindowRpm ?? [Number.NaN, Number.NaN];
  const averages = (channels.get('power')?.pulls ?? [])
    .map(({ values }) =>
      mean(
        values.filter(
          (value, node) =>
            Number.isFinite(value) &&
            comparison.engineSpeedRpm[node]! >= low &&
            comparison.engineSpeedRpm[node]! <= high,
        ),
      ),
    )
    .filter(Number.isFinite);
  if (averages.length < 2) return null;
  return (Math.max(...averages) - Math.min(...averages)) / mean(averages);
}

/** `A 0.4 %, B 0.2 % between highest and lowest` */
function spreads(comparison: Comparison): Said {
  const ranges = comparison.combinations.flatMap((one) => {
    const range = rangeOfPulls(one, comparison);
    return range === null ? [] : [said`${one.key} ${percentFigure(range, 1)}`];
  });
  return said`${joined(ranges, ', ')} between highest and lowest`;
}
