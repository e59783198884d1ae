import type { Pull } from '@pullbook/core/pull';
import type { ListView } from '@pullbook/views';
import { listedFigures, type PullFigures } from './pull-figures.ts';

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

/** The listing of a pull known by its head and what a list shows of its view. */
export function pullListing(
  head: Omit<Pull, 'channels'>,
  view: ListView,
  combinationName: string | null,
): PullListing {
  const { channels: _, ...figures } = listedFigures({ ...head, channels: [] }, view);
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
