import type { ChartDescription, MapDescription } from '@pullbook/charts';
import type {
  ChangePart,
  CostClass,
  Enquiry,
  EnquiryAsked,
  Ground,
  NearCandidate,
  PartsList,
  ReachAnswer,
  ReachInput,
  ReachProgress,
} from '@pullbook/core/reach';
import type { Remark } from '@pullbook/core/remark';
import type { LimitId } from '@pullbook/core/rule';
import type { Chip, CursorTable, SentencePart, ShownRemark, ShownTable } from './model.ts';

/** A thing of the book that a figure rests on, by its name. */
export interface NamedSource {
  kind: 'pull' | 'combination' | 'map' | 'trial';
  id: string;
  name: string;
}

/** All that a page of a target needs to search by itself. Plain data. */
export interface ReachBundle {
  /** `null`: from a file, not of a book. */
  combinationId: string | null;
  /** Of the combination that is asked of. */
  name: string;
  /** Place of its colour and dash. */
  combination: number;
  isInvented: boolean;
  asked: EnquiryAsked;
  input: ReachInput;
  /** Mean of its own counted pulls on nodes, in the target's standard, inside units; `null`: never pulled. */
  measured: {
    pullIds: string[];
    engineSpeedRpm: number[];
    power: number[];
    boost: number[] | null;
  } | null;
  /** At most three above and three below the target; `nearPullsOf` (core/reach) says what separates them from a rung. */
  near: NearCandidate[];
  /** Names of all pulls, combinations and maps whose ids stand in the input, so that they can be opened. */
  sources: NamedSource[];
  remarks: Remark[];
}

/** A kept enquiry with what is needed to show it: the answer as it was given, and what became of it. */
export interface KeptEnquiry {
  enquiry: Enquiry;
  /** Place of the combination's colour and dash. */
  combination: number;
  isInvented: boolean;
  /** Names of what it rests on and what became of its rungs, as they are now. */
  sources: NamedSource[];
  /** What is no longer so since it was asked: pulls added, a sheet amended; empty: nothing. */
  remarks: Remark[];
}

/** What the page is made of: as it is searched, or as it was kept. */
export type ReachPageInput =
  | {
      bundle: ReachBundle;
      /** `null`: not there yet. */
      answer: ReachAnswer | null;
      /** The ladder so far; `null`: the search has not begun, or is over. */
      progress: ReachProgress | null;
      /** The chosen rung; `null`, or one that is gone: the first. `now`: as it is. */
      rungId: string | null;
    }
  | { kept: KeptEnquiry; rungId: string | null };

/** Where a figure or a line comes from, in words, with what can be opened. */
export interface ShownSource {
  text: string;
  links: ReachLink[];
}

/** `rule`: of the catalogue. `parts`: the shop's parts list. `match`: of the combination that is asked of. */
export interface ReachLink {
  kind: NamedSource['kind'] | 'rule' | 'parts' | 'match';
  /** '' for `parts` */
  id: string;
  text: string;
}

/** One change of a rung. */
export interface ShownChange {
  part: ChangePart;
  /** `Blower pulley 80 mm in place of 84 mm` */
  text: string;
  /** `no cost`, `small`, … */
  cost: string;
  ground: Ground;
  from: ShownSource;
}

/** A row of the ladder. */
export interface ShownRung {
  id: string;
  /** `1`; '' of what is there now */
  number: string;
  /** `Blower pulley 80 mm in place of 84 mm; longer cam` */
  title: string;
  changes: ShownChange[];
  /** `528 hp`, in the target's words */
  reached: string;
  /** `505 to 551`; '' it has none yet */
  band: string;
  /** `likely, 84 of 100`; '' it has no band yet */
  chance: string;
  /** `reaches the target`, `8 hp short`, `passes a limit` */
  state: string;
  reaches: boolean;
  /** `small` */
  cost: string;
  /** `Impeller speed 51,400 of 52,000 rpm, 1 % left, at 6,900 rpm`; '' nothing was looked at */
  bindsFirst: string;
  /** How many limits are passed or near that only caution. */
  cautions: number;
  ground: Ground;
  /** One sentence with all of it, for a screen reader. */
  spoken: string;
}

/** A figure with what it rests on. */
export interface ShownReachFigure {
  label: string;
  value: string;
  /** `505 to 551 hp`; '' none */
  band: string;
  /** `null`: no claim but a line of the sheet or of the parts list. */
  ground: Ground | null;
  from: ShownSource;
}

