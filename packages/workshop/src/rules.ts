import { displayUnit, formatQuantity, fromInside, unitFor } from '@pullbook/core/quantity';
import { accepted, type Result } from '@pullbook/core/remark';
import { isSettable, RULES, type Rule, type Threshold } from '@pullbook/core/rule';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import { thresholdFrom } from './edge/rule-thresholds.ts';
import { onLatest } from './on-latest.ts';
import { settingsOf } from './settings.ts';

/** The catalogue of rules as it leaves the program. */
export interface RulesReport {
  schemaVersion: 1;
  rules: (Pick<Rule, 'id' | 'title' | 'statement' | 'places' | 'level' | 'elsewhere'> & {
    source: string;
    sourceKind: Rule['provenance']['kind'];
    thresholds: ThresholdReport[];
  })[];
}

export interface ThresholdReport {
  id: string;
  label: string;
  /** In force, in the unit of `unit`. */
  value: number;
  unit: string;
  /** As shown in the units asked for: `10.0 psi`. */
  text: string;
  /** As the catalogue has it, shown. */
  catalogueText: string;
  /** The shop set another. */
  isOwn: boolean;
  canBeSet: boolean;
}

/** Every rule with what it rests on and its thresholds as they are in force. `book`: `null` where there is none. */
export async function rulesReport(book: Book | null, options: ViewOptions): Promise<RulesReport> {
  const own = book === null ? {} : (await settingsOf(book)).ruleThresholds;
  return {
    schemaVersion: 1,
    rules: RULES.map(({ id, title, statement, places, level, elsewhere, provenance, thresholds }) => ({
      id,
      title,
      statement,
      places,
      level,
      elsewhere,
      source: provenance.source,
      sourceKind: provenance.kind,
      thresholds: thresholds.map((one) => thresholdReport(one, own[one.id], options)),
    })),
  };
}

function thresholdReport(
  threshold: Threshold,
  own: number | undefined,
  options: ViewOptions,
): ThresholdReport {
  const { id, label, kind, value } = threshold;
  const unit = displayUnit(kind, 'si');
  return {
    id,
    label,
    value: fromInside(own ?? value, unit, kind),
    unit: unit.name,
    text: textOf(threshold, own ?? value, options),
    catalogueText: textOf(threshold, value, options),
    isOwn: own !== undefined,
    canBeSet: isSettable(id),
  };
}

function textOf({ kind, units, decimals }: Threshold, value: number, options: ViewOptions): string {
  const unit = units === undefined ? null : unitFor(units[options.units], kind);
  return formatQuantity(value, kind, {
    system: options.units,
    decimalMark: options.decimalMark,
    ...(decimals === undefined ? {} : { decimals }),
    ...(unit === null ? {} : { unit }),
  }).text;
}

/** Sets one threshold for the shop, as a text with its unit; `null`: as the catalogue has it. In the log with the settings. */
export async function setRuleThreshold(
  book: Book,
  id: string,
  text: string | null,
  options: ViewOptions,
): Promise<Result<RulesReport>> {
  // Of a threshold that is put back only its name is asked for.
  const read = thresholdFrom(id, text ?? 0);
  if (!read.ok) return read;
  return onLatest(book, 'settings', undefined, async (stamp) => {
    const { [read.value.id]: _, ...others } = (await settingsOf(book)).ruleThresholds;
    const ruleThresholds = text === null ? others : { ...others, [read.value.id]: read.value.value };
    await book.changeSettings({ ruleThresholds }, stamp);
    return accepted(await rulesReport(book, options));
  });
}
