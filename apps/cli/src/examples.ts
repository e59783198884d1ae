/** Examples under a command's help, one a line. */
export function examples(...lines: string[]): string {
  return `\nExamples:\n${lines.map((line) => `  $ ${line}`).join('\n')}\n`;
}
