/** UTF-16 units; as spreadsheets take it (from memory). */
const LONGEST = 31;

/**
 * Names for sheets: at most 31 long, without the signs that a sheet's name may not have, none empty, none twice whatever the
 * capitals, none the one that spreadsheets keep for themselves.
 *
 * @example sheetNames(['Run: 1', 'run? 1']) // ['Run 1', 'run 1 (2)']
 */
export function sheetNames(wanted: readonly string[]): string[] {
  const taken = new Set(['history']);
  return wanted.map((given) => {
    const plain = legal(given);
    let name = plain;
    for (let count = 2; taken.has(name.toLowerCase()); count++) {
      const more = ` (${count})`;
      name = cut(plain, LONGEST - more.length) + more;
    }
    taken.add(name.toLowerCase());
    return name;
  });
}

function legal(text: string): string {
  const plain = text
    .replace(/[[\]:*?/\\\p{Cc}\p{Cs}]+/gu, ' ')
    .replace(/\s+/gu, ' ')
    // A quote sign at either end is taken for the quoting of the name.
    .replace(/^['\s]+|['\s]+$/gu, '');
  return cut(plain, LONGEST).replace(/['\s]+$/u, '') || 'Table';
}

/** The beginning, never half a sign. */
function cut(text: string, most: number): string {
  if (text.length <= most) return text;
  let short = '';
  for (const sign of text) {
    if (short.length + sign.length > most) break;
    short += sign;
  }
  return short.trimEnd();
}
