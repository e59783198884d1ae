import type { CorrectionId } from '../air/index.ts';
import type { QuantityKind, UnitSystem } from '../quantity/index.ts';

/** What can be made of a trial for people outside. */
export const PUBLICATION_KINDS = ['still', 'clip', 'report', 'table', 'bundle'] as const;
export type PublicationKind = (typeof PUBLICATION_KINDS)[number];

/** One figure that was said outside, inside units. */
export interface PublishedFigure {
  /** `averagePower`, `peakPower`, `peakTorque`, `highestBoost`: of one combination. `meanGain`, `meanGainRatio`: of a changed one over the baseline. */
  id: 'averagePower' | 'peakPower' | 'peakTorque' | 'highestBoost' | 'meanGain' | 'meanGainRatio';
  /** Of which combination. */
  key: string;
  kind: QuantityKind;
  value: number;
  /** 95 % band; `null`: none is known. */
  low: number | null;
  high: number | null;
  /** Engine speed that it stands at, r/min; `null`: it stands at none. */
  engineSpeedRpm: number | null;
}

/** A figure as it was said: it is written in these units, and whether it still holds is a question of how it is written. */
export interface SaidFigure extends PublishedFigure {
  units: UnitSystem;
}

/** Where a publication appeared. */
export interface PublicationLink {
  /** An address, or words: `club magazine, May, page 12`. */
  where: string;
  /** ISO 8601 date; `null`: not said. */
  day: string | null;
  note: string;
}

/** What left the shop: when, of which trial, resting on which pulls, with which figures. Its links grow; the rest is never altered. */
export interface Publication {
  id: string;
  trialId: string;
  /** The trial's question as it then was. */
  question: string;
  /** The answer's sentence as it was said, in the units that were shown. */
  sentence: string;
  kinds: PublicationKind[];
  files: { name: string; kind: PublicationKind; bytes: number; sha256: string }[];
  /** Every pull that the figures rest on. */
  pullIds: string[];
  correction: CorrectionId;
  figures: SaidFigure[];
  /** It held what is not for everyone. */
  privateToo: boolean;
  links: PublicationLink[];
  /** ISO 8601 */
  at: string;
}

/** A figure that was said and is no longer what the pulls give. */
export interface StaleFigure {
  said: SaidFigure;
  /** `null`: the trial gives no such figure any more. */
  now: PublishedFigure | null;
}

/** A publication that carries old figures. */
export interface Erratum {
  publication: Publication;
  stale: StaleFigure[];
}
