import type { CorrectionId } from '../air/index.ts';
import type { Baseline, Cooler, MatchCase, MatchState, SheetToMatch } from '../airpath/index.ts';
import type { CombinationSheet, PartChange, SectionId } from '../combination/index.ts';
import type { MatchFit } from '../fit/index.ts';
import type { Fuel, FuelEffect, FuelPump, FuelSupply, Injectors } from '../fuel/index.ts';
import type { Provenance } from '../quantity/index.ts';
import type { Remark, Said } from '../remark/index.ts';
import type { LimitFinding, LimitId, RuleThresholds } from '../rule/index.ts';

/** What is asked for. Power in W, in the standard of `ReachInput.standard`. */
export interface ReachTarget {
  what: 'peak power' | 'power at a speed' | 'average power';
  power: number;
  /** r/min; of `power at a speed` */
  atRpm: number | null;
  /** r/min; of `average power` */
  windowRpm: [low: number, high: number] | null;
  /** Pa, gauge, that may not be passed; `null`: none */
  boostCap: number | null;
}

/** What a claim rests on: the three words that stand beside every line. */
export type Ground = 'measured by you' | 'scaled from your data' | 'rule of thumb';

/** What a change costs, by the shop's own classes: 0 nothing, 1 small change, up to 5 an engine's worth. */
export type CostClass = 0 | 1 | 2 | 3 | 4 | 5;

/** What a change is about; the cost classes go by it. */
export const CHANGE_PARTS = [
  'pulley',
  'stepUp',
  'supercharger',
  'cooler',
  'fuel',
  'injectors',
  'pump',
  'belt',
  'breathing',
  'speedLimit',
] as const;
export type ChangePart = (typeof CHANGE_PARTS)[number];

/** One line of a sheet as it would be after a change. */
export interface SheetEdit {
  section: SectionId;
  field: string;
  /** As a person would enter it, with its unit; `null`: the line goes. */
  text: string | null;
}

/** One thing that is changed on a rung. */
export interface ReachChange {
  part: ChangePart;
  /** `Blower pulley 80 mm in place of 84 mm` */
  said: Said;
  /** What it makes of the sheet; empty: nothing on it (a gain that was stated). */
  edits: SheetEdit[];
  /** Sections that are taken away before the edits: another supercharger, no cooler. */
  clears: SectionId[];
  cost: CostClass;
  ground: Ground;
  /** What the ground is: the pulls, the list, the rule. */
  from: Said;
}

/** A supercharger that could be fitted, made ready on this engine by whoever has its map and sheet; or none. */
export interface ReachBuild {
  id: string;
  name: string;
  /** It is on the engine now. */
  isPresent: boolean;
  /** Matched as on the sheet with this supercharger, its fit taken in; `null`: naturally aspirated. */
  match: MatchCase | null;
  /** What the match took in; `null`: none. */
  fit: MatchFit | null;
  /**
   * What `match` was made of, before any fit: a change is written on its sheet and the match made again, as `pullbook match` does of
   * a combination with that change. `null` where `match` is.
   */
  madeOf: SheetToMatch | null;
  /** The sheet with it. */
  sheet: CombinationSheet;
  /** What making it present changes; empty where it is. */
  change: ReachChange | null;
  assumptions: Remark[];
}

/** Things that can be had, of the shop's parts list. Lengths in m, inside units. */
export interface PulleySize {
  diameter: number;
  cost: CostClass;
}

export interface ReachCooler {
  id: string;
  name: string;
  /** `null`: no cooler */
  cooler: Cooler | null;
  cost: CostClass;
  from: Provenance;
}

export interface ReachFuel {
  id: string;
  fuel: Fuel;
  cost: CostClass;
  from: Provenance;
}

/** A change of how the engine breathes: stated, or seen in a pair of combinations that were pulled. */
export interface ReachBreathing {
  id: string;
  name: string;
  /** On the air swallowed, over these speeds (held beyond the ends). */
  engineSpeedRpm: number[];
  factor: number[];
  /** One standard deviation, share. */
  spread: number;
  ground: Ground;
  from: Said;
  /** Combination it is a line of, where a pair was pulled; its sheet's edits. */
  edits: SheetEdit[];
  cost: CostClass;
  /** Pulls that show it. */
  pullIds: string[];
}

