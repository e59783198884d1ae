import { speedRange } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import type { ComparedCombination, Comparison } from './model.ts';

/**
 * The window asked for as far as all pulls reach, with a remark where that is less; the common window where none was asked for,
 * or where nothing can be averaged over it.
 *
 * @param comparedRpm speeds at which every combination has a figure
 */
export function averagesWindow(
  common: readonly [number, number] | null,
  asked: readonly [number, number] | null,
  comparedRpm: readonly number[],
): { windowRpm: Comparison['averagesWindowRpm']; remarks: Remark[] } {
  if (common === null) return { windowRpm: null, remarks: [] };
  if (asked === null) return { windowRpm: [common[0], common[1]], remarks: [] };
  const clipped: [number, number] = [Math.max(common[0], asked[0]), Math.min(common[1], asked[1])];
  const askedText = speedRange(asked[0], asked[1]);
  const commonText = speedRange(common[0], common[1]);
  if (clipped[0] > clipped[1])
    return {
      windowRpm: [common[0], common[1]],
      remarks: [
        remark(
          'caution',
          'averages-window-missed',
          said`The averages were asked for over ${askedText}, where not all pulls reach; they are over the common window, ${commonText}.`,
        ),
      ],
    };
  if (!comparedRpm.some((speed) => speed >= clipped[0] && speed <= clipped[1]))
    return {
      windowRpm: [common[0], common[1]],
      remarks: [
        remark(
          'caution',
          'averages-window-empty',
          said`The averages were asked for over ${askedText}, where no engine speed of the comparison has a figure of every pull; they are over the common window, ${commonText}. Ask for a wider window.`,
        ),
      ],
    };
  if (clipped[0] === asked[0] && clipped[1] === asked[1]) return { windowRpm: clipped, remarks: [] };
  return {
    windowRpm: clipped,
    remarks: [
      remark(
        'note',
        'averages-window-clipped',
        said`The averages were asked for over ${askedText}; all pulls share only ${commonText}, so they are over ${speedRange(clipped[0], clipped[1])}.`,
      ),
    ],
  };
}

/** Nodes of the averages: in the window, with a figure of every combination, so that all averages stand on the same speeds. */
export function averagedNodes(
  combinations: readonly ComparedCombination[],
  nodesRpm: Float64Array,
  windowRpm: readonly [number, number] | null,
): number[] {
  if (windowRpm === null) return [];
  const powers = combinations.flatMap((combination) => combination.channels.get('power')?.mean ?? []);
  return Array.from(nodesRpm.keys()).filter(
    (node) =>
      nodesRpm[node]! >= windowRpm[0] &&
      nodesRpm[node]! <= windowRpm[1] &&
      powers.every((power) => Number.isFinite(power[node]!)),
  );
}
