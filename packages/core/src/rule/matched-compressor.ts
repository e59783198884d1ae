import { figureOf, percentFigure, speedFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { MatchAtHand } from './match-at-hand.ts';
import { matchedPlace } from './matched-place.ts';
import type { Finding } from './model.ts';
import { speedsIn } from './speeds-where.ts';

/** V42: surge and choke in the window. V14: efficiency and discharge temperature. */
export const matchedCompressor = (at: MatchAtHand): Finding[] => [
  ...surge(at),
  ...choke(at),
  ...matchedPlace(at),
  ...efficiency(at),
  ...discharge(at),
];

/** At little pressure flow that turns back hammers little: only surge itself is told there. */
function surge(at: MatchAtHand): Finding[] {
  const isLoaded = (node: number) => at.figure('pressureRatio', node) > at.limit('V42.ratio');
  const least = at.highest((node) => (isLoaded(node) ? -at.figure('surgeMargin', node) : Number.NaN));
  const threshold = at.limit('V42.surge');
  const where = speedsIn(at, ['surge']) ?? speedsIn(at, ['surge risk'], isLoaded);
  if (where === null && (least === null || -least.value >= threshold)) return [];
  const inSurge = speedsIn(at, ['surge']);
  const margin = least === null ? Number.NaN : -least.value;
  const place = where ?? said`at ${speedFigure(at.curve.engineSpeedRpm[least!.node]!)}`;
  const isNear = margin < threshold;
  const { form, leftEnd } = at.input.compressor.map;
  const isEstimated = form === 'rated' || leftEnd === 'not known';
  const edge = isEstimated ? 'estimated surge edge' : 'surge edge';
  return [
    at.find('V42', {
      input: 'Air flow and the map’s surge edge',
      ...(Number.isFinite(margin) ? { kind: 'ratio' as const, value: margin, threshold } : {}),
      level: inSurge !== null && !isEstimated ? 'alarm' : inSurge !== null || isNear ? 'caution' : 'note',
      said:
        inSurge !== null && isEstimated
          ? said`By the match the flow lies below the estimated surge edge ${inSurge}. Nobody measured where this compressor surges: go up in small steps, listen for flutter, and stop where flow turns back. Its maker’s map, or points with surge marked, would tell.`
          : inSurge !== null
            ? said`By the match the compressor surges ${inSurge}: flow turns back, which hammers wheel, belt and hoses. Do not pull there: a lower ratio, a smaller wheel or a bypass that opens.`
            : isNear
              ? said`By the match the flow is ${percentFigure(margin)} above the ${edge} ${place}; ${percentFigure(threshold)} is little. Listen for flutter, and see that the bypass opens on the lift.`
              : said`By the match the compressor works left of the highest pressure ratio of its line ${place}, ${percentFigure(margin)} above the ${edge} at the least: surge is possible. See that the bypass opens on the lift.`,
    }),
  ];
}

function choke(at: MatchAtHand): Finding[] {
  const least = at.highest((node) => -at.figure('chokeMargin', node));
  const threshold = at.limit('V42.choke');
  const choked = speedsIn(at, ['choked']);
  if (choked === null && (least === null || -least.value >= threshold)) return [];
  const margin = least === null ? Number.NaN : -least.value;
  return [
    at.find('V42', {
      input: 'Air flow and the largest flow of the line',
      ...(Number.isFinite(margin) ? { kind: 'ratio' as const, value: margin, threshold } : {}),
      said:
        choked !== null
          ? said`By the match the compressor chokes ${choked}: the engine would take more air than its speed line gives, and more speed of the impeller makes heat instead of boost. A bigger wheel is what helps, unless pulleys, losses or air flow were entered wrong.`
          : said`By the match the flow at ${speedFigure(at.curve.engineSpeedRpm[least!.node]!)} is ${percentFigure(margin)} below the largest that its speed line gives; below ${percentFigure(threshold)} pressure falls away and heat rises.`,
    }),
  ];
}

function efficiency(at: MatchAtHand): Finding[] {
  const least = at.highest((node) =>
    at.figure('pressureRatio', node) > at.limit('V14.ratio') ? -at.figure('efficiency', node) : Number.NaN,
  );
  const threshold = at.limit('V14.matched');
  if (least === null || -least.value >= threshold) return [];
  const value = -least.value;
  const isNearChoke = at.figure('chokeMargin', least.node) < at.figure('surgeMargin', least.node);
  return [
    at.find('V14', {
      input: 'Efficiency of the compressor by the match',
      kind: 'ratio',
      value,
      threshold,
      said: said`By the match the compressor’s efficiency falls to ${percentFigure(value)} at ${speedFigure(at.curve.engineSpeedRpm[least.node]!)}; below ${percentFigure(threshold)} much of the drive becomes heat. It works ${isNearChoke ? 'far to the right of its best: a bigger wheel or a lower ratio' : 'left of its best: a smaller wheel'} would do better there.`,
    }),
  ];
}

function discharge(at: MatchAtHand): Finding[] {
  const hottest = at.highest((node) => at.figure('dischargeTemperature', node));
  const threshold = at.limit('V14.discharge');
  if (hottest === null || hottest.value <= threshold) return [];
  return [
    at.find('V14', {
      input: 'Discharge temperature by the match',
      kind: 'temperature',
      value: hottest.value,
      threshold,
      level: 'caution',
      said: said`By the match the air leaves the compressor at ${figureOf(hottest.value, 'temperature', { decimals: 0 })} at ${speedFigure(at.curve.engineSpeedRpm[hottest.node]!)}; above ${figureOf(threshold, 'temperature', { decimals: 0 })} hoses and seals suffer. Look at efficiency and ratio, and keep hands and fuel lines away.`,
    }),
  ];
}
