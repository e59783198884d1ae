import type { ReachChange } from './model.ts';

const OFFSET = 0x811c9dc5;
const PRIME = 0x01000193;

/** Name of a set of changes: the same changes have the same in any search, in whatever order they are told. FNV-1a, twice, 64 bits. */
export function rungId(changes: readonly ReachChange[]): string {
  const words = changes
    .map(({ part, said, edits, clears }) =>
      edits.length + clears.length === 0
        ? `${part} ${said.text}`
        : [part, ...clears, ...edits.map(({ section, field, text }) => `${section}.${field}=${text}`)].join(
            ' ',
          ),
    )
    .sort()
    .join('; ');
  return `r${hashOf(words, OFFSET)}${hashOf(words, OFFSET ^ PRIME)}`;
}

function hashOf(text: string, from: number): string {
  let hash = from;
  for (let place = 0; place < text.length; place++) hash = Math.imul(hash ^ text.charCodeAt(place), PRIME);
  return (hash >>> 0).toString(16).padStart(8, '0');
}
