import type { PlannedEngine } from '@pullbook/core/plan';
import type { Cell } from '@pullbook/core/pull';
import type { MatchBundle } from '../match-model.ts';
import type { TrialPage } from '../model.ts';
import type { TrialInView } from '../trial-in-view.ts';

/** What a report says beside its trial. */
export interface ReportMore {
  /** The shop's described cells, for the calibrations behind the pulls. */
  cells: readonly Cell[];
  /** The engine as a card of limits sees it. */
  engine: PlannedEngine;
  /** Where the shop is found: address, telephone; '' none. */
  contact: string;
  /** The trial's supercharger matches, for what limits it; `null`: none was made. */
  match: MatchBundle | null;
}

/** A trial with its page, from which every section of a report is made: nothing is worded a second time. */
export interface ReportInView {
  view: TrialInView;
  page: TrialPage;
  more: ReportMore;
}
