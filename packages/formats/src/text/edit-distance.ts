/**
 * Fewest single-character insertions, deletions and substitutions that turn one text into the other
 * (Levenshtein, 1966).
 *
 * @example editDistance('kitten', 'sitting') // 3
 */
export function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const substituted = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(substituted, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[b.length]!;
}
