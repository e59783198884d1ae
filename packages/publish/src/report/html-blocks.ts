import { escaped } from '@pullbook/charts';
import type { ReportBlock, ReportSection } from '@pullbook/views/publish';
import { chartInHtml } from './html-chart.ts';
import { tableInHtml } from './html-table.ts';
import type { ThemedColours } from './themed-svg.ts';

/** A section with its blocks. */
export const sectionInHtml = ({ id, title, blocks }: ReportSection, colours: ThemedColours): string =>
  `<section aria-labelledby="${id}"><h2 id="${id}">${escaped(title)}</h2>\n${blocks.map((block) => blockInHtml(block, colours)).join('\n')}\n</section>`;

function blockInHtml(block: ReportBlock, colours: ThemedColours): string {
  switch (block.kind) {
    case 'paragraph':
      if (block.tone === 'strong') return `<h3 dir="auto">${escaped(block.text)}</h3>`;
      return `<p dir="auto"${block.tone === 'quiet' ? ' class="quiet"' : ''}>${escaped(block.text)}</p>`;
    case 'list':
      return `<ul>${items(block.items)}</ul>`;
    case 'facts':
      return `<ul>${items(block.rows.map(({ label, value }) => `${label}: ${value}`))}</ul>`;
    case 'table':
      return tableInHtml(block.table);
    case 'chart':
      return chartInHtml(block, colours);
    case 'badges':
      return `<h3>What the comparison shows for itself</h3><ul>${block.badges
        .map(
          ({ label, earned, why }) =>
            `<li><span class="badge">${escaped(label)}: ${earned ? 'earned' : 'not earned'}.</span> ${escaped(why)}</li>`,
        )
        .join('')}</ul>`;
    case 'cautions':
      return `<ul class="cautions">${items(block.items)}</ul>`;
  }
}

const items = (texts: readonly string[]): string =>
  texts.map((text) => `<li dir="auto">${escaped(text)}</li>`).join('');
