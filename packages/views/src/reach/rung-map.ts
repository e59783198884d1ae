import type { MapDescription } from '@pullbook/charts';
import type { FittedMap, MatchInput } from '@pullbook/core/airpath';
import { fromInside } from '@pullbook/core/quantity';
import type { Rung } from '@pullbook/core/reach';
import { mapLines, roundSpeeds } from '../match/map-lines.ts';
import { isSameMap, MAP_ROOM, mapAxes, namedSpeeds } from '../match/match-map.ts';
import { airFlowUnit } from '../match/match-words.ts';
import { listed } from '../wording.ts';
import type { ReachInView } from './reach-in-view.ts';
import { drawnOf } from './rung-chart.ts';

/**
 * The map of the chosen way's supercharger with its operating line, and that of the engine as it is where it runs on the same map.
 * `null`: it has no supercharger, or the answer was kept without its map.
 */
export function rungMap(view: ReachInView): MapDescription | null {
  const { chosen, now, show } = view;
  const input = inputOf(chosen);
  if (chosen === null || input === null) return null;
  const map = knownMap(view, input.compressor.map);
  const drawn = drawnOf(view).filter(({ curve }) => {
    const of = inputOf(curve === now?.curve ? now : chosen);
    return curve.map !== null && of !== null && isSameMap(of.compressor.map, map);
  });
  const speeds = drawn.flatMap(({ curve }) => correctedSpeeds(curve.impellerSpeedRpm ?? [], input));
  if (speeds.length === 0) return null;
  const lines = mapLines(
    map,
    {
      speeds: roundSpeeds([Math.min(...speeds), Math.max(...speeds)]),
      headScale: input.compressor.headScale,
      efficiencyShift: input.compressor.efficiencyShift,
      gasRatio: input.gas.specificHeat / (input.gas.specificHeat - input.gas.gasConstant),
    },
    show,
  );
  const { unit } = airFlowUnit(show);
  const operating = drawn.flatMap(({ key, name, style, curve }): MapDescription['operating'] =>
    curve.map === null
      ? []
      : [
          {
            key,
            name,
            style,
            engineSpeed: curve.engineSpeedRpm,
            x: curve.map.correctedFlow.map((flow) => fromInside(flow, unit)),
            y: [...curve.map.pressureRatio],
            named: namedSpeeds(curve.engineSpeedRpm).map((engineSpeed) => ({
              engineSpeed,
              text: show.number(engineSpeed, 'engineSpeed'),
            })),
          },
        ],
  );
  const most = (axis: 'x' | 'y') =>
    Math.max(...operating.flatMap((line) => line[axis].map((one) => one ?? 0)));
  return {
    ...mapAxes(map.reference, show),
    xRange: [0, MAP_ROOM[0] * Math.max(lines.reach[0], most('x'))],
    yRange: [1, 1 + MAP_ROOM[1] * (Math.max(lines.reach[1], most('y')) - 1)],
    speedLines: lines.speedLines,
    efficiency: lines.efficiency,
    edges: lines.edges,
    points: null,
    operating,
    alternative: `Map of ${map.name}${map.form === 'rated' ? ', assumed from a rated point' : ''}: pressure ratio over corrected air flow, with where ${listed(drawn.map(({ key, name }) => (key === 'Now' ? `${name} as it is now` : name)))} ${drawn.length === 1 ? 'runs' : 'run'}.`,
  };
}

/** The map of the bundle where it is that one: answers come over from a thread, and lines are remembered by the map they are of. */
const knownMap = ({ bundle }: ReachInView, map: FittedMap): FittedMap =>
  bundle?.input.builds
    .flatMap(({ match }) => match?.input.compressor.map ?? [])
    .find((one) => isSameMap(one, map)) ?? map;

const inputOf = (rung: Rung | null): MatchInput | null => rung?.made?.match?.input ?? null;

/** r/min as the map has them, by the ambient air: near enough to choose which speed lines are drawn. */
function correctedSpeeds(speedsRpm: readonly number[], { air, compressor }: MatchInput): number[] {
  const factor = Math.sqrt(compressor.map.reference.temperature / air.temperature);
  return speedsRpm.filter(Number.isFinite).map((rpm) => rpm * factor);
}
