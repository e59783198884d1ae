import { figureOf, speedFigure, speedRange } from '../quantity/index.ts';
import { type Remark, remark, type Said, said } from '../remark/index.ts';
import { AS_IT_IS } from './as-it-is.ts';
import { type Judged, judged } from './judged.ts';
import type { ReachInput } from './model.ts';
import { SCREENED_NODES } from './screen.ts';
import { type SearchGround, searchGround } from './search-ground.ts';

/** Times what it makes now beyond which a target is a slip of the unit or another engine. */
const MOST_TIMES = 10;

/**
 * Why a target cannot be searched for, and what to do about it; `null`: it can. Below what is there now, ten times above, outside the speeds that were
 * pulled, at odds with a limit that was set beside it.
 *
 * @example troubleOfTarget({ ...input, target: { ...target, power: 0 } })?.code // 'target-not-above-zero'
 */
export function troubleOfTarget(input: ReachInput): Remark | null {
  const { target, builds, baseline } = input;
  if (builds.length === 0 || baseline.engineSpeedRpm.length < 2) return refusal('no-baseline', NO_BASELINE);
  if (!(target.power > 0) || !Number.isFinite(target.power))
    return refusal(
      'target-not-above-zero',
      said`The target is ${figureOf(target.power, 'power')}; it must be above zero. Say for example 520 hp.`,
    );
  if (target.boostCap !== null && !(target.boostCap > 0))
    return refusal(
      'boost-cap-not-above-zero',
      said`The boost cap is ${figureOf(target.boostCap, 'gaugePressure')}; it must be above zero. Leave it out where boost is not bounded, or ask of the engine without its supercharger.`,
    );
  const speeds = troubleOfSpeeds(input);
  if (speeds !== null) return speeds;
  const ground = searchGround(input, SCREENED_NODES);
  const present = judged(ground, AS_IT_IS);
  if (present === null)
    return refusal(
      'no-match-as-it-is',
      'The engine as it is cannot be matched, so that no change can be held against it. Ask "pullbook match" why, and mend the sheet.',
    );
  return troubleOfPower(input, present) ?? troubleOfCap(ground, present.at.curve.figures.boost);
}

const refusal = (code: string, message: string | Said): Remark => remark('refusal', code, message);

/**
 * Against what was measured, where the figure is one of a pull; else against the match. Less than is there now can be asked for where the
 * engine as it is passes a cap or a limit: then something has to be changed.
 */
function troubleOfPower({ target, measuredNow }: ReachInput, present: Judged): Remark | null {
  const isMeasured = target.what === 'peak power' && measuredNow !== null;
  const now = isMeasured ? measuredNow.power : present.figure;
  const power = (value: number) => figureOf(value, 'power', { decimals: 0 });
  const how = isMeasured
    ? said`measured in ${measuredNow.pullIds.length} ${measuredNow.pullIds.length === 1 ? 'pull' : 'pulls'}`
    : said`by its match`;
  if (target.power <= now && present.holds)
    return refusal(
      'target-below-now',
      said`The target is ${power(target.power)} and the engine makes ${power(now)} as it is, ${how}: nothing has to be changed. Ask for more than that, or for what is left in it.`,
    );
  if (target.power > MOST_TIMES * now)
    return refusal(
      'target-far-above-now',
      said`The target is ${power(target.power)}, more than ${MOST_TIMES} times the ${power(now)} that the engine makes as it is (${how}): no change of it does that. Look at the unit of the target.`,
    );
  return null;
}

function troubleOfSpeeds({ target, baseline, speedLimits }: ReachInput): Remark | null {
  const low = baseline.engineSpeedRpm[0]!;
  const high = baseline.engineSpeedRpm.at(-1)!;
  const pulled = said`The engine was pulled at ${speedRange(low, high)}`;
  const { what, atRpm, windowRpm } = target;
  if (what === 'power at a speed') {
    if (atRpm === null)
      return refusal(
        'target-without-speed',
        said`The target is a power at a speed and no speed is said. ${pulled}: say one of these.`,
      );
    if (!(atRpm >= low && atRpm <= high))
      return refusal(
        'target-speed-not-pulled',
        said`The target is asked at ${speedFigure(atRpm)}. ${pulled}, and nothing is known beyond: ask at one of these speeds, or pull it there.`,
      );
  }
  if (what === 'average power') {
    if (windowRpm === null)
      return refusal(
        'target-without-window',
        said`The target is an average and no window of speeds is said. ${pulled}: say a part of that.`,
      );
    const [from, to] = windowRpm;
    if (!(from < to))
      return refusal(
        'target-window-upside-down',
        said`The window runs from ${speedFigure(from)} to ${speedFigure(to)}; its lower end must come first and below the upper one.`,
      );
    if (!(from >= low && to <= high))
      return refusal(
        'target-window-not-pulled',
        said`The window runs over ${speedRange(from, to)}. ${pulled}, and nothing is known beyond: ask for a window within, or pull it there.`,
      );
  }
  const needed = what === 'power at a speed' ? atRpm : what === 'average power' ? windowRpm![1] : null;
  const lowest = Math.min(...speedLimits);
  if (needed !== null && lowest < needed)
    return refusal(
      'speed-limit-below-target',
      said`An engine stopped at ${speedFigure(lowest)} has no figure at ${speedFigure(needed)}, which the target asks for: these contradict each other. Leave that speed limit out, or ask at lower speeds.`,
    );
  return null;
}

/** A cap that even the slowest drive passes, where no supercharger is not a way out. */
function troubleOfCap(ground: SearchGround, boost: ArrayLike<number>): Remark | null {
  const { target, builds } = ground.input;
  const cap = target.boostCap;
  const highest = (values: ArrayLike<number>) => Math.max(...Array.from(values).filter(Number.isFinite));
  if (cap === null || !(highest(boost) > cap) || builds.some(({ match }) => match === null)) return null;
  const slowest = builds.flatMap((_, build) => {
    const [size] = ground.sizes(build, 'blowerPulley');
    const one =
      size === undefined
        ? null
        : judged(ground, { ...AS_IT_IS, build, drive: { by: size.by, size: size.size } });
    return one === null ? [] : [highest(one.curve.figures.boost)];
  });
  const least = Math.min(highest(boost), ...slowest);
  if (least <= cap) return null;
  return refusal(
    'boost-cap-below-all',
    said`The boost cap is ${figureOf(cap, 'gaugePressure')}; as it is the engine has ${figureOf(highest(boost), 'gaugePressure')}, and with the largest pulley of the parts list still ${figureOf(least, 'gaugePressure')}. Raise the cap, or put a larger pulley on the parts list.`,
  );
}

const NO_BASELINE =
  'Nothing says what this engine does without its supercharger, and all that is foretold rests on it. Make one naturally aspirated pull of it, or give its curve in a file (baseline, table).';
