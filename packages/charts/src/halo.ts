import type { SceneNode } from './model.ts';
import { px } from './scene-node.ts';
import type { Theme } from './theme.ts';

/** Of a letter's size, of a large one less: wide enough to part it from a film, narrow enough to leave its counters open. */
const HALO_EM = 0.15;
const LARGE_EM = 1.3;

/**
 * A drawing to be laid over a film: every word edged in the colour that it would stand on. Whatever is behind, the letters' nearest
 * neighbour is the ground that their contrast was reckoned against; a plate would do the same and hide the film. Soft
 * letters are written in full ink: an edge takes from them what makes them soft. `text`: the ordinary letters' size, px.
 */
export function haloed(nodes: SceneNode[], theme: Theme, text: number): SceneNode[] {
  return nodes.map((node) => {
    if (node.tag !== 'text') return { ...node, children: haloed(node.children, theme, text) };
    const { attributes } = node;
    const halo = {
      fill: attributes.fill === theme.softInk ? theme.ink : attributes.fill!,
      stroke: theme.paper,
      'stroke-width': px(HALO_EM * Math.min(Number(attributes['font-size']), LARGE_EM * text)),
      'stroke-linejoin': 'round',
      // The edge lies under the letter and takes nothing off it.
      'paint-order': 'stroke',
    };
    return { ...node, attributes: { ...attributes, ...halo } };
  });
}
