import type { Rule } from './model.ts';
import { RULES_OF_COMPARING } from './rules-of-comparing.ts';
import { RULES_OF_HARDWARE } from './rules-of-hardware.ts';
import { RULES_OF_LIMITS } from './rules-of-limits.ts';
import { RULES_OF_MATCHING } from './rules-of-matching.ts';
import { RULES_OF_READING } from './rules-of-reading.ts';
import { RULES_OF_RUNNING } from './rules-of-running.ts';

/** Every rule, `V01` to `V52`, in that order. */
export const RULES: readonly Rule[] = [
  ...RULES_OF_READING,
  ...RULES_OF_RUNNING,
  ...RULES_OF_HARDWARE,
  ...RULES_OF_COMPARING,
  ...RULES_OF_MATCHING,
  ...RULES_OF_LIMITS,
].toSorted((one, other) => one.id.localeCompare(other.id, 'en'));

const BY_ID = new Map(RULES.map((rule) => [rule.id, rule]));

/** A rule by its id, capitals forgiven; `null`: there is none. `ruleNamed('v13')?.title` */
export const ruleNamed = (id: string): Rule | null => BY_ID.get(id.trim().toUpperCase()) ?? null;
