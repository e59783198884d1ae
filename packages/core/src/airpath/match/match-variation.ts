import { normalSource } from '../../numeric/index.ts';
import type { SpreadGroup, SpreadPart } from '../model.ts';
import { AS_GIVEN, type MatchVariation } from './match-plan.ts';

/** Parts that are added; the others are shares and multiply. */
const ADDED: ReadonlySet<SpreadPart> = new Set(['efficiency', 'cooler', 'slip']);

/** A share drawn below this is as far as one can fall: a model without head or air is none. */
const LEAST_FACTOR = 0.05;

/** A match varied draw by draw: `draw` first, then `at` for each node of that draw; both give the same object. */
export interface VariationSource {
  draw: (draw: number) => MatchVariation;
  at: (node: number) => MatchVariation;
}

/**
 * How a match is varied. A group's numbers come from the seed and its key alone: matches that share a group share its draws, and what they
 * have in common cancels in their difference.
 */
export function variationSource(spread: readonly SpreadGroup[], seed: number): VariationSource {
  const groups = spread.map(({ key, parts, factor, shapes }) => ({
    lines: parts.map((part, line) => ({ part, by: factor[line]!, shape: shapes?.[line] ?? null, drawn: 0 })),
    normals: new Float64Array(Math.max(0, ...factor.map((line) => line.length))),
    source: normalSource(seed, key),
  }));
  const shaped = groups.flatMap(({ lines }) => lines.filter(({ shape }) => shape !== null));
  const shapedParts = [...new Set(shaped.map(({ part }) => part))];
  const alike = { ...AS_GIVEN };
  const variation = { ...AS_GIVEN };
  return {
    draw: (draw) => {
      Object.assign(alike, AS_GIVEN);
      for (const { lines, normals, source } of groups) {
        source(draw, normals);
        for (const line of lines) {
          line.drawn = 0;
          for (let column = 0; column < line.by.length; column++)
            line.drawn += line.by[column]! * normals[column]!;
          if (line.shape === null) alike[line.part] = moved(line.part, alike[line.part], line.drawn);
        }
      }
      return Object.assign(variation, alike);
    },
    at: (node) => {
      for (const part of shapedParts) variation[part] = 0;
      for (const { part, shape, drawn } of shaped) variation[part] += shape![node]! * drawn;
      for (const part of shapedParts) variation[part] = moved(part, alike[part], variation[part]);
      return variation;
    },
  };
}

const moved = (part: SpreadPart, value: number, by: number): number =>
  ADDED.has(part) ? value + by : Math.max(LEAST_FACTOR, value * (1 + by));
