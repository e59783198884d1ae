import type { Provenance, QuantityKind } from '../quantity/index.ts';
import type { Remark, Said } from '../remark/index.ts';

export type { Provenance } from '../quantity/index.ts';

/** Where a rule is looked at. */
export type RulePlace = 'import' | 'pull' | 'comparison' | 'combination' | 'session' | 'match' | 'plan';

/** A threshold of a rule: data, so that it can be shown, and another value be set by the shop. */
export interface Threshold {
  id: string;
  label: string;
  /** Inside unit of `kind`. */
  value: number;
  kind: QuantityKind;
  /** As in `Figure`: `%` of a ratio. */
  units?: { us: string; si: string };
  decimals?: number;
  /** Another room draws this line when it reads the pull or sheet, so that the shop cannot move it here. */
  fixed?: true;
  /** What this line rests on, where its rule rests on several things. */
  source?: string;
}

/** The shop's own values of thresholds by their ids, inside units; those left out stand as in the catalogue. */
export type RuleThresholds = Readonly<Record<string, number>>;

/** One rule of the catalogue, as data. */
export interface Rule {
  /** `V01` … `V52` */
  id: string;
  /** `Power against torque and speed` */
  title: string;
  /** What it compares with what, in a sentence. */
  statement: string;
  places: readonly RulePlace[];
  /** How strongly it is said where it is broken. Nothing refuses to save. */
  level: Finding['level'];
  thresholds: readonly Threshold[];
  provenance: Provenance;
  /** Codes of remarks that say the same where the value is made: the finding is made of them and stands in their place. */
  wraps: readonly string[];
  /** What is done elsewhere where the rule needs inputs the book does not hold yet; `null`: it is looked at here. */
  elsewhere: string | null;
}

/** What a rule says of a value. */
export interface Finding {
  ruleId: string;
  /** `note`: good to know. `caution`: may mislead. `alarm`: hardware or people may be hurt, or the figures cannot be. */
  level: 'note' | 'caution' | 'alarm';
  /** `pull <id>`, `trial <id>`, `combination <id>`, `session <id>` */
  subject: string;
  /** What was looked at: `Torque and power, 4,000 rpm`. */
  input: string;
  /** The value and the threshold in inside units of `kind`; `null` where the rule is not about a number. */
  value: number | null;
  threshold: number | null;
  kind: QuantityKind | null;
  source: string;
  /** The sentence for a mechanic with its figures, code `rule-v01`. */
  remark: Remark;
  /** Why a person silenced it; `null`: it speaks. A silenced finding stays in the list. */
  silenced: { reason: string; at: string } | null;
}

/** A person's word that a rule is known not to hold for a thing, with the reason. */
export interface Silenced {
  id: string;
  ruleId: string;
  /** As in `Finding`. */
  subject: string;
  reason: string;
  /** ISO 8601 */
  at: string;
}

/** What bounds a planned engine. */
export const LIMIT_IDS = [
  'impellerSpeed',
  'tipSpeed',
  'belt',
  'surge',
  'choke',
  'injectors',
  'pump',
  'fuelLine',
  'spark',
  'fuelAndCompression',
  'boostCap',
  'boost', // of a blow-through carburettor's pressures and of what the parts stand
  'pistonSpeed',
  'cylinderPressure',
  'rods',
  'pistons',
  'crankshaft',
  'block',
  'headClamping',
  'ringGap',
  'valveSpring',
  'plugGap',
  'cooler',
] as const;
export type LimitId = (typeof LIMIT_IDS)[number];

/** A value of a planned engine beside its limit. Numbers only: thousands are read in a search. */
export interface LimitReading {
  id: LimitId;
  ruleId: string;
  /** Inside units of `kind`. */
  value: number;
  threshold: number;
  kind: QuantityKind;
  /** The value must stay `below` or `above` the threshold. */
  stay: 'below' | 'above';
  /** Share of the threshold that is left; below 0: passed. */
  margin: number;
  /** r/min at which it comes nearest; `null`: it is not about a speed. */
  engineSpeedRpm: number | null;
  /** Whether a plan may not pass it, or is only cautioned. */
  binds: boolean;
}

/** A reading in words. */
export interface LimitFinding extends LimitReading {
  /** `Impeller speed` */
  label: string;
  /** Where the threshold comes from: the sheet (with its origin), the shop's own value, or the rule's provenance. */
  source: string;
  /** The sentence for a mechanic, with what to do about it. */
  said: Said;
}