/** What the shop can buy, and what it costs; editable, each with its provenance. Kept in the shop's settings. */
export interface PartsList {
  blowerPulleys: (PulleySize & { from: Provenance })[];
  crankPulleys: (PulleySize & { from: Provenance })[];
  stepUps: { ratio: number; cost: CostClass; from: Provenance }[];
  coolers: ReachCooler[];
  fuels: ReachFuel[];
  injectors: { injectors: Omit<Injectors, 'count'>; name: string; cost: CostClass; from: Provenance }[];
  pumps: { pump: FuelPump; cost: CostClass; from: Provenance }[];
  beltRibs: { ribs: number; cost: CostClass; from: Provenance }[];
  /** Gains that somebody states: `ported heads: 4 % more air above 4,500 r/min`. */
  breathing: ReachBreathing[];
  /** Of kinds of change whose parts have none of their own. */
  costs: Partial<Record<ChangePart, CostClass>>;
  /** Limits that bind here though the rules only caution, or the other way round. */
  binding: Partial<Record<LimitId, boolean>>;
}

/** All that a search rests on. Plain data: it goes to a thread as it is. */
export interface ReachInput {
  target: ReachTarget;
  /** Powers are multiplied by it to stand in the target's standard. */
  standard: { id: CorrectionId; factor: number };
  /** The one that is there first. */
  builds: ReachBuild[];
  /** The engine without a supercharger: what a build of `null` does. */
  baseline: Baseline;
  /** Measured with what is there now, where it was pulled: highest power in the target's standard, W. */
  measuredNow: { power: number; pullIds: string[] } | null;
  blowerPulleys: PulleySize[];
  crankPulleys: PulleySize[];
  stepUps: { ratio: number; cost: CostClass }[];
  coolers: ReachCooler[];
  fuels: ReachFuel[];
  breathing: ReachBreathing[];
  /** r/min at which the engine may be stopped instead, below what was pulled. */
  speedLimits: number[];
  injectors: { injectors: Injectors; name: string; cost: CostClass }[];
  pumps: { pump: FuelPump; cost: CostClass }[];
  /** Ribs a belt may be changed to, rising. */
  beltRibs: { ribs: number; cost: CostClass }[];
  /** With what is there now. */
  supply: FuelSupply;
  thresholds: RuleThresholds;
  /** In place of what binds as the rules are; what is left out stands. */
  binding: Partial<Record<LimitId, boolean>>;
  /** How many changes one rung may have, beside those that follow of themselves (injectors, pump, belt). */
  mostChanges: number;
  mostRungs: number;
  draws: number;
  seed: number;
}

/** A figure with its 95 % band, inside unit. */
export interface Banded {
  value: number;
  low: number;
  high: number;
}

/**
 * Figures over engine speed of a rung, for its picture; inside units, powers in the target's standard. Speeds without a solution
 * are left out, so that no number of it is not one.
 */
export interface RungCurve {
  engineSpeedRpm: number[];
  power: { value: number[]; low: number[]; high: number[] };
  boost: { value: number[]; low: number[]; high: number[] } | null;
  /** Through the compressor, at its map's reference, and its pressure ratio: for the map; `null`: no supercharger. */
  map: { correctedFlow: number[]; pressureRatio: number[]; state: MatchState[] } | null;
  airFlow: number[];
  fuelFlow: number[];
  impellerSpeedRpm: number[] | null;
}

/** One way to the target. */
export interface Rung {
  /** `a` of the changes: the same changes have the same id in any search. */
  id: string;
  changes: ReachChange[];
  /** The build, with everything changed. */
  buildId: string;
  /** What it was made of; `null` in an answer that was kept. */
  made: {
    /** Supercharged: as solved, so that `pullbook match` says the same of it; `null`: naturally aspirated. */
    match: MatchCase | null;
    sheet: CombinationSheet;
    supply: FuelSupply;
  } | null;
  /** Of the target's figure, in its standard. */
  reached: Banded;
  peakPower: Banded & { atRpm: number };
  highestBoost: (Banded & { atRpm: number }) | null;
  /** Share of the draws that reach the target. */
  chance: number;
  /** Whether it reaches the target within all limits that bind. */
  reaches: boolean;
  /** The highest class, which is the word shown, and 4 to the power of each class but 0, summed. */
  cost: { total: number; highest: CostClass };
  bindsFirst: LimitFinding | null;
  /** Every limit that was looked at, nearest first. */
  limits: LimitFinding[];
  curve: RungCurve;
  /** What another fuel does, where it is changed. */
  fuelEffect: FuelEffect | null;
  ground: Ground;
  assumptions: Remark[];
}

