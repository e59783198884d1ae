import type { Judged, World } from './world.ts';

export const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

export const rmsOf = (values: readonly number[]): number => Math.sqrt(meanOf(values.map((one) => one * one)));

/** Share of the speeds of all worlds at which the measured lies within the band. */
export function heldBy(worlds: readonly World[], of: (world: World) => Judged): number {
  const inside = worlds.flatMap((world) => {
    const { off, half } = of(world);
    return off.map((one, place) => Math.abs(one) <= half[place]!);
  });
  return inside.filter(Boolean).length / inside.length;
}
