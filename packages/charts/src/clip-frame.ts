import { linesWay, momentOf, partsOf } from './clip-moment.ts';
import { faded, fadedBeside } from './fade.ts';
import type { ClipDescription, ClipStep, Scene, SceneNode } from './model.ts';
import { drawStill } from './still.ts';
import type { StillSize } from './still-size.ts';

/**
 * A clip's picture at a time. The last one of each step is the still itself; from its first one on a step has the axes
 * that it ends with. From step to step what both have stands, what only the first has goes, then what is new comes.
 *
 * @example drawClipFrame(clip, 2.5, { width: 1920, height: 1080, theme: 'dark', ground: true })
 */
export function drawClipFrame(clip: ClipDescription, atSeconds: number, size: StillSize): Scene {
  const { step: index, crossed, drawn } = momentOf(clip, atSeconds);
  const scene = drawStep(clip.steps[index]!, drawn, size);
  const before = clip.steps.slice(0, index).findLast(({ seconds }) => seconds > 0);
  if (crossed === 1 || !before) return scene;
  const left = drawStep(before, 'whole', size);
  const nodes =
    crossed < 0.5
      ? fadedBeside(left.nodes, scene.nodes, 1 - 2 * crossed)
      : fadedBeside(scene.nodes, left.nodes, 2 * crossed - 1);
  return { ...scene, nodes };
}

function drawStep(step: ClipStep, drawn: number | 'whole', size: StillSize): Scene {
  if (drawn === 'whole') return drawStill(step.still, size);
  if (partsOf(step.still.body) > 0) {
    const scene = drawStill(step.still, size);
    return { ...scene, nodes: withParts(scene.nodes, drawn) };
  }
  const [low, high] = linesWay(step) ?? [0, 0];
  // Not yet under way the lines have no head: a step begins with its empty axes.
  const until = drawn === 0 ? low - (high - low) : low + drawn * (high - low);
  return drawStill(step.still, size, { until, drawn: step.drawn });
}

/** Only so many of a drawing's parts, the last of them coming in. */
function withParts(nodes: SceneNode[], shown: number): SceneNode[] {
  let part = 0;
  const shownOf = (all: SceneNode[]): SceneNode[] =>
    all.flatMap((node) => {
      if (node.tag !== 'g') return [node];
      if (node.attributes.class === 'part') {
        const share = shown - part;
        part += 1;
        return faded([node], share);
      }
      return [{ ...node, children: shownOf(node.children) }];
    });
  return shownOf(nodes);
}
