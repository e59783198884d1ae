import type { StillSize } from './still-size.ts';

const LONGEST = 60;

/**
 * A file name that says what is in the still: its words, its size, light or dark, `transparent` without a ground.
 * Only small Latin letters, digits and hyphens, so that every system and every upload takes it.
 *
 * @example stillFileName('What does the cam add?', size, 'png') // 'what-does-the-cam-add-1920x1080-dark.png'
 */
export function stillFileName(words: string, size: StillSize, ending: 'png' | 'svg'): string {
  const plain = words
    .normalize('NFKD')
    .replaceAll('ß', 'ss')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/gu, '-')
    .replace(/^-+|-+$/gu, '');
  const cut =
    plain.length <= LONGEST
      ? plain
      : plain
          .slice(0, LONGEST + 1)
          .replace(/-[^-]*$/u, '')
          .slice(0, LONGEST);
  const parts = [
    cut || 'still',
    `${size.width}x${size.height}`,
    size.theme,
    ...(size.ground ? [] : ['transparent']),
  ];
  return `${parts.join('-')}.${ending}`;
}
