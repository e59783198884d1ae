import { displayUnit, fromInside, type QuantityKind } from '@pullbook/core/quantity';
import { type Finding, ruleNamed } from '@pullbook/core/rule';
import type { ViewOptions } from '@pullbook/views';
import { edgeNumber } from './number.ts';
import { wordsOf } from './remark.ts';

/** A finding as it leaves the program: its figures in the SI unit that is named beside them. */
export interface EdgeFinding {
  ruleId: string;
  title: string;
  level: Finding['level'];
  /** `pull <id>`: what a silencing is about. */
  subject: string;
  /** Name of the subject; '' where it is the thing asked about. */
  about: string;
  input: string;
  value: number | null;
  threshold: number | null;
  /** `kPa`; '' of a ratio; `null`: the rule is not about a number. */
  unit: string | null;
  source: string;
  message: string;
  silenced: { reason: string; at: string } | null;
}

/** Findings for JSON; the words in the units a person chose, `null`: SI. */
export const edgeFindings = (
  findings: readonly Finding[],
  options: ViewOptions | null = null,
  names: ReadonlyMap<string, string> = new Map(),
): EdgeFinding[] =>
  findings.map(({ ruleId, level, subject, input, value, threshold, kind, source, remark, silenced }) => ({
    ruleId,
    title: ruleNamed(ruleId)!.title,
    level,
    subject,
    about: names.get(subject) ?? '',
    input,
    value: figureIn(value, kind),
    threshold: figureIn(threshold, kind),
    unit: kind && displayUnit(kind, 'si').name,
    source,
    message: wordsOf(remark, options),
    silenced,
  }));

const figureIn = (value: number | null, kind: QuantityKind | null): number | null =>
  value === null || kind === null ? null : edgeNumber(fromInside(value, displayUnit(kind, 'si'), kind));
