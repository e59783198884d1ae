import { drawStack, escaped, pointText, type StackGeometry } from '@pullbook/charts';
import type { ReportBlock } from '@pullbook/views/publish';
import { swatch } from './html-table.ts';
import { jsonInHtml } from './json-in-html.ts';
import { type ThemedColours, themedSvg } from './themed-svg.ts';

type ChartBlock = Extract<ReportBlock, { kind: 'chart' }>;

/** A drawing for a page and one for a telephone; the page shows the one that fits. */
const SIZES = [
  { name: 'wide', width: 860, text: 13, perShare: 165 },
  { name: 'narrow', width: 360, text: 13, perShare: 130 },
] as const;

/** A chart with its live part: what the cursor says at each engine speed, word for word as on the trial's page. */
export function chartInHtml({ chart, cursor }: ChartBlock, colours: ThemedColours): string {
  const shares = chart.panels.reduce((sum, { share }) => sum + share, 0);
  const drawn = SIZES.map(({ name, width, text, perShare }) => {
    const size = { width, height: Math.round(110 + perShare * shares), text, ground: false };
    const light = drawStack(chart, { ...size, theme: 'light' }, false);
    const dark = drawStack(chart, { ...size, theme: 'dark' }, false);
    return {
      svg: `<div class="drawing ${name}">${themedSvg(light.scene, dark.scene, colours)}</div>`,
      view: viewOf(light.geometry, width),
    };
  });
  const rows = [
    ...cursor.rows.map(({ name, unit, cells }) => ({ name, unit, cells })),
    ...(cursor.gains ?? []).map(({ name, unit, cells }) => ({ name, unit, cells: [cells] })),
  ];
  const data = {
    at: cursor.at,
    places: cursor.at.map((at) => pointText(chart, at)),
    columns: cursor.columns.map(({ key }) => key),
    rows,
    views: drawn.map(({ view }) => view),
  };
  return `<figure class="chart">
${drawn.map(({ svg }) => svg).join('\n')}
<div class="live" hidden>${controls(cursor)}${readout(cursor, rows, data.places[cursor.start] ?? '')}</div>
<script type="application/json">${jsonInHtml(data)}</script>
</figure>`;
}

const viewOf = ({ left, right, xRange: [low, high], panels }: StackGeometry, width: number) => ({
  width,
  left,
  right,
  low,
  high,
  panels: panels.map(({ top, bottom }) => [top, bottom]),
});

function controls({ at, start, columns }: ChartBlock['cursor']): string {
  const shown = columns.filter(({ combination }) => combination !== null);
  const boxes = shown.map(
    ({ key, combination }) =>
      `<label><input type="checkbox" value="${combination}" checked> ${swatch(combination!)}${escaped(key)}</label>`,
  );
  return `<div class="controls"><label class="speed">Engine speed <input type="range" min="0" max="${at.length - 1}" value="${start}"></label>${
    shown.length > 1 ? `<fieldset><legend>Shown</legend>${boxes.join('')}</fieldset>` : ''
  }</div>`;
}

function readout(
  { columns, start }: ChartBlock['cursor'],
  rows: readonly { name: string; unit: string; cells: string[][] }[],
  place: string,
): string {
  const heads = columns.map(
    ({ key, combination }) =>
      `<th scope="col"${combination === null ? '' : ` class="c${combination}"`}>${combination === null ? '' : swatch(combination)}${escaped(key)}</th>`,
  );
  const body = rows.map(({ name, unit, cells }, row) => {
    const isWide = cells.length === 1 && columns.length > 1;
    const figures = cells.map((column, index) => {
      const combination = isWide ? null : columns[index]?.combination;
      const attributes = [
        `data-row="${row}" data-column="${index}"`,
        isWide ? `colspan="${columns.length}"` : '',
        combination == null ? '' : `class="c${combination}"`,
      ];
      return `<td ${attributes.filter(Boolean).join(' ')}>${escaped(column[start] ?? '')}</td>`;
    });
    return `<tr><th scope="row">${escaped(unit === '' ? name : `${name}, ${unit}`)}</th>${figures.join('')}</tr>`;
  });
  return `<div class="scroll figures" role="group" tabindex="0" aria-label="Figures at the cursor"><table class="readout"><thead><tr><th scope="col" class="place">${escaped(place)}</th>${heads.join('')}</tr></thead><tbody>${body.join('')}</tbody></table></div>`;
}
