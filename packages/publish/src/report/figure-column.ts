const FIGURE = /^[−+–]?\d[\d.,]*(?:\u00a0?%|(?: to [−+–]?\d[\d.,]*(?:\u00a0?%)?))?$/u;

/** Whether a column holds figures more than words, so that its cells stand at its right. */
export function isFigureColumn(cells: readonly string[]): boolean {
  const said = cells.filter((cell) => cell !== '');
  return 2 * said.filter((cell) => FIGURE.test(cell)).length > said.length;
}
