/** Elements that act, or bring in what stands elsewhere. */
const ACTING =
  /<(?:[\w-]+:)?(script|foreignObject|iframe|object|embed|audio|video|canvas|animate\w*|set|handler|listener|a|link|meta|base)\b/i;

/**
 * What in an SVG could act, or ask somebody else for something, in a person's words; `null`: nothing. The text is only
 * looked at: signs written in another way (`&#x6a;`) are undone first, so that none hides.
 *
 * @example svgTrouble('<svg><script/></svg>') // 'an element <script>'
 */
export function svgTrouble(text: string): string | null {
  if (/<!(DOCTYPE|ENTITY)/i.test(text)) return 'a document type or entities';
  if (/<\?xml-stylesheet/i.test(text)) return 'a style sheet from elsewhere';
  const plain = withoutReferences(text);
  const element = ACTING.exec(plain);
  if (element) return `an element <${element[1]}>`;
  const handler = /[\s"'/](on[a-z]+)\s*=/i.exec(plain);
  if (handler) return `an attribute ${handler[1]}`;
  if (/@import/i.test(plain)) return 'a style that imports another';
  if (/javascript\s*:/i.test(plain)) return 'an address that runs';
  return outsideAddress(plain);
}

/** Width and height, or those of the viewBox; `null` where neither is there. */
export function svgSize(text: string): { width: number; height: number } | null {
  const root = /<svg\b[^>]*>/i.exec(text)?.[0] ?? '';
  const attribute = (name: string) => new RegExp(`\\s${name}\\s*=\\s*["']([^"']*)["']`).exec(root)?.[1];
  const box = attribute('viewBox')
    ?.trim()
    .split(/[\s,]+/)
    .map(Number);
  const [width, height] =
    box?.length === 4 ? [box[2]!, box[3]!] : [length(attribute('width')), length(attribute('height'))];
  return width > 0 && height > 0 ? { width, height } : null;
}

/** Pixels or no unit; a share of something else says nothing. */
const length = (text: string | undefined): number =>
  /^\s*[\d.]+\s*(px)?\s*$/.test(text ?? '') ? Number.parseFloat(text!) : Number.NaN;

function outsideAddress(plain: string): string | null {
  const addresses = [
    ...[...plain.matchAll(/[\s:]href\s*=\s*(?:"([^"]*)"|'([^']*)')/gi)].map(([, one, other]) => one ?? other),
    ...[...plain.matchAll(/[\s]src\s*=\s*(?:"([^"]*)"|'([^']*)')/gi)].map(([, one, other]) => one ?? other),
    ...[...plain.matchAll(/url\(\s*["']?([^"')]*)/gi)].map(([, one]) => one),
  ];
  const outside = addresses.find((one) => !/^\s*(#|data:image\/(png|jpeg);base64,)/i.test(one ?? ''));
  return outside === undefined ? null : `an address outside itself, "${outside.trim().slice(0, 60)}"`;
}

function withoutReferences(text: string): string {
  return text
    .replace(/&#x([0-9a-f]{1,6});?/gi, (whole, code) => signOf(Number.parseInt(code, 16), whole))
    .replace(/&#(\d{1,7});?/g, (whole, code) => signOf(Number(code), whole))
    .replace(/&(quot|apos);/g, (_, name) => (name === 'quot' ? '"' : "'"))
    .replace(/\\([0-9a-f]{1,6})\s?/gi, (whole, code) => signOf(Number.parseInt(code, 16), whole));
}

const signOf = (code: number, otherwise: string): string =>
  code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : otherwise;
