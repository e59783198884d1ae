import { STILL_SIZES, type ThemeName } from '@pullbook/charts';

/** How the pictures of a set are made. */
export interface StillChoices {
  sizes: SizeName[];
  theme: ThemeName;
  isTransparent: boolean;
  format: StillFormat;
}

type SizeName = (typeof SIZES)[number]['value'];
type StillFormat = (typeof FORMATS)[number]['value'];

/** With the width and height of each, for the room that its preview takes. */
export const SIZES = [
  { value: '1080p', text: 'Wide', pixels: '1920 × 1080', ...STILL_SIZES['1080p'] },
  { value: '4k', text: 'Wide, 4K', pixels: '3840 × 2160', ...STILL_SIZES['4k'] },
  { value: 'square', text: 'Square', pixels: '1080 × 1080', ...STILL_SIZES.square },
  { value: 'tall', text: 'Tall, 9:16', pixels: '1080 × 1920', ...STILL_SIZES.tall },
] as const;

/** The thumbnail is drawn at a size of its own, whatever the others are. */
export const THUMBNAIL = { value: 'thumbnail', ...STILL_SIZES.thumbnail } as const;

/** How many files a choice of pictures gives. */
export const filesOf = (stills: readonly { name: string }[], sizes: readonly SizeName[]): number =>
  stills.reduce((sum, { name }) => sum + (name === 'thumbnail' ? 1 : sizes.length), 0);

export const FORMATS = [
  { value: 'png', text: 'PNG, pixels' },
  { value: 'svg', text: 'SVG, to edit' },
  { value: 'pdf', text: 'PDF, to print' },
] as const;

export const THEMES: { value: ThemeName; text: string }[] = [
  { value: 'light', text: 'Light' },
  { value: 'dark', text: 'Dark, for video' },
];

/** A name for a picture that two of one set never share. */
export const pictureId = ({ name, key }: { name: string; key: string | null }): string =>
  key === null ? name : `${name}:${key}`;

/** The sizes with one more or one less, in the order in which they are offered; the last one stays. */
export function withSize(sizes: readonly SizeName[], size: SizeName, isWanted: boolean): SizeName[] {
  const wanted = SIZES.map(({ value }) => value).filter((one) =>
    one === size ? isWanted : sizes.includes(one),
  );
  return wanted.length === 0 ? [...sizes] : wanted;
}
