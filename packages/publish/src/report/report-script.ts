/**
 * The live part of an HTML report, as it stands in the file: a cursor on each chart by pointer, touch and keys, and combinations that
 * can be hidden. Plain script of its own, since a report needs nothing beside it; without it the report is whole.
 */
export const REPORT_SCRIPT = `
'use strict';
for (const figure of document.querySelectorAll('figure.chart')) {
  const data = JSON.parse(figure.querySelector('script').textContent);
  const live = figure.querySelector('.live');
  const slider = live.querySelector('input[type=range]');
  const place = live.querySelector('.place');
  const cells = [...live.querySelectorAll('td[data-row]')];
  const drawings = [...figure.querySelectorAll('.drawing > svg')].map((svg, index) => {
    const view = data.views[index];
    const hair = document.createElementNS('http://www.w3.org/2000/svg', 'path');
    hair.setAttribute('class', 'hair');
    svg.append(hair);
    return { svg, hair, view };
  });
  const show = (node) => {
    slider.value = node;
    place.textContent = data.places[node];
    const said = [data.places[node]];
    for (const cell of cells) {
      const text = data.rows[cell.dataset.row].cells[cell.dataset.column][node];
      cell.textContent = text;
      if (cell.dataset.row === '0' && text !== '') said.push(data.columns[cell.dataset.column] + ' ' + text + ' ' + data.rows[0].unit);
    }
    slider.setAttribute('aria-valuetext', said.join(', '));
    for (const { hair, view } of drawings) {
      const share = (data.at[node] - view.low) / (view.high - view.low);
      const x = view.left + share * (view.right - view.left);
      hair.setAttribute('d', share < 0 || share > 1 ? '' : view.panels.map(([top, bottom]) => 'M' + x + ' ' + top + 'V' + bottom).join(''));
    }
  };
  const nearest = (wanted) => {
    let best = 0;
    for (let node = 1; node < data.at.length; node += 1)
      if (Math.abs(data.at[node] - wanted) < Math.abs(data.at[best] - wanted)) best = node;
    return best;
  };
  for (const { svg, view } of drawings) {
    const follow = (event) => {
      figure.classList.add('used');
      const box = svg.getBoundingClientRect();
      const x = ((event.clientX - box.left) / box.width) * view.width;
      show(nearest(view.low + ((x - view.left) / (view.right - view.left)) * (view.high - view.low)));
    };
    svg.addEventListener('pointerdown', follow);
    svg.addEventListener('pointermove', follow);
  }
  slider.addEventListener('input', () => show(Number(slider.value)));
  for (const box of live.querySelectorAll('input[type=checkbox]'))
    box.addEventListener('change', () => figure.classList.toggle('hide' + box.value, !box.checked));
  live.hidden = false;
  show(Number(slider.value));
}
`;
