import type { ChartDescription, StillDescription } from '@pullbook/charts';
import type { StepId } from '@pullbook/core/trial';
import type { CursorTable, SentencePart, ShownBadge, ShownTable, TrialPage } from '../model.ts';

/**
 * The pictures of a set, in the order in which they are told. `alone`: one of each combination, at the scale of all.
 * One that a trial has nothing for (boost without a supercharger) is not in its set.
 */
export const PICTURES = [
  'answer',
  'alone',
  'power',
  'torque',
  'gain',
  'boost',
  'temperatures',
  'table',
  'combination',
  'badges',
  'why',
  'reply',
  'thumbnail',
] as const;
export type PictureName = (typeof PICTURES)[number];

/** One picture of a trial's set. */
export interface NamedStill {
  name: PictureName;
  /** Of which combination it is; `null`: of the whole trial. */
  key: string | null;
  /** For a list: `Power`, `B alone`. */
  title: string;
  still: StillDescription;
}

/** A step as its editor shows it: what was worked out, and what a person made of it. */
export interface ShownStep {
  id: StepId;
  /** `The baseline` */
  name: string;
  isShown: boolean;
  /** The trial has nothing for it, so that it cannot be shown; '' it has. */
  whyNot: string;
  title: string;
  /** As worked out. */
  ownTitle: string;
  seconds: number;
  ownSeconds: number;
}

/** All steps in the order in which they are told, shown or not. */
export interface ShownRunningOrder {
  steps: ShownStep[];
  speed: number;
  /** Of what is shown, at that speed. */
  seconds: number;
}

/** What a section of a report is made of, for HTML and paper alike. */
export type ReportBlock =
  | { kind: 'paragraph'; text: string; tone: 'plain' | 'strong' | 'quiet' }
  | { kind: 'list'; items: string[] }
  | { kind: 'facts'; rows: { label: string; value: string }[] }
  | { kind: 'table'; table: ShownTable }
  | { kind: 'chart'; chart: ChartDescription; cursor: CursorTable }
  | { kind: 'badges'; badges: ShownBadge[] }
  /** What can hurt somebody, or a claim that must not be made. */
  | { kind: 'cautions'; items: string[] };

/** One subject of a report under its title. */
export interface ReportSection {
  /**
   * `answer`, `tested`, `curves`, `table`, `margins`, `limits`, `next`, `cautions`; of the appendix `gains`, `why`, `notMeasured`,
   * `changes`, `pulls`, `figures`, `conditions`, `calibration`.
   */
  id: string;
  title: string;
  blocks: ReportBlock[];
}

/** A customer's report: HTML and PDF say the same of it. */
export interface ReportDescription {
  question: string;
  answer: SentencePart[];
  verdicts: TrialPage['verdicts'];
  /** Engine, days of the pulls, standard: a line under the answer. */
  facts: string;
  combinations: { key: string; name: string; combination: number }[];
  /** The shop's own name and mark; `null`: none is set. */
  signature: StillDescription['signature'];
  /** Where the shop is found; '' not said. */
  contact: string;
  /** ISO 8601: when the last counted pull was made; `null` unknown. The same pulls give the same file. */
  day: string | null;
  /** `Not for publication`, `invented data`; empty: nothing. */
  warnings: string[];
  /** What everybody reads. */
  sections: ReportSection[];
  /** What it rests on, for whoever looks closer. */
  appendix: ReportSection[];
}

/** What would leave the shop, before it does. */
export interface Leaving {
  /** What of it is not for everyone, a line each; empty: nothing stands in the way. */
  heldBack: string[];
  /** The same of what only a bundle carries. */
  heldBackInBundle: string[];
  /** Pulls whose curves or figures are in it. */
  pulls: { id: string; name: string; audience: string }[];
  /** Pulls that do not count, with why: only a bundle has their curves. */
  leftOut: { id: string; name: string; why: string }[];
  /** What else is in it: sheets, conditions, file names; a line each. */
  contents: string[];
}
