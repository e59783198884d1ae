import { accepted, type Remark, type Result, remark } from '../remark/index.ts';
import { type Design, designOf } from './design-of-pulls.ts';
import { gainsOfGroups } from './gain-of-groups.ts';
import type { GroupGain, PullArray, ScatterComparison, ScatterOptions, SpreadUsed } from './model.ts';
import { dot } from './orthonormal-columns.ts';
import { spreadsAtHand } from './spreads-at-hand.ts';
import { trendsOf } from './trends.ts';
import { sourcesOf } from './variance-sources.ts';
import { weightsOfGroups } from './weights-of-groups.ts';
import { windowOfArrays } from './window-of-arrays.ts';

/** Share of a gain's variance below which drift is not there. */
const NO_DRIFT = 1e-9;

/**
 * How sure the gains of groups of pulls over a baseline are: ln power = mean of the group + offsets of set-up, day, cell and
 * pull + scatter of one speed + drift in time, each spread put together of history and of the repeats at hand, the gain by
 * generalised least squares. Deterministic. One pull against one is judged by history alone; with one group there are no
 * gains, but spreads and trends. Refused, in words, where the pulls share no speed.
 *
 * @example three pulls against three at 0.4 % scatter, well known: +-0.6 % about the gain
 */
export function compareArrays(
  pulls: readonly PullArray[],
  options: ScatterOptions,
): Result<ScatterComparison> {
  const { history } = options;
  const window = windowOfArrays(pulls, options.windowRpm ?? null);
  if (!window.ok) return window;
  const on = window.value;
  const design = designOf(pulls);
  const atHand = spreadsAtHand(design, on, history);
  const { spreads } = atHand;
  const sources = sourcesOf(design, spreads, history.driftPerHour);
  const weights = weightsOfGroups(design, spreads.pull.sigma, sources);
  const gains = gainsOfGroups({ design, on, spreads, sources, weights, options });
  const used: SpreadUsed[] = [spreads.pull, spreads.setUp, spreads.day, spreads.cell, spreads.within];
  return accepted(
    {
      engineSpeedRpm: on.engineSpeedRpm,
      windowRpm: [on.engineSpeedRpm[0]!, on.engineSpeedRpm.at(-1)!],
      gains,
      spreads,
      drift: { handling: handlingOf(design, gains), perHour: slopePerHour(weights.ofSlope, on.logMean) },
      trends: trendsOf(pulls, design, on.logMean, history, atHand),
      counts: countsOf(design),
      setUps: design.setUps.names.length,
      fromHistory: used.some(
        ({ from, historySetAside }) => (from === 'shop' || from === 'stated') && !historySetAside,
      ),
    },
    remarksOn(design, options),
  );
}

function handlingOf(design: Design, gains: readonly GroupGain[]): ScatterComparison['drift']['handling'] {
  const isCarried = ({ parts, standardError }: GroupGain) => parts.drift > NO_DRIFT * standardError ** 2;
  if (gains.some(isCarried)) return 'carried';
  return design.takenOut.length > 0 ? 'taken-out' : 'none';
}

/** Drift taken out, share of power an hour; the plain mean over sessions where several had theirs taken out. */
function slopePerHour(ofSlope: readonly Float64Array[], logMean: Float64Array): number | null {
  if (ofSlope.length === 0) return null;
  const sum = ofSlope.reduce((total, weights) => total + dot(weights, logMean), 0);
  return Math.expm1(sum / ofSlope.length);
}

function countsOf(design: Design): ScatterComparison['counts'] {
  return new Map(
    design.groups.names.map((name, group) => {
      const own = Array.from(design.groups.of.keys()).filter((pull) => design.groups.of[pull] === group);
      const different = (levels: Int32Array) => new Set(own.map((pull) => levels[pull])).size;
      return [
        name,
        { pulls: own.length, setUps: different(design.setUps.of), sessions: different(design.sessions.of) },
      ] as const;
    }),
  );
}

function remarksOn(design: Design, { baseline }: ScatterOptions): Remark[] {
  if (!design.groups.names.includes(baseline))
    return [
      remark(
        'caution',
        'no-baseline',
        `No pull counts for the baseline ${baseline}, so no gain is stated. Count a pull of it.`,
      ),
    ];
  if (design.groups.names.length === 1)
    return [
      remark(
        'note',
        'one-group',
        `All pulls are of ${baseline}: there is no other combination to hold against it.`,
      ),
    ];
  if (design.timeless.length === 0) return [];
  return [
    remark(
      'caution',
      'drift-not-in-band',
      'Not every pull of a session has its time, so what drifted between them is not in the band. Enter the times of the pulls.',
    ),
  ];
}
