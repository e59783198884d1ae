import { bandsOfDraws, type MatchCase, type MatchDraws, matchDraws } from '@pullbook/core/airpath';
import { type FitTarget, fitTogether, type MatchFit } from '@pullbook/core/fit';
import { type Pull, viewPull } from '@pullbook/core/pull';
import { type ReachInput, type ReachParts, reachPart } from '@pullbook/core/reach';
import type { Remark, Result } from '@pullbook/core/remark';
import { type Finding, findingsOfPull, type RuleContext } from '@pullbook/core/rule';
import { type ColumnMapping, type FileReading, type PullDraft, pullsFromReading } from '@pullbook/formats';
import { asCarried } from '../as-carried.ts';
import { type PullFigures, pullFigures } from '../edge/pull-figures.ts';
import { readSource } from './read-source.ts';

/** What takes long for a long log, as jobs for a thread: from the input alone to the result. */
export const jobs = {
  readFile: readSource,
  /** The reading is given back with the pulls: its numbers were handed over. */
  draftPulls: ({ reading, mapping }: ReadingToDraft): Drafts => ({
    reading,
    drafts: pullsFromReading(reading, mapping),
  }),
  /** Figures as the file carries them. */
  figuresOfPulls: ({ pulls, rules }: PullsToLookAt): FiguresOfPull[] =>
    pulls.map((pull) => {
      const view = viewPull(pull, asCarried(pull));
      const findings = findingsOfPull(pull, view, rules);
      return { id: pull.id, figures: pullFigures(pull, view), findings, remarks: view.remarks };
    }),
  /** Matches adapted to the boosted pulls of combinations that have one supercharger. */
  fitTogether: (targets: FitTarget[][]): Result<MatchFit[]> => fitTogether(targets),
  /** A slice of the draws of matches; slices made side by side give what one run gives. */
  drawMatch: ({ cases, ...slice }: MatchesToDraw): MatchDraws => matchDraws(cases, slice),
  /** Their bands, from all slices in order. */
  bandsOfDraws: (slices: MatchDraws[]) => bandsOfDraws(slices),
  /** A part of a search from a target; parts made side by side give what one run gives. */
  reachPart: ({ input, name, given }: PartOfReach) => reachPart(input, name, given),
};

interface PartOfReach {
  input: ReachInput;
  name: keyof ReachParts;
  given: ReachParts[keyof ReachParts]['given'];
}

interface MatchesToDraw {
  cases: MatchCase[];
  draws: number;
  seed: number;
  from: number;
}

interface PullsToLookAt {
  pulls: Pull[];
  /** What the rules may know beside the pulls. */
  rules: RuleContext;
}

interface ReadingToDraft {
  reading: FileReading;
  mapping: ColumnMapping[];
}

interface Drafts {
  reading: FileReading;
  drafts: Result<PullDraft[]>;
}

interface FiguresOfPull {
  id: string;
  figures: PullFigures;
  findings: Finding[];
  remarks: Remark[];
}
