import type { PlannedEngine } from './planned-engine.ts';

/** Stands over every card of limits. */
export const PLANNING_AID =
  'Planning aid, not a safety device. Makers’ limits, local codes and qualified people first. Nobody in the cell during a pull.';

/** What can hurt people with this engine, one sentence each. Common practice, no source, unless it says otherwise. */
export function cautionsOf(engine: PlannedEngine): string[] {
  const { fuel, hasNitrous, hasBelt, isRoots, isBlowThrough, isBoosted, maximumImpellerSpeed } = engine;
  const isAlcohol = fuel === 'methanol' || fuel === 'ethanol';
  return [
    'Rotating parts: stay out of the plane of flywheel, coupling and shaft; guards on, parts rated above the speed of the pull.',
    'Carbon monoxide: detector on, extraction running. Hearing protection for everybody near the cell.',
    ...(isBoosted
      ? [
          'Lean under boost or fuel pressure falling: end the pull, do not watch it. A second person is there.',
        ]
      : []),
    ...(fuel === 'methanol'
      ? [
          'Methanol burns with a flame that is nearly invisible in daylight, and is poisonous by skin, breath and mouth. Water at hand; flush the fuel system after the run.',
        ]
      : []),
    ...(isAlcohol
      ? [
          'Alcohol: every hose and seal rated for it; look for leaks before each pull. A second person is there.',
        ]
      : []),
    ...(hasNitrous
      ? [
          'Nitrous: bottle warmed only by a regulated heater, never a flame; no oil on fittings; vented cell; fuel comes before it, and only at full throttle above its lowest speed.',
        ]
      : []),
    ...(hasBelt
      ? [
          'Supercharger belt: no fingers near it, nobody in its line; a torn belt whips. Tension and dust looked at after the first two pulls.',
        ]
      : []),
    ...(maximumImpellerSpeed !== null || isBoosted
      ? ['Impeller: its highest speed is checked at zero slip before the pulley is fitted.']
      : []),
    ...(isRoots || isBlowThrough
      ? ['Backfire into a wet manifold under pressure: relief valve or burst panel in place, restraints on.']
      : []),
    'Stop button and the independent cut at a set speed tried today.',
  ];
}
