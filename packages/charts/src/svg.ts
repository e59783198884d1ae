import { escaped } from './escaped.ts';
import type { Scene, SceneNode } from './model.ts';

function nodeToSvg({ tag, attributes, children, text }: SceneNode): string {
  let open = `<${tag}`;
  for (const name in attributes) {
    const value = attributes[name];
    open += ` ${name}="${typeof value === 'number' ? value : escaped(value ?? '')}"`;
  }
  if (children.length === 0 && text === undefined) return `${open}/>`;
  return `${open}>${text === undefined ? '' : escaped(text)}${children.map(nodeToSvg).join('')}</${tag}>`;
}

/**
 * A drawing as an SVG file. Text stays text, in the named fonts or the next best that the reader has; the description
 * for a screen reader goes along as `desc`.
 */
export function sceneToSvg(scene: Scene, options: { title?: string } = {}): string {
  const { width, height, nodes, alternative } = scene;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img">`,
    options.title === undefined ? '' : `<title>${escaped(options.title)}</title>`,
    `<desc>${escaped(alternative)}</desc>`,
    ...nodes.map(nodeToSvg),
    '</svg>',
  ].join('');
}
