const LONGEST = 60;

/**
 * The beginning of the names of a trial's files, or of an answer's: its words in small Latin letters, digits and hyphens, so that every system and
 * every upload takes it. Words of another script leave what it is, and the beginning of its id tells them apart.
 *
 * @example publishedStem('What does the cam add?', '12ab34cd') // 'what-does-the-cam-add'
 */
export function publishedStem(question: string, id: string, kind: 'trial' | 'answer' = 'trial'): string {
  const plain = question
    .normalize('NFKD')
    .replaceAll('ß', 'ss')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/gu, '-')
    .replace(/^-+|-+$/gu, '');
  // Digits alone say nothing of the question either.
  if (!/[a-z]/u.test(plain)) return `${kind}-${id.slice(0, 8)}`;
  if (plain.length <= LONGEST) return plain;
  return plain
    .slice(0, LONGEST + 1)
    .replace(/-[^-]*$/u, '')
    .slice(0, LONGEST);
}

/** `what-does-the-cam-add-power-1920x1080-dark.png` */
export const publishedName = (stem: string, parts: readonly string[], ending: string): string =>
  `${[stem, ...parts].filter((part) => part !== '').join('-')}${ending === '' ? '' : `.${ending}`}`;
