import { STILL_SIZES, type StillSizeName, type ThemeName } from '@pullbook/charts';

/** A clip is no thumbnail. */
export type ClipSize = Exclude<StillSizeName, 'thumbnail'>;

/** `mp4`: plays everywhere. `webm`: can be transparent. `png`: numbered pictures in a zip, for any video editor. */
export type ClipFormat = 'mp4' | 'webm' | 'png';

/** What a person wants of a clip. */
export interface ClipChoice {
  format: ClipFormat;
  size: ClipSize;
  framesPerSecond: 30 | 60;
  theme: ThemeName;
  /** `false`: nothing behind the drawing, to lay it over a film. */
  ground: boolean;
}

/** What is drawn and encoded: the choice in pixels. */
export interface ClipFrames {
  format: ClipFormat;
  width: number;
  height: number;
  framesPerSecond: number;
  theme: ThemeName;
  ground: boolean;
}

/** An MP4 has no transparency, whatever was chosen before it. */
export function framesOf({ format, size, framesPerSecond, theme, ground }: ClipChoice): ClipFrames {
  const { width, height } = STILL_SIZES[size];
  return { format, width, height, framesPerSecond, theme, ground: ground || format === 'mp4' };
}
