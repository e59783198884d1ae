import type { Fuel } from './model.ts';

/**
 * m/s in a feed line above which too much pressure is lost. What the trade's rule of dash sizes comes to: dash 6 to some 500 hp of
 * gasoline under boost, dash 8 to 900, dash 10 to 1,400 (common practice, no source) are 0.85 to 0.94 m/s.
 */
export const FASTEST_IN_LINE = 0.95;

/** Hoses by their dash size, sixteenths of an inch of the tube they stand for; inside m, usual of hoses (from memory). */
export const LINE_SIZES = [
  { name: 'dash 6', diameter: 8.7e-3 },
  { name: 'dash 8', diameter: 11.1e-3 },
  { name: 'dash 10', diameter: 14.3e-3 },
  { name: 'dash 12', diameter: 17.5e-3 },
  { name: 'dash 16', diameter: 22.2e-3 },
] as const;

/** Least inside diameter of a feed line, m, with the hose that has it; `null`: more than one hose of the list is needed. */
export function lineFor(fuelFlow: number, fuel: Fuel): { diameter: number; size: string | null } {
  const diameter = Math.sqrt((4 * fuelFlow) / (Math.PI * fuel.density * FASTEST_IN_LINE));
  return { diameter, size: LINE_SIZES.find((one) => one.diameter >= diameter)?.name ?? null };
}

/** m/s of fuel in a line of an inside diameter, m. */
export const speedInLine = (fuelFlow: number, fuel: Fuel, diameter: number): number =>
  (4 * fuelFlow) / (Math.PI * fuel.density * diameter ** 2);
