/** Every text and every number of a description, however deep; `undefined` counts as a text so that a test finds it. */
export function leavesOf(value: unknown): { texts: string[]; numbers: number[] } {
  if (typeof value === 'number') return { texts: [], numbers: [value] };
  if (typeof value === 'string' || value === undefined) return { texts: [`${value}`], numbers: [] };
  if (value === null || typeof value !== 'object') return { texts: [], numbers: [] };
  const leaves = Object.values(value).map(leavesOf);
  return { texts: leaves.flatMap(({ texts }) => texts), numbers: leaves.flatMap(({ numbers }) => numbers) };
}
