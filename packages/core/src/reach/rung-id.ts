import { fingerprint } from '../numeric/index.ts';
import type { ReachChange } from './model.ts';

/** Name of a set of changes: the same changes have the same in any search, in whatever order they are told. */
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
  return `r${fingerprint(words)}`;
}
