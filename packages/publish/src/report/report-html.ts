import { createHash } from 'node:crypto';
import { escaped } from '@pullbook/charts';
import type { ReportDescription } from '@pullbook/views/publish';
import { NUMBERS_NAME } from '../numbers/names.ts';
import { sectionInHtml } from './html-blocks.ts';
import { jsonInHtml } from './json-in-html.ts';
import { fontRules } from './report-fonts.ts';
import { REPORT_SCRIPT } from './report-script.ts';
import { reportStyle } from './report-style.ts';
import { ThemedColours } from './themed-svg.ts';

/**
 * A customer's report as one HTML file that needs no other and asks nobody: drawings, letters and figures are in it. Its charts have a
 * cursor; without script, and in print, it is whole all the same.
 *
 * @example writeFileSync(name, await reportHtml(report, { numbers }))
 */
export async function reportHtml(
  report: ReportDescription,
  { numbers }: { numbers?: unknown } = {},
): Promise<string> {
  const { body, colours } = reportBody(report);
  const style = reportStyle(await fontRules(signsIn(body)), colours.darkRules);
  const policy = `default-src 'none'; style-src '${hashOf(style)}'; script-src '${hashOf(REPORT_SCRIPT)}'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(report.question)}</title>
<style>${style}</style>
</head>
<body>
<main>
${body}
</main>
${numbers === undefined ? '' : `<script type="application/json" id="${NUMBERS_NAME}">${jsonInHtml(numbers)}</script>\n`}<script>${REPORT_SCRIPT}</script>
</body>
</html>
`;
}

/** What a reader sees, before letters and colours are laid to it. */
export function reportBody(report: ReportDescription): { body: string; colours: ThemedColours } {
  const colours = new ThemedColours();
  const body = [
    headOf(report),
    ...report.sections.map((section) => sectionInHtml(section, colours)),
    signaturePlace(report),
    ...(report.appendix.length === 0
      ? []
      : ['<p class="appendix" id="appendix">Appendix: what it rests on</p>']),
    ...report.appendix.map((section) => sectionInHtml(section, colours)),
  ].join('\n');
  return { body, colours };
}

function headOf({
  question,
  answer,
  verdicts,
  facts,
  warnings,
  signature,
  contact,
  sections,
  appendix,
}: ReportDescription) {
  const mark = signature?.mark ?? null;
  const words = [
    signature?.name ? `<p><strong>${escaped(signature.name)}</strong></p>` : '',
    contact === '' ? '' : `<p class="quiet">${escaped(contact)}</p>`,
  ].join('');
  const picture =
    mark === null
      ? ''
      : `<img src="${escaped(mark.address)}" alt="${escaped(signature?.name || 'Mark of the shop')}" width="${mark.width}" height="${mark.height}">`;
  return [
    words === '' && mark === null ? '' : `<div class="shop"><div>${words}</div>${picture}</div>`,
    `<h1 dir="auto">${escaped(question)}</h1>`,
    `<p class="answer" dir="auto">${answer
      .map(({ text, strong, quiet }) => {
        if (strong) return `<strong>${escaped(text)}</strong>`;
        return quiet ? `<span class="quiet">${escaped(text)}</span>` : escaped(text);
      })
      .join('')}</p>`,
    ...verdicts.map(
      ({ name, chip, figures }) =>
        `<p class="verdict">${name === '' ? '' : `${escaped(name)}: `}<strong>${escaped(chip.text)}</strong>${figures === '' ? '' : ` · ${escaped(figures)}`}</p>`,
    ),
    `<p class="facts">${escaped(facts)}</p>`,
    ...warnings.map((text) => `<p class="warning">${escaped(text)}</p>`),
    `<nav aria-label="Sections"><ul>${[...sections, ...appendix]
      .map(({ id, title }) => `<li><a href="#${id}">${escaped(title)}</a></li>`)
      .join('')}</ul></nav>`,
  ].join('\n');
}

const signaturePlace = ({ signature, contact }: ReportDescription): string =>
  `<div class="sign"><div>Signed for the shop, and the day</div><div>${escaped([signature?.name ?? '', contact].filter(Boolean).join(' · '))}</div></div>`;

const hashOf = (text: string): string =>
  `sha256-${createHash('sha256').update(text, 'utf8').digest('base64')}`;

/** Every sign that can be shown; what is markup beside it does no harm. */
const signsIn = (markup: string): string => `${markup} 0123456789`;
