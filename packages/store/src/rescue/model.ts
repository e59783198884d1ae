import type { OriginalFile, Pull } from '@pullbook/core/pull';

/** A thing of the damaged book that could not be brought over, or not as it was. */
export interface RescueLoss {
  /** `pull`, `trial`, `original`, … */
  kind: string;
  id: string;
  /** '' where it is lost too. */
  name: string;
  /** What became of it, in words. */
  what: string;
}

/** What a rescue did. */
export interface RescueReport {
  /** ISO 8601 */
  at: string;
  /** Folder in the book's folder that holds the damaged files as they were. */
  damagedFolder: string;
  /** How many of each kind are in the book now. */
  kept: Record<string, number>;
  /** Pulls whose curve was made again from their original file. */
  madeAgain: { id: string; name: string; what: string }[];
  /** Gone from the book. */
  lost: RescueLoss[];
  /** Still in the book, but without something: a trial without one of its pulls. */
  poorer: RescueLoss[];
  /** Records on damaged pages of which nothing could be read. */
  unreadable: number;
}

/**
 * Reads the pulls of an original file again, as its confirmed mapping says, with ids of their own; `null`: it cannot be.
 * Given by whoever knows the formats.
 */
export type ReadAgain = (file: OriginalFile, bytes: Uint8Array) => Pull[] | null;
