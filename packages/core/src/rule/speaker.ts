import type { QuantityKind } from '../quantity/index.ts';
import { type Remark, remark, type Said } from '../remark/index.ts';
import { RULES, ruleNamed } from './catalogue.ts';
import type { Finding, Rule, RuleThresholds } from './model.ts';

/** What a check found of one thing. */
export interface Broken {
  input: string;
  said: Said;
  value?: number;
  threshold?: number;
  kind?: QuantityKind;
  /** Where it is not said as strongly, or more, than the rule says it. */
  level?: Finding['level'];
}

/** Makes findings about one subject, with the shop's thresholds. */
export interface Speaker {
  subject: string;
  /** A threshold of the catalogue, or the shop's own, inside unit: `limit('V17.duty')`. */
  limit: (id: string) => number;
  /** A finding of that rule: `find('V17', { … })`. */
  find: (ruleId: string, broken: Broken) => Finding;
  /** A remark made elsewhere as a finding of that rule: its sentence stays as it is. */
  wrap: (ruleId: string, one: Remark, broken: Omit<Broken, 'said'>) => Finding;
}

const THRESHOLDS = new Map(
  RULES.flatMap(({ thresholds }) => thresholds.map((one) => [one.id, one] as const)),
);

/** Whether a threshold can be set by the shop: it is of the catalogue and this room draws it. */
export const isSettable = (id: string): boolean => THRESHOLDS.has(id) && THRESHOLDS.get(id)!.fixed !== true;

/** The threshold of that id, `null`: there is none. */
export const thresholdNamed = (id: string) => THRESHOLDS.get(id) ?? null;

/** Speaks of `subject` (`pull <id>`). */
export function speakerOf(subject: string, thresholds: RuleThresholds = {}): Speaker {
  const make = (ruleId: string, message: Remark, broken: Omit<Broken, 'said'>): Finding => {
    const rule = known(ruleId);
    return {
      ruleId,
      level: broken.level ?? rule.level,
      subject,
      input: broken.input,
      value: finite(broken.value),
      threshold: finite(broken.threshold),
      kind: broken.kind ?? null,
      source: rule.provenance.source,
      remark: message,
      silenced: null,
    };
  };
  return {
    subject,
    limit: (id) => {
      const threshold = THRESHOLDS.get(id);
      if (threshold === undefined) throw new Error(`no threshold ${id} in the catalogue of rules`);
      const own = Object.hasOwn(thresholds, id) ? thresholds[id]! : Number.NaN;
      return Number.isFinite(own) && isSettable(id) ? own : threshold.value;
    },
    find: (ruleId, broken) => {
      const level = (broken.level ?? known(ruleId).level) === 'note' ? 'note' : 'caution';
      return make(ruleId, remark(level, `rule-${ruleId.toLowerCase()}`, broken.said), broken);
    },
    wrap: (ruleId, one, broken) => {
      const level = (broken.level ?? known(ruleId).level) === 'note' ? 'note' : 'caution';
      return make(ruleId, { ...one, level, code: `rule-${ruleId.toLowerCase()}` }, broken);
    },
  };
}

function known(ruleId: string): Rule {
  const rule = ruleNamed(ruleId);
  if (rule === null) throw new Error(`no rule ${ruleId} in the catalogue`);
  return rule;
}

const finite = (value: number | undefined): number | null =>
  value !== undefined && Number.isFinite(value) ? value : null;
