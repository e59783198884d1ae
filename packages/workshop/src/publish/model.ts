import { STILL_SIZES, type StillSizeName } from '@pullbook/charts';
import type { PublicationKind } from '@pullbook/core/publication';
import type { Remark } from '@pullbook/core/remark';
import type { Paper } from '@pullbook/views';
import type { PictureName } from '@pullbook/views/publish';
import type { Looking } from '../trial-answer.ts';

/** Formats of each kind, the usual one first. A clip as `png` is a folder of numbered pictures. */
export const FORMATS = {
  still: ['png', 'svg', 'pdf'],
  clip: ['mp4', 'webm', 'mov', 'png'],
  report: ['html', 'pdf'],
  table: ['xlsx', 'csv', 'json'],
  bundle: ['zip'],
} as const satisfies Record<PublicationKind, readonly string[]>;
export type FormatOf<Kind extends PublicationKind> = (typeof FORMATS)[Kind][number];

/** Sizes of pictures, as they are asked for. */
export const SIZE_NAMES = Object.keys(STILL_SIZES) as StillSizeName[];

/** What is made without `--kind`. */
export const USUAL_KINDS: readonly PublicationKind[] = ['still', 'clip', 'report'];

/** A picture of the set; `key`: of that combination alone; `null`: all of that name. */
export interface PictureWanted {
  name: PictureName;
  key: string | null;
}

/** What is to leave the shop, checked. */
export interface PublishRequest extends Looking {
  kinds: PublicationKind[];
  /** At least one of each kind that is made. */
  formats: { [Kind in PublicationKind]: FormatOf<Kind>[] };
  /** The clip's format was asked for: another is no answer. */
  clipFormatSaid: boolean;
  /** `null`: the whole set. */
  pictures: PictureWanted[] | null;
  /** Of stills and clips. */
  sizes: StillSizeName[];
  theme: 'light' | 'dark';
  /** `false`: transparent, to lay over a film. */
  ground: boolean;
  fps: 30 | 60;
  /** Of the clip: 2 is twice as fast; `null`: as the trial has it. */
  speed: number | null;
  /** Of the clip, s, whatever its speed; `null`: as it comes out. */
  seconds: number | null;
  paper: Paper;
  /** Although it holds what is not for everyone: then it says so itself. */
  privateToo: boolean;
  /** To look at only: not noted as published. */
  draft: boolean;
}

/** One file that was made. */
export interface PublishedFile {
  /** From the root; of a numbered sequence its folder. */
  path: string;
  kind: PublicationKind;
  /** px; `null`: not a picture. */
  width: number | null;
  height: number | null;
  /** s; `null`: it does not run. */
  seconds: number | null;
  bytes: number;
}

/** What became of a publishing. Whole files are listed even where a later one could not be made. */
export interface PublishReport {
  files: PublishedFile[];
  /** `null`: a draft, or nothing was made. */
  publicationId: string | null;
  state: 'done' | 'cancelled' | 'stopped';
  remarks: Remark[];
}
