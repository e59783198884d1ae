import { beyondMeasured } from '../airpath/index.ts';
import { figureOf, speedFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { MatchAtHand } from './match-at-hand.ts';
import type { Finding } from './model.ts';
import { speedsIn, speedsWhere } from './speeds-where.ts';

/** V42 of where a match lies: beyond what was measured, nowhere, or below ambient. */
export const matchedPlace = (at: MatchAtHand): Finding[] => [
  ...beyondTheMap(at),
  ...noCommonFlow(at),
  ...noBoost(at),
];

/** A rated map has no measured region: that all of it is assumed is said where it was taken. */
function beyondTheMap(at: MatchAtHand): Finding[] {
  const isMeasured = at.input.compressor.map.form === 'points';
  const isBeyond = isMeasured ? beyondMeasured(at.input, at.curve) : [];
  const beyond = speedsWhere(at, (node) => isBeyond[node] === true);
  return [
    ...(beyond === null
      ? []
      : [
          at.find('V42', {
            input: 'Flow and speed against the measured map',
            level: 'note',
            said: said`The match lies beyond what was measured of the map ${beyond}: its figures are drawn on from the lines beside.`,
          }),
        ]),
  ];
}

function noCommonFlow(at: MatchAtHand): Finding[] {
  const none = speedsIn(at, ['no solution']);
  return none === null
    ? []
    : [
        at.find('V42', {
          input: 'Flow of compressor and engine',
          said: said`Compressor and engine find no common flow ${none}: look at map, pulleys and losses; no figure is given there.`,
        }),
      ];
}

/** A supercharger in the way. Past an open bypass the manifold lies below ambient by design. */
function noBoost(at: MatchAtHand): Finding[] {
  const ambient = at.input.air.pressure;
  const isInTheWay = (node: number): boolean =>
    at.curve.state[node] !== 'bypassed' && at.figure('manifoldPressure', node) < 0.98 * ambient;
  const where = speedsWhere(at, isInTheWay);
  if (where === null) return [];
  const lowest = at.highest((node) =>
    isInTheWay(node) ? -at.figure('manifoldPressure', node) : Number.NaN,
  )!;
  return [
    at.find('V42', {
      input: 'Manifold and ambient pressure',
      said: said`By the match the supercharger is in the way ${where}: the manifold is ${figureOf(ambient + lowest.value, 'pressureDifference')} below ambient at ${speedFigure(at.curve.engineSpeedRpm[lowest.node]!)}. Look at pulleys and step-up, at the losses of filter, pipes, cooler and throttle, at the bypass, and whether the map is of this supercharger.`,
    }),
  ];
}
