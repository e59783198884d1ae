import type { MatchFigure } from '../../airpath/index.ts';
import { figureOf, percentFigure, speedFigure } from '../../quantity/index.ts';
import { said } from '../../remark/index.ts';
import { type EngineAtLimits, highestOf, nodeOfHighest } from './engine-at-limits.ts';
import { isPassed, type LimitKind, type Measured } from './limit-kind.ts';

/**
 * V42: how far the flow keeps above the surge edge. It binds at the edge itself where somebody measured it; an estimated edge only
 * cautions. The margin is in flow: the share of the edge's flow by which it is passed.
 */
export const surgeLimit: LimitKind = {
  label: 'Surge',
  ruleId: 'V42',
  bindsUsually: true,
  bindsWhere: 'where the edge was measured',
  measure: (at) => {
    const least = leastMargin(at, 'surgeMargin', at.limit('V42.ratio'));
    if (least === null) return null;
    const { form, leftEnd } = at.input!.compressor.map;
    const threshold = at.limit('V42.surgePlan');
    const measured: Measured = {
      ...least,
      threshold,
      kind: 'ratio',
      stay: 'above',
      margin: (1 - threshold) / (1 - least.value) - 1,
      from: 'V42.surgePlan',
    };
    return form === 'points' && leftEnd === 'surge' ? measured : { ...measured, binds: false };
  },
  tell: (measured, at) => {
    const { form, leftEnd } = at.input!.compressor.map;
    const edge = form === 'points' && leftEnd === 'surge' ? 'surge edge' : 'estimated surge edge';
    const where = speedFigure(measured.engineSpeedRpm!);
    const keep =
      measured.threshold > 0
        ? said`; a plan keeps ${percentFigure(measured.threshold)}`
        : said`; below it flow turns back`;
    return isPassed(measured)
      ? said`At ${where} the flow is ${percentFigure(Math.abs(measured.value))} ${measured.value < 0 ? 'below' : 'above'} the ${edge}${keep}. It hammers wheel, belt and hoses: a lower ratio, a smaller wheel, or no load at that speed.`
      : said`The flow comes nearest to the ${edge} at ${where}, ${percentFigure(measured.value)} above it${keep}.`;
  },
  levelPassed: (_, at) => (at.input!.compressor.map.leftEnd === 'surge' ? 'alarm' : 'caution'),
  missing: () => null,
};

/** V42: how far the flow keeps below the largest of its speed line; past it there is heat in place of boost. */
export const chokeLimit: LimitKind = {
  label: 'Choke',
  ruleId: 'V42',
  bindsUsually: false,
  measure: (at) => {
    const least = leastMargin(at, 'chokeMargin', 0);
    if (least === null) return null;
    const threshold = at.limit('V42.choke');
    return {
      ...least,
      threshold,
      kind: 'ratio',
      stay: 'above',
      margin: 1 - (1 - least.value) / (1 - threshold),
      from: 'V42.choke',
    };
  },
  tell: (measured) =>
    said`The flow comes nearest to the largest of its speed line at ${speedFigure(measured.engineSpeedRpm!)}, ${percentFigure(measured.value)} below it; below ${percentFigure(measured.threshold)} pressure falls away and heat rises.${isPassed(measured) ? ' More speed of the impeller gives little here: a larger wheel is what helps.' : ''}`,
  missing: () => null,
};

/** V52: the charge that a cooler leaves, against what is usual. The margin is the share of its rise above the open air. */
export const coolerLimit: LimitKind = {
  label: 'Charge behind the cooler',
  ruleId: 'V52',
  bindsUsually: false,
  measure: ({ input, curve, limit }) => {
    if (input === null || input.cooler === null) return null;
    const hottest = highestOf(curve!, 'manifoldTemperature');
    if (hottest === null) return null;
    const threshold = limit('V52.charge');
    const room = threshold - input.air.temperature;
    return {
      value: hottest.value,
      threshold,
      kind: 'temperature',
      stay: 'below',
      margin: room > 0 ? (threshold - hottest.value) / room : 1 - hottest.value / threshold,
      engineSpeedRpm: hottest.rpm,
      from: 'V52.charge',
    };
  },
  tell: (measured) => {
    const whole = (kelvin: number) => figureOf(kelvin, 'temperature', { decimals: 0 });
    return said`Behind the cooler the charge reaches ${whole(measured.value)} at ${speedFigure(measured.engineSpeedRpm!)}; up to ${whole(measured.threshold)} is asked for.${isPassed(measured) ? ' Colder or more water, ice, or a larger core; else less spark.' : ''}`;
  },
  missing: () => null,
};

function leastMargin(
  { input, curve }: EngineAtLimits,
  figure: MatchFigure,
  aboveRatio: number,
): { value: number; engineSpeedRpm: number } | null {
  if (input === null) return null;
  const { [figure]: margin, pressureRatio } = curve!.figures;
  const node = nodeOfHighest(curve!, (at) => (pressureRatio[at]! > aboveRatio ? -margin[at]! : Number.NaN));
  return node === null ? null : { value: margin[node]!, engineSpeedRpm: curve!.engineSpeedRpm[node]! };
}
