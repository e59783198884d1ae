import {
  type ClipDescription,
  clipFrameKey,
  drawClipFrame,
  leaves,
  missingSigns,
  type SceneNode,
  type StillSize,
  sceneToSvg,
} from '@pullbook/charts';
import { renderAsync } from '@resvg/resvg-js';
import { fontsFor } from '../fonts-for.ts';
import { changedBoxes, type Element } from './changed-boxes.ts';
import { type Box, nodeBox, overlap } from './node-box.ts';
import { straightAlpha } from './straight-alpha.ts';

/** Where so much of a frame changed it is drawn as a whole. */
const MOST_TILES = 0.7;
/** A tile's outermost pixels may differ from the whole picture's, since its curves are cut there: they are not used. */
const RIM = 3;

/** One memory for all frames of a clip. */
export interface FramePainter {
  /** Red, green, blue and alpha of each pixel, alpha straight; written over by the next frame. */
  pixels: Uint8Array;
  /** Brings the pixels to a time of the clip. `false`: they are that already. */
  paint(atSeconds: number, standsFor: number): Promise<boolean>;
}

/**
 * Paints a clip's frames one after the other into one memory. Of each only the places that differ from the one before are
 * drawn; one that stands until `standsFor` later is drawn as a whole, to the pixel as a still is.
 */
export function framePainter(clip: ClipDescription, size: StillSize): FramePainter {
  const { width, height } = size;
  const pixels = new Uint8Array(4 * width * height);
  const boxes = new Map<string, Box>();
  let shown: readonly Element[] | null = null;
  let key = '';
  let isWhole = false;

  const boxOf = ({ node, said }: Element): Box => {
    const known = boxes.get(said);
    if (known) return known;
    if (boxes.size > 5000) boxes.clear();
    const box = nodeBox(node);
    boxes.set(said, box);
    return box;
  };

  async function drawTile(elements: readonly Element[], box: Box): Promise<void> {
    const tile = {
      left: Math.max(0, Math.floor(box.left) - RIM),
      right: Math.min(width, Math.ceil(box.right) + RIM),
      top: Math.max(0, Math.floor(box.top) - RIM),
      bottom: Math.min(height, Math.ceil(box.bottom) + RIM),
    };
    if (tile.left >= tile.right || tile.top >= tile.bottom) return;
    const within = elements.filter((element) => overlap(boxOf(element), tile));
    const drawn = await rasterised(
      within.map(({ node }) => node),
      tile,
    );
    if (!size.ground) straightAlpha(drawn);
    paste(drawn, tile, pixels, size);
  }

  return {
    pixels,
    paint: async (atSeconds, standsFor) => {
      const nextKey = clipFrameKey(clip, atSeconds);
      const stands = clipFrameKey(clip, atSeconds + standsFor) === nextKey;
      if (nextKey === key && (isWhole || !stands)) return false;
      const scene = drawClipFrame(clip, atSeconds, size);
      const elements = leaves(scene.nodes).map((node) => ({ node, said: JSON.stringify(node) }));
      const frame = { left: 0, right: width, top: 0, bottom: height };
      const changed = shown === null || stands ? [frame] : changedBoxes(shown, elements);
      const area = changed.reduce((sum, box) => sum + inside(box, size), 0);
      isWhole = stands || area > MOST_TILES * width * height;
      for (const box of isWhole ? [frame] : changed) await drawTile(elements, box);
      shown = elements;
      key = nextKey;
      return true;
    },
  };
}

/** A part of a picture, its alpha multiplied in. Drawn on a thread of its own. */
async function rasterised(nodes: SceneNode[], tile: Box): Promise<Uint8Array> {
  const [width, height] = [tile.right - tile.left, tile.bottom - tile.top];
  const svg = sceneToSvg({ width, height, nodes, alternative: '' });
  const placed = svg.replace(/viewBox="[^"]*"/u, `viewBox="${tile.left} ${tile.top} ${width} ${height}"`);
  const image = await renderAsync(placed, { font: fontsFor(missingSigns({ nodes })) });
  return image.pixels;
}

/** Lays a tile into the frame without its rim, but for the frame's own edges. */
function paste(drawn: Uint8Array, tile: Box, into: Uint8Array, { width, height }: StillSize): void {
  const tileWidth = tile.right - tile.left;
  const left = tile.left === 0 ? 0 : tile.left + RIM;
  const right = tile.right === width ? width : tile.right - RIM;
  const top = tile.top === 0 ? 0 : tile.top + RIM;
  const bottom = tile.bottom === height ? height : tile.bottom - RIM;
  for (let y = top; y < bottom; y += 1) {
    const from = 4 * ((y - tile.top) * tileWidth + (left - tile.left));
    into.set(drawn.subarray(from, from + 4 * (right - left)), 4 * (y * width + left));
  }
}

/** How much of a box lies in the frame, px². */
function inside(box: Box, { width, height }: StillSize): number {
  const across = Math.min(width, box.right) - Math.max(0, box.left);
  const down = Math.min(height, box.bottom) - Math.max(0, box.top);
  return Math.max(0, across) * Math.max(0, down);
}
