import type { Context } from '../context.ts';

interface Printable {
  level: string;
  message: string;
  line?: number | null | undefined;
  column?: number | null | undefined;
}

/** Remarks as lines: `caution  line 3, column 2: …` */
export function remarkLines(remarks: readonly Printable[], context: Context, indent = '  '): string[] {
  const { yellow, red, dim } = context.colours;
  const paint: Record<string, (text: string) => string> = { caution: yellow, refusal: red };
  return remarks.map((one) => {
    const place = [
      ...(one.line == null ? [] : [`line ${one.line}`]),
      ...(one.column == null ? [] : [`column ${one.column}`]),
    ].join(', ');
    const word = (paint[one.level] ?? dim)(one.level.padEnd(7));
    return `${indent}${word}  ${place === '' ? '' : `${place}: `}${one.message}`;
  });
}
