const PLAIN: Record<string, string> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"' };

/** The text that was escaped. */
export const plainOf = (markup: string): string =>
  markup.replace(/&(?:amp|lt|gt|quot);/gu, (entity) => PLAIN[entity]!);
