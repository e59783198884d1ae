import runs from './font-signs.generated.json' with { type: 'json' };
import type { Scene, SceneNode } from './model.ts';

/** Signs that steer or space and leave no ink: no font has to have them. */
const WITHOUT_INK = /[\p{Cf}\p{Cc}\p{Zs}\p{Zl}\p{Zp}]/u;

function isShipped(point: number): boolean {
  let low = 0;
  let high = runs.length / 2 - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    if (point < runs[2 * middle]!) high = middle - 1;
    else if (point > runs[2 * middle + 1]!) low = middle + 1;
    else return true;
  }
  return false;
}

/**
 * Signs of a drawing that are in no shipped font, each once, in the order in which they come: whoever makes a picture of it
 * has to take them from elsewhere and say so, else they come out as empty boxes.
 *
 * @example missingSigns(drawStill(still, size)) // ['排', '気']
 */
export function missingSigns(scene: Pick<Scene, 'nodes'>): string[] {
  const missing = new Set<string>();
  const look = ({ text = '', children }: SceneNode): void => {
    for (const sign of text) {
      if (!isShipped(sign.codePointAt(0)!) && !WITHOUT_INK.test(sign)) missing.add(sign);
    }
    children.forEach(look);
  };
  scene.nodes.forEach(look);
  return [...missing];
}
