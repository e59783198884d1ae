const STARTS_A_FORMULA = /^'*[=+\-@\t\r]/;

/**
 * Text for a cell of CSV that no spreadsheet takes for a formula: a quote sign is put before `=`, `+`, `-`, `@`, tab
 * or return at the start, and before quote signs that stand there already, so that `textFromSafe` undoes it exactly.
 */
export function safeText(text: string): string {
  return STARTS_A_FORMULA.test(text) ? `'${text}` : text;
}

/** The text that `safeText` was given. */
export function textFromSafe(text: string): string {
  return text.startsWith("'") && STARTS_A_FORMULA.test(text) ? text.slice(1) : text;
}

/** One field of CSV (RFC 4180): quoted where it holds a comma, a quote or a line break. */
export function csvField(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
