import { type FittedMap, lineTerms, type MatchCurve, speedLineAt } from '@pullbook/core/airpath';
import { edgeNumber } from './number.ts';

/** The map of a match, with the speed line of each engine speed: what a solver of others needs in place of our fit. */
export interface MapOfMatch {
  name: string;
  form: FittedMap['form'];
  referencePressureKpa: number;
  referenceTemperatureC: number;
  wheelExitDiameterMm: number;
  /** One an engine speed; `null`: the match has no solution there. Numbers as in docs/match-equations.md. */
  lines: (Record<string, number> | null)[];
}

export function mapOfMatch(map: FittedMap, { figures }: MatchCurve): MapOfMatch {
  return {
    name: map.name,
    form: map.form,
    referencePressureKpa: map.reference.pressure / 1000,
    referenceTemperatureC: map.reference.temperature - 273.15,
    wheelExitDiameterMm: 1000 * map.wheelExitDiameter,
    lines: [...figures.correctedSpeedRpm].map((speed) =>
      edgeNumber(speed) === null ? null : lineAtTheEdge(map, speed),
    ),
  };
}

/** A unit last in each name; what has none is dimensionless. */
const AT_THE_EDGE: Record<string, string> = {
  topFlow: 'topFlowKgPerS',
  bestFlow: 'bestFlowKgPerS',
  droop: 'droopPerKgPerSSquared',
  workSlope: 'workSlopePerKgPerS',
  workCurve: 'workCurvePerKgPerSSquared',
};

function lineAtTheEdge(map: FittedMap, correctedSpeedRpm: number): Record<string, number> {
  const line = speedLineAt(map, correctedSpeedRpm);
  const { form: _, ...terms } = lineTerms(line);
  return {
    correctedSpeedRpm: line.speedRpm,
    surgeFlowKgPerS: line.surgeFlow,
    peakFlowKgPerS: line.peakFlow,
    chokeFlowKgPerS: line.chokeFlow,
    ...Object.fromEntries(Object.entries(terms).map(([name, value]) => [AT_THE_EDGE[name] ?? name, value])),
  };
}
