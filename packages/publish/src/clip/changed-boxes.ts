import type { SceneNode } from '@pullbook/charts';
import { type Box, nodeBox, pointsBox, strokeRoom, united, WHOLE } from './node-box.ts';

/** An element of a picture with all that it is, to be told from another. */
export interface Element {
  node: SceneNode;
  said: string;
}

/**
 * Where two pictures differ, as few boxes, px. A line that only grew differs where it grew: that is what makes a frame of
 * a clip cheap.
 */
export function changedBoxes(before: readonly Element[], after: readonly Element[]): Box[] {
  const gone = without(before, after);
  const come = without(after, before);
  const boxes: Box[] = [];
  const grown = new Set<Element>();
  for (const old of gone) {
    const look = pathLook(old.node);
    const same = look && come.find((one) => !grown.has(one) && pathLook(one.node) === look);
    if (!same) boxes.push(nodeBox(old.node));
    else {
      grown.add(same);
      boxes.push(pathChange(old.node, same.node));
    }
  }
  for (const one of come) if (!grown.has(one)) boxes.push(nodeBox(one.node));
  return joined(boxes);
}

/** Those of a list that another has not, each as often as it is there more often. */
function without(own: readonly Element[], other: readonly Element[]): Element[] {
  const left = new Map<string, number>();
  for (const { said } of other) left.set(said, (left.get(said) ?? 0) + 1);
  return own.filter(({ said }) => {
    const count = left.get(said) ?? 0;
    left.set(said, count - 1);
    return count <= 0;
  });
}

/** All of a path but its way; `null`: not a path. */
function pathLook({ tag, attributes }: SceneNode): string | null {
  if (tag !== 'path') return null;
  const { d: _, ...look } = attributes;
  return JSON.stringify(look);
}

/** Between the points that two ways have in common from their begin and to their end. */
function pathChange(before: SceneNode, after: SceneNode): Box {
  const [old, now] = [pieces(before), pieces(after)];
  if (!old || !now) return united([nodeBox(before), nodeBox(after)]);
  const shorter = Math.min(old.length, now.length);
  let first = 0;
  while (first < shorter && old[first] === now[first]) first += 1;
  let last = 0;
  while (last < shorter - first && old.at(-1 - last) === now.at(-1 - last)) last += 1;
  const changed = (all: string[]) => all.slice(Math.max(0, first - 1), all.length - Math.max(0, last - 1));
  return pointsBox([...changed(old), ...changed(now)].join(''), strokeRoom(after));
}

/** A way in commands with their points; `null`: it has other than straight pieces. */
const pieces = ({ attributes }: SceneNode): string[] | null => {
  const way = String(attributes.d ?? '');
  return /[^MLZ\d.,\s-]/u.test(way) ? null : (way.match(/[MLZ][^MLZ]*/gu) ?? []);
};

/** Boxes that together are hardly larger than apart become one. */
function joined(boxes: readonly Box[]): Box[] {
  const kept: Box[] = [];
  for (let box of boxes) {
    for (;;) {
      const near = kept.findIndex((one) => area(united([one, box])) <= 1.2 * (area(one) + area(box)));
      if (near < 0) break;
      box = united([box, kept[near]!]);
      kept.splice(near, 1);
    }
    kept.push(box);
  }
  return kept.includes(WHOLE) ? [WHOLE] : kept;
}

const area = ({ left, right, top, bottom }: Box): number => (right - left) * (bottom - top);
