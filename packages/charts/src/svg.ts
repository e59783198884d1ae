import type { Scene, SceneNode } from './model.ts';

const ESCAPES: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Whether there is anything to escape or leave out; long paths pass at once. */
const SUSPECT = /[^\t\n\r -!#-%'-;=?-\ud7ff\ue000-\ufffd]/;

/** Text as XML holds it; signs that XML 1.0 forbids are left out. */
const escaped = (text: string): string =>
  SUSPECT.test(text)
    ? text
        // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the very signs that XML forbids
        .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu, '')
        .replace(/[&<>"]/gu, (sign) => ESCAPES[sign] ?? sign)
    : text;

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
