import type { PublicationKind } from '@pullbook/core/publication';
import type { Remark } from '@pullbook/core/remark';
import type { TrialAnswer } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import type { Signature, ViewOptions } from '@pullbook/views';
import type { PublishedNumbers } from '../edge/published-numbers.ts';
import type { PublishedFile, PublishRequest } from './model.ts';

/** What every file of a publishing is made from. */
export interface Making {
  book: Book;
  answer: TrialAnswer;
  options: ViewOptions;
  signature: Signature;
  request: PublishRequest;
  numbers: PublishedNumbers;
  /** Beginning of the names of the files. */
  stem: string;
  signal: AbortSignal | undefined;
  /** Of one file: 0 to 1. */
  onProgress: ((what: string, share: number) => void) | undefined;
}

/** One file to be made, or a folder of numbered pictures. */
export interface Piece {
  kind: PublicationKind;
  name: string;
  /** Writes it under `path`; a refusal is what stands in its way. */
  make: (path: string) => Promise<MadePiece | { trouble: Remark }>;
}

/** What is known of a file when it is made; its bytes are counted when it stands in its place. */
export type MadePiece = Pick<PublishedFile, 'width' | 'height' | 'seconds'> & { remarks?: Remark[] };

/** Neither a picture nor a film. */
export const PLAIN: MadePiece = { width: null, height: null, seconds: null };
