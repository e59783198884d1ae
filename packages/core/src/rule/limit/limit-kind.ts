import type { SectionId } from '../../combination/index.ts';
import { speedFigure } from '../../quantity/index.ts';
import { type Said, said } from '../../remark/index.ts';
import type { Finding, LimitReading } from '../model.ts';
import type { EngineAtLimits } from './engine-at-limits.ts';

/** What a limit was measured to be: a reading before it is said whose it is. Numbers only. */
export interface Measured extends Omit<LimitReading, 'id' | 'ruleId' | 'binds'> {
  /** What the threshold comes from: a line of the sheet, or a threshold of the catalogue by its id; `null`: the rule itself. */
  from: SheetLine | string | null;
  /** Where this reading binds, or only cautions, whatever the limit usually does. */
  binds?: boolean;
}

export interface SheetLine {
  section: SectionId;
  field: string;
}

/** One limit: how it is measured, and how it is told. */
export interface LimitKind {
  label: string;
  ruleId: string;
  /** Whether a plan may not pass it, or is only cautioned. */
  bindsUsually: boolean;
  /** Where alone it binds, for it may rest on too little: `where its edge was measured`; missing: everywhere. */
  bindsWhere?: string;
  /** `null`: what it needs is not known, or it does not concern this engine. */
  measure: (at: EngineAtLimits) => Measured | null;
  /** What was looked at, its value and its threshold in a sentence; where it is passed, what to do about it. */
  tell: (measured: Measured, at: EngineAtLimits) => Said;
  /** How strongly it is said where it is passed; missing: as its rule is. */
  levelPassed?: (measured: Measured, at: EngineAtLimits) => Finding['level'];
  /** What the sheet would have to say so that it could be looked at; `null`: it does not concern this engine. */
  missing: (at: EngineAtLimits) => string | null;
}

type Where = Pick<Measured, 'from' | 'kind'> & { value: number; threshold: number; rpm: number | null };

/** A value that must stay below its threshold; the margin is the share of the threshold that is left. */
export function below({ value, threshold, kind, rpm, from }: Where): Measured {
  const left = threshold > 0 ? 1 - value / threshold : value > threshold ? -1 : 0;
  return { value, threshold, kind, stay: 'below', margin: left, engineSpeedRpm: rpm, from };
}

/** A value that must stay above its threshold. */
export function above({ value, threshold, kind, rpm, from }: Where): Measured {
  const left = threshold > 0 ? value / threshold - 1 : value - threshold;
  return { value, threshold, kind, stay: 'above', margin: left, engineSpeedRpm: rpm, from };
}

/** The one with less margin; `null`: neither is known. */
export const tighter = (one: Measured | null, other: Measured | null): Measured | null =>
  one === null || (other !== null && other.margin < one.margin) ? other : one;

export const isPassed = ({ margin }: Pick<Measured, 'margin'>): boolean => margin < 0;

/** ` at 6,500 rpm`; nothing where no speed is known, as of the highest figure of a pull. */
export const atSpeed = (rpm: number | null): Said => (rpm === null ? said`` : said` at ${speedFigure(rpm)}`);
