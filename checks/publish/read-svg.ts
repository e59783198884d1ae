/** An element of an SVG file, with what it holds between its tags. */
export interface SvgElement {
  tag: string;
  attributes: Record<string, string>;
  text: string;
  children: SvgElement[];
}

const ENTITIES: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };
const plain = (text: string): string =>
  text.replace(/&(amp|lt|gt|quot|apos);/gu, (_, name: string) => ENTITIES[name]!);

/**
 * Reads an SVG file by itself (XML 1.0 without comments, processing instructions and CDATA, which none of ours has). Uses nothing
 * of the program, so that what stands in the file is what is checked. Throws where tags do not match.
 */
export function readSvg(file: string): SvgElement {
  const top: SvgElement = { tag: '', attributes: {}, text: '', children: [] };
  const open = [top];
  let at = 0;
  for (const tag of file.matchAll(/<(\/?)([a-z]+)((?:\s+[a-z][\w:-]*="[^"<]*")*)\s*(\/?)>/gu)) {
    open.at(-1)!.text += between(file.slice(at, tag.index));
    at = tag.index + tag[0].length;
    const [, closing, name, attributes, alone] = tag;
    if (closing !== '') {
      if (open.pop()?.tag !== name) throw new Error(`</${name}> closes nothing`);
      continue;
    }
    const element: SvgElement = { tag: name!, attributes: {}, text: '', children: [] };
    for (const [, key, value] of attributes!.matchAll(/([a-z][\w:-]*)="([^"]*)"/gu))
      element.attributes[key!] = plain(value!);
    open.at(-1)!.children.push(element);
    if (alone === '') open.push(element);
  }
  if (open.length !== 1 || at !== file.length) throw new Error('the file does not end with its last tag');
  return top.children[0]!;
}

function between(text: string): string {
  if (text.includes('<')) throw new Error(`not a tag: ${text.slice(0, 80)}`);
  return plain(text);
}

export const allOf = (element: SvgElement): SvgElement[] => [element, ...element.children.flatMap(allOf)];

/** An attribute as a number; throws where it is none. */
export function numberOf({ tag, attributes }: SvgElement, name: string): number {
  const value = Number(attributes[name]);
  if (attributes[name] === undefined || !Number.isFinite(value))
    throw new Error(`${tag} has no number ${name}: ${attributes[name]}`);
  return value;
}
