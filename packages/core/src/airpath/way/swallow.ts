/**
 * How far the air an engine swallows follows the density in its manifold: two terms of textbooks, on its volumetric efficiency at
 * manifold density.
 */

/** Compression ratio that is taken where it is not known. The term moves by 1 % between 8 and 11. */
export const USUAL_COMPRESSION_RATIO = 9.5;

/**
 * Share of the swept volume's charge that comes in against exhaust and manifold at one pressure:
 * `K(pi) = 1 + (1 - pi) / (k (r - 1))`, pi exhaust over manifold pressure (Taylor; Heywood, from memory). What stays in the clearance volume
 * expands or is pressed together. Steady pressures, events at dead centres, little overlap. Complete scavenging bounds it:
 * the whole cylinder fresh is r / (r - 1).
 *
 * @example pressureTerm({ exhaustOverManifold: 0.65, compressionRatio: 9.5, ratioOfSpecificHeats: 1.4 }) // 1.0294
 */
export function pressureTerm(at: {
  exhaustOverManifold: number;
  compressionRatio: number;
  ratioOfSpecificHeats: number;
}): number {
  const clearance = 1 / (at.compressionRatio - 1);
  const free = 1 + ((1 - at.exhaustOverManifold) * clearance) / at.ratioOfSpecificHeats;
  return Math.max(0, Math.min(free, 1 + clearance));
}

/**
 * A hotter charge takes less heat from the walls, so volumetric efficiency at manifold density rises with about the square root of
 * the manifold's temperature (the root of the correction standards). Exponent 0: the term is left out.
 *
 * @example chargeHeatTerm({ manifold: 360, baseline: 300, exponent: 0.5 }) // 1.0954
 */
export function chargeHeatTerm(at: { manifold: number; baseline: number; exponent: number }): number {
  if (at.exponent === 0) return 1;
  const ratio = at.manifold / at.baseline;
  return at.exponent === 0.5 ? Math.sqrt(ratio) : ratio ** at.exponent;
}
