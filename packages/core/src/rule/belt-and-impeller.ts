import { extentOf, mean, median } from '../numeric/index.ts';
import { fitPolynomial, polynomialAt } from '../numeric/polynomial-fit.ts';
import { figureOf, numberFigure, percentFigure, speedFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import { driveRatio, impellerFindings } from './impeller.ts';
import type { Finding } from './model.ts';
import type { PullAtHand } from './pull-at-hand.ts';
import { sheetText } from './sheet-words.ts';
import { boostAgainstFit } from './slip-by-fit.ts';

/** Share of the highest speed between which the trend is taken, and pressure above which there is boost at all. */
const TREND_FROM = 0.55;
const TREND_TO = 0.8;
const LEAST_BOOST_PA = 5e3;
const NODES_OF_TREND = 4;
const NODES_AT_TOP = 3;

/** V13: slip by shaft speed, else boost against the fitted match, else against its own trend. V20: impeller speed against its limit. */
export function beltAndImpeller(at: PullAtHand): Finding[] {
  const impeller = at.values('impellerSpeed');
  const measured = impeller === null ? null : extentOf(impeller)[1];
  const reach = { engineSpeedRpm: at.highestRpm, impellerRpm: measured };
  const byBoost = at.boostByFit === null ? () => boostTrend(at) : () => boostAgainstFit(at.boostByFit!, at);
  return [...(slip(at) ?? byBoost()), ...impellerFindings(at.sheet, reach, at)];
}

/** `null`: slip cannot be told. */
function slip(at: PullAtHand): Finding[] | null {
  const shaft = at.values('impellerSpeed');
  const ratio = driveRatio(at.sheet);
  if (shaft === null || ratio === null) return null;
  const slips = shaft.map((speed, node) => 1 - speed / (at.curve!.engineSpeedRpm[node]! * ratio));
  const known = slips.filter(Number.isFinite);
  if (known.length === 0) return null;
  const value = median(known.slice(-NODES_AT_TOP));
  const [low, high] = [at.limit('V13.slip'), at.limit('V13.slipAlarm')];
  if (Math.abs(value) <= low) return [];
  const input = 'Impeller speed and drive ratio';
  if (value < 0)
    return [
      at.find('V13', {
        input,
        kind: 'ratio',
        value,
        threshold: -low,
        level: 'caution',
        said: said`The impeller turns ${percentFigure(-value, 1)} faster than the drive on the sheet says. A belt cannot do that: check pulleys, step-up and the speed sensor.`,
      }),
    ];
  return [
    at.find('V13', {
      input,
      kind: 'ratio',
      value,
      threshold: value > high ? high : low,
      level: value > high ? 'alarm' : 'caution',
      said: said`At the top the impeller turns ${percentFigure(value, 1)} slower than the drive says; up to ${percentFigure(low)} is creep of a good belt. Look at tension, wrap and glazing before the next pull.`,
    }),
  ];
}

function boostTrend(at: PullAtHand): Finding[] {
  const boost = at.values('boost');
  if (boost === null || at.curve === null || sheetText(at.sheet, 'supercharger', 'type') !== 'centrifugal')
    return [];
  const speeds = at.curve.engineSpeedRpm;
  const known = [...boost.keys()].filter((node) => boost[node]! > LEAST_BOOST_PA && speeds[node]! > 0);
  const top = speeds[known.at(-1) ?? -1] ?? Number.NaN;
  const inTrend = known.filter(
    (node) => speeds[node]! >= TREND_FROM * top && speeds[node]! <= TREND_TO * top,
  );
  if (inTrend.length < NODES_OF_TREND) return [];
  const fit = fitPolynomial(
    inTrend.map((node) => Math.log(speeds[node]!)),
    inTrend.map((node) => Math.log(boost[node]!)),
    1,
  );
  if (fit === null) return [];
  const last = known.slice(-NODES_AT_TOP);
  const expected = mean(last.map((node) => Math.exp(polynomialAt(fit, Math.log(speeds[node]!)))));
  const residual = mean(last.map((node) => boost[node]!)) / expected - 1;
  const exponent =
    (polynomialAt(fit, Math.log(top)) - polynomialAt(fit, Math.log(TREND_FROM * top))) /
    -Math.log(TREND_FROM);
  if (!Number.isFinite(residual) || !Number.isFinite(exponent)) return [];
  const settle =
    'That alone accuses no belt, for a good one falls short of it too as the engine takes more air. What would settle it: the speed of the blower shaft, logged.';
  const allowed = at.limit('V13.residual');
  if (residual < -allowed)
    return [
      at.find('V13', {
        input: 'Boost over engine speed',
        kind: 'ratio',
        value: residual,
        threshold: -allowed,
        said: said`At ${speedFigure(top)} boost is ${percentFigure(-residual)} below its own trend from lower speeds. ${settle}`,
      }),
    ];
  const [low, high] = [at.limit('V13.exponentLow'), at.limit('V13.exponentHigh')];
  if (exponent >= low && exponent <= high) return [];
  return [
    at.find('V13', {
      input: 'Boost over engine speed',
      kind: 'ratio',
      value: exponent,
      threshold: exponent < low ? low : high,
      said: said`Boost (${figureOf(at.highestBoost!, 'gaugePressure')} at most) goes with engine speed to the power of ${numberFigure(exponent, 1)}; ${numberFigure(low, 1)} to ${numberFigure(high, 1)} is usual of a centrifugal. ${settle}`,
    }),
  ];
}
