import type { ThemeName } from './model.ts';
import type { StackMotion } from './stack-motion.ts';
import type { StillShape } from './still-shape.ts';

/** How the middle of a still is drawn. */
export interface PictureLook {
  shape: StillShape;
  theme: ThemeName;
  /** Colour that the picture stands on, or that its words are edged with where it stands on a film. */
  ground: string;
  /** Laid over another picture. */
  overlay: boolean;
  /** Ordinary text, px, and the least size of any. */
  text: number;
  /** The whole still, px: what is read of its proportions. */
  still: { width: number; height: number };
  /** How far the lines of a stack have drawn themselves; missing: all is there. */
  motion?: StackMotion | undefined;
}
