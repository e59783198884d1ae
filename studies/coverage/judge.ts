import { compareArrays, type ScatterComparison, type ScatterHistory } from '@pullbook/core/scatter';
import type { Told } from './scene.ts';
import type { Simulated, SimulatedPull } from './simulate.ts';

/** What came of one comparison, as the study counts it: 1 it holds, 0 it does not. */
export interface Outcome {
  /** Every mean gain lies in its 95 % band. */
  mean: number;
  /** Share of speeds at which the true gain lies in the pointwise band. */
  pointwise: number;
  /** The true gain lies in the simultaneous band at every speed of every gain. */
  simultaneous: number;
  /** `clear` is said of a mean gain that is not there, or that has the other sign. */
  falseClear: number;
  /** A speed is called clear at which the true gain is not of that sign. */
  falseClearSpeed: number;
  clear: number;
  /** `no-difference` is said though the true gain is as large as the smallest that matters. */
  falseNoDifference: number;
  /** Half of the 95 % band of the first mean gain, share. */
  halfWidth: number;
}

const WORTHWHILE = 0.01;

/** The told scatter in the program's words: said by the shop, so nothing of its own is put beside it. */
function historyOf(told: Told): ScatterHistory {
  const from = 'shop';
  return {
    pull: { ...told.pull, from },
    setUp: { ...told.setUp, from },
    day: { ...told.day, from },
    cell: { ...told.cell, from },
    within: { ...told.within, from },
    driftPerHour: { ...told.driftPerHour, from },
  };
}

/** One comparison by the program under study; throws where it refuses: no case here should be refused. */
export function compared(
  pulls: readonly SimulatedPull[],
  told: Told,
  looksAt: readonly number[] | null,
): ScatterComparison {
  const result = compareArrays(
    pulls.map(({ day, ...pull }) => ({ ...pull, session: day })),
    {
      history: historyOf(told),
      baseline: pulls[0]!.group,
      worthwhile: WORTHWHILE,
      looks: looksAt === null ? null : { at: looksAt },
    },
  );
  if (!result.ok) throw new Error(result.remarks.map((one) => one.message).join(' '));
  return result.value;
}

/** Holds one comparison against the truth. */
export function judged(simulated: Simulated, comparison: ScatterComparison): Outcome {
  const { at, mean } = simulated.trueGain;
  const gains = comparison.gains;
  const nodes = [...at.keys()];
  const wrong = (sign: number, truth: number) => Math.sign(truth) !== sign;
  const every = (holds: (gain: (typeof gains)[number]) => boolean) => Number(gains.every(holds));
  const any = (holds: (gain: (typeof gains)[number]) => boolean) => Number(gains.some(holds));
  const off = (gain: (typeof gains)[number], node: number) =>
    Math.abs(gain.curve.logGain[node]! - Math.log1p(at[node]!));
  return {
    mean: every((gain) => gain.low <= mean && mean <= gain.high),
    pointwise:
      gains.reduce(
        (sum, gain) => sum + nodes.filter((node) => off(gain, node) <= gain.curve.pointwise[node]!).length,
        0,
      ) /
      (gains.length * nodes.length),
    simultaneous: every((gain) => nodes.every((node) => off(gain, node) <= gain.curve.simultaneous[node]!)),
    falseClear: any((gain) => gain.verdict === 'clear' && wrong(Math.sign(gain.logGain), mean)),
    falseClearSpeed: any((gain) =>
      gain.clearRanges.some(({ fromRpm, toRpm, sign }) =>
        nodes.some((node) => {
          const speed = comparison.engineSpeedRpm[node]!;
          return speed >= fromRpm && speed <= toRpm && wrong(sign, at[node]!);
        }),
      ),
    ),
    clear: any((gain) => gain.verdict === 'clear'),
    falseNoDifference: any(
      (gain) => gain.verdict === 'no-difference' && Math.abs(mean) >= WORTHWHILE - 1e-12,
    ),
    halfWidth: (gains[0]!.high - gains[0]!.low) / 2,
  };
}
