/**
 * A figure in a sentence, with what it takes to write it in other units. It is data, so that it goes between threads and is
 * compared; the quantity room makes it and writes it.
 */
export interface Figure {
  /** As the plain message has it: SI and a decimal point, with its unit. */
  plain: string;
  /** In the inside unit of its kind. */
  value: number;
  /** Kind of quantity; the room that knows them stands above this one. */
  kind: string;
  /** Missing: as many as its kind is shown with. */
  decimals?: number;
  /** Units it is shown in, where they are not those of its kind: `%` of a ratio, feet of a height. */
  units?: { us: string; si: string };
  /** The number alone, as the first of a range. */
  isBare?: true;
}

/** A text that still knows its figures. `text`: plain, for a log and for JSON. */
export interface Said {
  text: string;
  parts: SaidParts;
}

export type SaidParts = readonly (string | Figure)[];

type Sayable = string | number | Figure | Said;

/**
 * A sentence with its figures kept as such, so that a page can write them in its units and with its decimal mark.
 *
 * @example said`The sweep hides ${figureOf(10.1, 'torque')}.`.text // 'The sweep hides 10.1 N·m.'
 */
export function said(strings: TemplateStringsArray, ...values: readonly Sayable[]): Said {
  return fromParts(
    strings.flatMap((text, place) => [text, ...(place < values.length ? partsOf(values[place]!) : [])]),
  );
}

/** Several one after another: `joined([a, b], ', ')`. */
export function joined(items: readonly Sayable[], between: string): Said {
  return fromParts(items.flatMap((item, place) => [...(place === 0 ? [] : [between]), ...partsOf(item)]));
}

/** The pieces where they have a figure, to stand beside the plain text; else nothing. */
export const piecesOf = ({ parts }: Said): { parts?: SaidParts } =>
  parts.some((part) => typeof part !== 'string') ? { parts } : {};

function fromParts(pieces: SaidParts): Said {
  const parts: (string | Figure)[] = [];
  for (const piece of pieces) {
    const last = parts.at(-1);
    if (typeof piece === 'string' && typeof last === 'string') parts[parts.length - 1] = last + piece;
    else if (piece !== '') parts.push(piece);
  }
  return { text: parts.map((part) => (typeof part === 'string' ? part : part.plain)).join(''), parts };
}

function partsOf(item: Sayable): SaidParts {
  if (typeof item === 'string' || typeof item === 'number') return [`${item}`];
  return 'parts' in item ? item.parts : [item];
}
