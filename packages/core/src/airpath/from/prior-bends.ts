import type { MatchInput, SpreadGroup, SpreadPart } from '../model.ts';

/** Degrees of Legendre's polynomials over the speeds: 1 tilts a curve, 2 bows it, more bend it in places. */
export type Bend = 1 | 2 | 3 | 4;
/** None of them moves the mean. */
export const BENDS: readonly Bend[] = [1, 2, 3, 4];

/** Of the shapes over speed, one deviation, finer ones less: a map, an engine's pipes and its spark go over speed as nobody foretells (common practice, no source). */
export const SPREAD_OF_BEND: Record<Bend, number> = { 1: 0.04, 2: 0.03, 3: 0.02, 4: 0.02 };

/** A bend at a place from -1, the lowest speed, to 1, the highest. */
export function bendAt(bend: Bend, place: number): number {
  const square = place * place;
  if (bend === 1) return place;
  if (bend === 2) return (3 * square - 1) / 2;
  if (bend === 3) return (place * (5 * square - 3)) / 2;
  return ((35 * square - 30) * square + 3) / 8;
}

/**
 * How these parts may bend over the speeds of a match before anything was fitted: the same spread that a fit begins with, so that the band
 * before the first boosted pull says what the fit then has to find.
 */
export function bendsOver(
  { baseline }: MatchInput,
  key: string,
  parts: readonly SpreadPart[],
): SpreadGroup[] {
  if (parts.length === 0) return [];
  const speeds = baseline.engineSpeedRpm;
  const [low, high] = [speeds[0]!, speeds.at(-1)!];
  const bent = parts.flatMap((part) => BENDS.map((bend) => ({ part, bend })));
  return [
    {
      key: `${key}, over speed`,
      parts: bent.map(({ part }) => part),
      factor: bent.map(({ bend }, line) =>
        bent.map((_, column) => (column === line ? SPREAD_OF_BEND[bend] : 0)),
      ),
      shapes: bent.map(({ bend }) =>
        speeds.map((speed) => bendAt(bend, (2 * (speed - low)) / (high - low) - 1)),
      ),
    },
  ];
}
