import type { SceneNode } from './model.ts';
import { px } from './scene-node.ts';

/**
 * Nodes with so much less of their paint. Fill and stroke are made thinner, not a layer over them: a rasteriser takes
 * many times as long for a layer. A picture within the picture, which only a layer could fade, is there or not.
 */
export function faded(nodes: SceneNode[], share: number): SceneNode[] {
  if (share >= 1) return nodes;
  if (share <= 0) return [];
  return nodes.map((node) => {
    if (node.tag === 'g') return { ...node, children: faded(node.children, share) };
    if (node.tag === 'image') return node;
    const thinner = ['fill-opacity', 'stroke-opacity'].map((name) => [
      name,
      px(share * Number(node.attributes[name] ?? 1)),
    ]);
    return { ...node, attributes: { ...node.attributes, ...Object.fromEntries(thinner) } };
  });
}

/** A drawing's elements one after the other, without the groups they are in. */
export const leaves = (nodes: SceneNode[]): SceneNode[] =>
  nodes.flatMap((node) => (node.tag === 'g' ? leaves(node.children) : [node]));

/** What of a drawing another one does not have, faded; what both have stands as it is. */
export function fadedBeside(own: SceneNode[], other: SceneNode[], share: number): SceneNode[] {
  const shared = new Set(leaves(other).map((node) => JSON.stringify(node)));
  return leaves(own).flatMap((node) => (shared.has(JSON.stringify(node)) ? [node] : faded([node], share)));
}