/** A limit as a row: `Impeller speed | 51,400 rpm | 52,000 rpm | 1 % | 6,900 rpm`. */
export interface ShownLimit {
  id: LimitId;
  label: string;
  value: string;
  /** `at most 52,000 rpm` */
  threshold: string;
  /** `1 % left`, `7 % over` */
  left: string;
  /** '' it is not about a speed */
  at: string;
  /** `binds`: a plan may not pass it. */
  kind: 'binds' | 'cautions';
  state: 'within' | 'near' | 'passed';
  /** What was looked at, in a sentence; where it is passed with what to do. */
  text: string;
  /** What its value rests on: a ground, or the sheet alone. */
  restsOn: Ground | 'reckoned from the sheet';
  from: ShownSource;
}

/** A pulled combination near the target, and how far the rung is from it. */
export interface ShownNear {
  combinationId: string;
  name: string;
  /** `503 hp, 3 pulls` */
  measured: string;
  /** `17 hp below` */
  distance: string;
  side: 'above' | 'below';
  isSameEngine: boolean;
  /** `2 lines of the sheet differ`, `alike on the sheet`; '' not known */
  separates: string;
  lines: { label: string; pulled: string; rung: string }[];
  links: ReachLink[];
}

/** A rung laid open. */
export interface ChosenRung {
  rung: ShownRung;
  /** Power, torque, boost: with its band, beside what is there now and what was measured, with the target. */
  chart: ChartDescription;
  cursor: CursorTable;
  /** `null`: nothing on it runs on a map, or the answer was kept without one. */
  map: MapDescription | null;
  /** What it makes, each with what it rests on. */
  figures: ShownReachFigure[];
  limits: ShownLimit[];
  /** Fuel it needs, and what injectors, pump and line have to give. */
  fuel: ShownReachFigure[];
  /** What another fuel does, a sentence each; empty: the fuel stays. */
  fuelEffect: string[];
  near: ShownNear[];
  assumptions: ShownRemark[];
  /** The trial that it became; `null`: none. */
  became: { trialId: string; combinationId: string; at: string } | null;
}

/** What is left in a supercharger. */
export interface ShownLeft {
  name: string;
  /** `Turned 7.54 times as fast as the engine in place of 7.07 this supercharger makes 524 hp (501 to 547); stopped there by impeller speed, at its limit …` */
  sentence: SentencePart[];
  /** What can be bought of it; '' as good as all, or nothing. */
  buyable: string;
  stops: ShownTable | null;
  from: ShownSource;
}

export interface ReachPage {
  /** `How does base engine, 84 mm make 520 hp?` */
  title: string;
  sentence: SentencePart[];
  chips: Chip[];
  /** Standard, searched, seed: a line. */
  basis: string;
  /** The search is over, or was kept. */
  isFinished: boolean;
  /** Short, for an announcement as it comes: `3 ways so far`, `4 ways to 520 hp`. */
  spoken: string;
  /** As it is; `null`: not known yet. */
  now: ShownRung | null;
  rungs: ShownRung[];
  chosen: ChosenRung | null;
  left: ShownLeft[];
  /** Why there is none, and the least that would help; `null`: feasible, or not known yet. */
  infeasible: { reason: string; remedy: string; others: string[] } | null;
  cautions: string[];
  remarks: ShownRemark[];
}

/** A line of the list of what was asked before. */
export interface EnquiryCard {
  id: string;
  question: string;
  /** The answer in few words. */
  sentence: SentencePart[];
  chips: Chip[];
  /** `base engine · 26 November 2026` */
  facts: string;
  /** `became the trial …` */
  became: { text: string; trialId: string }[];
}

/** One size or thing of the parts list as a row; it stands at the same place as in its list. */
export interface ShownPart {
  /** In the units shown: `78.0 mm`, `E85 as labelled`. */
  text: string;
  cost: CostClass;
  /** `common practice, no source` */
  from: string;
}

export interface PartsPage {
  kinds: {
    id: Exclude<keyof PartsList, 'costs' | 'binding'>;
    title: string;
    /** What a row is: `Diameter`. */
    what: string;
    rows: ShownPart[];
  }[];
  /** What each cost class means, 0 to 5. */
  costClasses: { cost: CostClass; text: string }[];
  /** Classes of kinds of change whose parts have none of their own. */
  costs: { part: ChangePart; label: string; cost: CostClass | null }[];
  /** Which limits bind here: as the rule has it, and as the shop does. `where`: where alone; '' everywhere. */
  binding: { id: LimitId; label: string; usually: boolean; here: boolean; where: string }[];
}
