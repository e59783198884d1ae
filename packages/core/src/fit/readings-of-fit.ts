import { impellerSpeed, type MatchCurve, type MatchFigure, solveMatch } from '../airpath/index.ts';
import { mean } from '../numeric/index.ts';
import { figureOf, percentFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import { chargeReading } from './charge-reading.ts';
import type { FitParameterId, FitReading, FitResidual, FitTarget, MatchFit } from './model.ts';
import { movedBy } from './moves.ts';
import { residualsOf } from './residuals-of-fit.ts';

/** Slip that a sound belt does not reach (common practice, no source). */
const SLIPPING = 0.03;
/** Share of boost by which the top sags against the middle before slip is thought of: a map's own line may bend by less (common practice, no source). */
const SAG = 0.05;
/** K by which the air must be expected to get colder with it before a thermometer is asked, and the share of it that must be seen. */
const TELLING_FALL = 3;
const SEEN_OF_FALL = 0.4;
/** K by which the charge gets hotter from the first pull to the last (common practice, no source). */
const SOAK = 4;
/** Standard deviations of its prior by which a parameter is remarkable. */
const REMARKABLE = 1.5;

/**
 * What the residuals and the factors look like. None is sure: each says what would settle it. Pulls in the order they were made.
 */
export function readingsOfFit(
  fit: MatchFit,
  targets: readonly FitTarget[],
  curves: readonly MatchCurve[],
): FitReading[] {
  return [slip(fit, targets, curves), leak(fit), soak(fit), retard(fit), chargeReading(fit, targets)].flatMap(
    (one) => (one === null ? [] : [one]),
  );
}

function slip(
  fit: MatchFit,
  targets: readonly FitTarget[],
  curves: readonly MatchCurve[],
): FitReading | null {
  const shown = targets.flatMap(({ pull, input }) =>
    (pull.impellerSpeedRpm ?? []).flatMap((speed, node) => {
      const lost = 1 - speed / impellerSpeed(input.drive, pull.engineSpeedRpm[node]!, 0);
      return Number.isFinite(lost) ? [{ lost, at: pull.engineSpeedRpm[node]! }] : [];
    }),
  );
  if (shown.length > 0) {
    const most = shown.reduce((best, one) => (one.lost > best.lost ? one : best));
    if (!(most.lost > SLIPPING)) return null;
    return {
      id: 'slip',
      strength: 'seen',
      text: said`The shaft's speed shows ${percentFigure(most.lost, 1)} of slip at ${figureOf(most.at, 'engineSpeed')}; a sound belt keeps under ${percentFigure(SLIPPING)}.`,
      wouldSettle: null,
    };
  }
  const residuals = residualsOf(targets, unbentCurves(fit, targets));
  const boost = sagAtTop(residuals, 'boost');
  if (boost === null || !(boost < -SAG) || curves.every(({ state }) => state.at(-1) === 'choked'))
    return null;
  const falls = (['dischargeTemperature', 'manifoldTemperature'] as const).flatMap((figure) => {
    const fall = sagAtTop(residuals, figure);
    const warmed = targets.map(
      ({ input }, place) => curves[place]!.figures[figure].at(-1)! - input.air.temperature,
    );
    // Warming goes with head as boost does; behind a good cooler there is too little of it to tell.
    const expected = boost * mean(warmed);
    return fall === null || !(-expected > TELLING_FALL) ? [] : [fall / expected];
  });
  const cooler = falls.some((share) => share > SEEN_OF_FALL);
  if (falls.length > 0 && !cooler) return null;
  return {
    id: 'slip',
    strength: cooler ? 'seen' : 'possible',
    text: said`Towards the top boost falls ${percentFigure(-boost, 1)} short of what the map's head gives at the other speeds${cooler ? ', and the air is colder with it' : ''}: that looks like a slipping belt.`,
    wouldSettle: said`A shaft-speed pick-up on the supercharger; or a pull with the belt tightened.`,
  };
}

/** Matches whose head does not bend over speed: a fit follows a sag of boost with its bends, and nothing of it would be left over. */
const unbentCurves = ({ own, axis }: MatchFit, targets: readonly FitTarget[]): MatchCurve[] => {
  const straight = { ...own.by, 'head 1': 0, 'head 2': 0, 'head 3': 0, 'head 4': 0 };
  return targets.map(({ input }) => solveMatch(movedBy(input, straight, axis)));
};

function leak(fit: MatchFit): FitReading | null {
  const head = offPrior(fit, 'headScale');
  const flow = offPrior(fit, 'flowScale');
  if (
    !(head.deviations < -REMARKABLE || flow.deviations < -REMARKABLE) ||
    !(Math.abs(offPrior(fit, 'swallowingScale').deviations) < REMARKABLE)
  )
    return null;
  return {
    id: 'leak',
    strength: 'possible',
    text: said`Boost is low at all speeds: the fit takes ${percentFigure(Math.max(0, -head.share), 1)} off the compressor's head and ${percentFigure(Math.max(0, -flow.share), 1)} off the flow of its map. A bypass that does not shut or a leaking pipe looks like that, and so does a map that promises too much.`,
    wouldSettle: said`Press the pipes with air and listen, or pull once with the bypass clamped shut.`,
  };
}

function soak({ residuals }: MatchFit): FitReading | null {
  const rise = residuals
    .filter(({ figure }) => figure === 'manifoldTemperature')
    .map(({ measured, matched }) => mean(measured.map((value, node) => value - matched[node]!)));
  if (rise.length < 2) return null;
  const isRising = rise.every((value, place) => place === 0 || value > rise[place - 1]!);
  const total = rise.at(-1)! - rise[0]!;
  if (!isRising || !(total > SOAK)) return null;
  return {
    id: 'soak',
    strength: rise.length > 2 ? 'seen' : 'possible',
    text: said`The charge gets hotter pull by pull, ${figureOf(total, 'temperatureDifference')} from the first to the last: supercharger, pipes or cooler soak up heat.`,
    wouldSettle:
      rise.length > 2
        ? null
        : said`A third pull straight after, and one after a long wait with the cooler's water renewed.`,
  };
}

function retard(fit: MatchFit): FitReading | null {
  const work = offPrior(fit, 'workFactor');
  const swallowing = offPrior(fit, 'swallowingScale');
  const hasAir = fit.residuals.some(({ figure }) => figure === 'airFlow');
  if (!(work.share < -0.03) || !hasAir || !(swallowing.share > -0.03)) return null;
  return {
    id: 'retard',
    strength: 'possible',
    text: said`Power is ${percentFigure(-work.share, 1)} lower than this air should make, and the air is there: spark taken back, a mixture far from best, or knock control.`,
    wouldSettle: said`The spark advance logged beside lambda, and a pull with better fuel at the same boost.`,
  };
}

/** Mean residual of the top sixth less that of the middle: share of the figure, K of temperatures; `null`: not logged. */
function sagAtTop(residuals: readonly FitResidual[], figure: MatchFigure): number | null {
  const sags = residuals
    .filter((one) => one.figure === figure)
    .map(({ engineSpeedRpm, measured, matched }) => {
      const low = engineSpeedRpm[0]!;
      const span = engineSpeedRpm.at(-1)! - low;
      const isTemperature = figure.endsWith('Temperature');
      const off = measured.map((value, node) =>
        isTemperature ? value - matched[node]! : value / matched[node]! - 1,
      );
      const within = (from: number, to: number) =>
        mean(
          off.filter((_, node) => {
            const place = (engineSpeedRpm[node]! - low) / span;
            return place >= from && place <= to;
          }),
        );
      return within(5 / 6, 1) - within(0.4, 0.75);
    })
    .filter(Number.isFinite);
  return sags.length === 0 ? null : mean(sags);
}

function offPrior({ parameters }: MatchFit, id: FitParameterId): { share: number; deviations: number } {
  const { value, prior } = parameters.find((one) => one.id === id)!;
  return { share: value / prior.value - 1, deviations: (value - prior.value) / prior.spread };
}
