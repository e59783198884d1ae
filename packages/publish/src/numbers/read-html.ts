import { NUMBERS_NAME } from './names.ts';
import { plainOf } from './plain-of.ts';

/** The JSON block of a report; `null`: none. */
export function htmlNumbers(html: string): string | null {
  const match = new RegExp(`<script type="application/json" id="${NUMBERS_NAME}">([^<]*)</script>`, 'u').exec(
    html,
  );
  return match?.[1] ?? null;
}

/** Elements that do not break a line. */
const INLINE = /<\/?(?:strong|span|a|label)\b[^>]*>/gu;

/** What a reader of the report sees, line by line; drawings, whose texts are lines of their own, once. */
export function htmlTexts(html: string): string[] {
  const body = html.slice(html.indexOf('<body>'), html.lastIndexOf('</body>'));
  return body
    .replace(/<script\b[^>]*>[\s\S]*?<\/script>/gu, '')
    .replace(/<div class="drawing narrow">[\s\S]*?<\/svg><\/div>/gu, '')
    .replace(INLINE, '')
    .split(/<[^>]*>/u)
    .map((line) => plainOf(line).trim())
    .filter(Boolean);
}
