import type { Pull, PullView } from '@pullbook/core/pull';
import { type PullFigures, pullFigures } from './pull-figures.ts';

/** A pull in a list at the edge: what was written down about it, and its figures as it carries them. */
export interface PullListing extends Omit<PullFigures, 'channels'> {
  id: string;
  combinationId: string | null;
  combinationName: string | null;
  recordedAt: string | null;
  cell: string | null;
  outcome: Pull['outcome'];
  origin: Pull['origin'];
  fileHash: string | null;
  invented: boolean;
}

/** The listing of a pull known by its head and its view. */
export function pullListing(
  head: Omit<Pull, 'channels'>,
  view: PullView,
  combinationName: string | null,
): PullListing {
  const { channels: _, ...figures } = pullFigures({ ...head, channels: [] }, view);
  return {
    id: head.id,
    ...figures,
    combinationId: head.combinationId,
    combinationName,
    recordedAt: head.recordedAt,
    cell: head.cell,
    outcome: head.outcome,
    origin: head.origin,
    fileHash: head.fileHash,
    invented: head.invented,
  };
}