/** What is left in a supercharger with all else as it is. */
export interface WhatIsLeft {
  buildId: string;
  name: string;
  /** Turned as fast as the first binding limit allows, with no regard to what can be bought. */
  most: { overallRatio: number; blowerPulleyDiameter: number | null; peakPower: Banded & { atRpm: number } };
  /** The smallest pulley of the list that keeps within; `null`: none of the list does. */
  buyable: { blowerPulleyDiameter: number; peakPower: Banded & { atRpm: number } } | null;
  /** The limit that stops it, with the engine speed at which it does; `null`: none within the ratios looked at. */
  stoppedBy: LimitFinding | null;
  /** Every limit that binds, by where it would stop it: ratio and highest power there, W; nearest first. */
  stops: { limit: LimitFinding; overallRatio: number; peakPower: number }[];
  curve: RungCurve;
}

/** Why it cannot be, and the least that would make it possible. */
export interface LeastRemedy {
  /** `impellerSpeed`, `breathing`, … */
  what: LimitId | 'breathing' | 'target';
  /** What would have to be, and what is: `An impeller that stands 55,400 r/min in place of 52,000`. */
  said: Said;
  /** By what share the limit, or the engine's breathing, would have to grow. */
  share: number;
  /** The rung it would make. */
  changes: ReachChange[];
}

export interface ReachAnswer {
  target: ReachTarget;
  feasible: boolean;
  /** What is there now reaches it already, or the target makes no sense: refused before a search. */
  now: Rung;
  /** Cheapest first; those that reach the target before those that come near it. */
  rungs: Rung[];
  left: WhatIsLeft[];
  /** Why there is none: the limit that stops most of what was tried. `null`: feasible. */
  reason: Said | null;
  leastRemedy: LeastRemedy | null;
  /** All other remedies that were tried, the least first. */
  remedies: LeastRemedy[];
  searched: { combinations: number; solved: number };
  remarks: Remark[];
}

/** How far a search is: the ladder as it stands, and how much was solved. */
export interface ReachProgress {
  /** 0 to 1 */
  share: number;
  /** As far as they are known; bands come at the end, so they may be as wide as nothing. */
  rungs: Rung[];
}

/** A pull of the book near the target, with what separates it. */
export interface NearPull {
  combinationId: string;
  name: string;
  pullIds: string[];
  /** W, in the target's standard, mean of its counted pulls; `null` standard: as recorded. */
  power: number;
  isSameEngine: boolean;
  /** `below`: less than the target. */
  side: 'above' | 'below';
  /** What separates it from each rung, by the rung's id. */
  separates: Record<string, PartChange[]>;
}

/** A question that was asked, as it was asked: text with units, so that it can be asked again. */
export interface EnquiryAsked {
  /** `520 hp` */
  power: string;
  what: ReachTarget['what'];
  at: string | null;
  window: string | null;
  boostCap: string | null;
  /** As for `pullbook reach --without`: kinds of change that were left out. */
  without: ChangePart[];
  correction: CorrectionId;
}

/** An answer as it was given; plain data without what it was made of. */
export interface KeptAnswer {
  combinationName: string;
  standard: ReachInput['standard'];
  /** The air it was reckoned in, Pa and K. */
  air: { pressure: number; temperature: number };
  answer: ReachAnswer;
  near: NearPull[];
}

/** A target asked of a combination, kept with the answer that was given. The answer is never altered. */
export interface Enquiry {
  id: string;
  /** In a person's words; '' : worked out of what was asked. */
  question: string;
  combinationId: string;
  asked: EnquiryAsked;
  answer: KeptAnswer;
  /** What it rests on. */
  pullIds: string[];
  madeBy: { version: string; seed: number };
  /** Rungs that became combinations of a trial. */
  became: { rungId: string; combinationId: string; trialId: string; at: string }[];
  /** Answer cards that left the shop. */
  cards: { name: string; hash: string; at: string }[];
  /** ISO 8601 */
  at: string;
}
