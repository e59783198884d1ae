/** `1 pull`, `3 pulls` */
export function counted(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? '' : 's'}`;
}

/** `a`, `a and b`, `a, b and c` */
export function listed(items: readonly string[], joint = 'and'): string {
  if (items.length < 2) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} ${joint} ${items.at(-1)}`;
}

/** First letter large, the rest as it is. */
export function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** First letter small unless the word is a name in capitals. */
export function inSentence(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
