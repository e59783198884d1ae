import { drawnStyle, escaped, PALETTE } from '@pullbook/charts';
import type { ShownTable } from '@pullbook/views';
import { isFigureColumn } from './figure-column.ts';
import { rowName } from './row-name.ts';

/** A table with its title and the rows' names as heads; wider than the page it is moved within its frame. */
export function tableInHtml({ title, columns, rows }: ShownTable): string {
  const isFigures = columns.map((_, place) => isFigureColumn(rows.map(({ cells }) => cells[place] ?? '')));
  const mark = (place: number) => (isFigures[place] ? ' class="figure"' : '');
  const heads = columns.map(
    ({ text, combination }, place) =>
      `<th scope="col"${mark(place)}>${combination === null ? '' : swatch(combination)}${escaped(text)}</th>`,
  );
  const body = rows.map(({ name, unit, cells }) => {
    const own = columns.map((_, place) => `<td dir="auto"${mark(place)}>${escaped(cells[place] ?? '')}</td>`);
    return `<tr><th scope="row" dir="auto">${escaped(rowName({ name, unit }))}</th>${own.join('')}</tr>`;
  });
  return `<div class="scroll" role="group" tabindex="0" aria-label="${escaped(title)}"><table><caption>${escaped(title)}</caption><thead><tr><td></td>${heads.join('')}</tr></thead><tbody>${body.join('')}</tbody></table></div>`;
}

/** A sample of a combination's line. */
export function swatch(combination: number): string {
  const { dash } = drawnStyle({ combination }, 'light');
  const dashed = dash.length > 0 ? ` stroke-dasharray="${dash.map((part) => 2.5 * part).join(' ')}"` : '';
  return `<svg class="swatch k${combination % PALETTE.length}" width="24" height="10" aria-hidden="true"><path d="M0 5H24" fill="none" stroke-width="2.5"${dashed}/></svg>`;
}
