import { compareArrays, criticalLargestT, type PullArray, type ScatterHistory } from '@pullbook/core/scatter';
import { BUILT_IN_PRIOR, historyFrom } from '@pullbook/core/shop';

/** Five pulls against five by 50 r/min, taken apart between, each with its own wave on it. */
function pulls(seed: number): PullArray[] {
  const engineSpeedRpm = Float64Array.from({ length: 81 }, (_, node) => 2500 + 50 * node);
  return Array.from({ length: 10 }, (_, pull) => {
    const level = 0.004 * Math.sin(7 * pull + seed) + (pull < 5 ? 0 : 0.02);
    const power = engineSpeedRpm.map(
      (speed, node) => 60 * speed * Math.exp(level + 0.003 * Math.sin(node / 5 + 3 * pull + seed)),
    );
    const side = pull < 5 ? 'A' : 'B';
    return { engineSpeedRpm, power, group: side, setUp: side, session: 'one', cell: null, hours: pull / 4 };
  });
}

/**
 * One comparison with its bands, `run` after `run`. `cold`: each with a length along the engine speed that was never asked for,
 * so that no critical value is remembered; else the same pulls again.
 */
export function comparisonTimed(cold: boolean): () => void {
  const known = historyFrom(BUILT_IN_PRIOR, 'injected');
  let run = 0;
  return () => {
    run += 1;
    const within = { ...known.within, lengthRpm: cold ? 200 + 13 * run : 250 };
    const history: ScatterHistory = { ...known, within };
    const compared = compareArrays(pulls(cold ? run : 1), { history, baseline: 'A' });
    if (!compared.ok) throw new Error(compared.remarks[0]!.message);
  };
}

/** One critical value after another for all speeds of a window, none asked for before; neighbours 50 r/min apart. */
export function largestTimed(): () => void {
  let run = 0;
  return () => {
    run += 1;
    const neighbourCorrelation = Math.exp(-50 / (150 + 20 * run));
    criticalLargestT({
      count: 80,
      sharedShare: 0.5,
      neighbourCorrelation,
      degreesOfFreedom: 12,
      confidence: 0.95,
    });
  };
}
