import { type CombinationSheet, whatChanged } from '@pullbook/core/combination';
import type { Enquiry } from '@pullbook/core/reach';
import type { Silenced } from '@pullbook/core/rule';
import type { Trial } from '@pullbook/core/trial';
import type { LogEntry } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import { labelOfField, wordsOfValue } from './field-words.ts';

/** What changed in one field, in a person's words; `''`: there was nothing. */
export interface FieldChange {
  label: string;
  before: string;
  after: string;
}

/** The act without how often it was undone: `undone: pull added` is `pull added`. */
export const plainAct = (act: string): string => act.replace(/^(undone|done again): /, '');

const VERBS: Record<string, string> = {
  'book created': 'made the book',
  'pull added': 'added the pull',
  'pull amended': 'amended the pull',
  'file added': 'added the file',
  'trial added': 'started the trial',
  'trial changed': 'changed the trial',
  'combination added': 'added the combination',
  'combination amended': 'amended the combination',
  'package added': 'declared the package',
  'engine added': 'added the engine',
  'engine changed': 'changed the engine',
  'cell added': 'described the cell',
  'cell changed': 'changed the cell',
  'session added': 'began the session',
  'set-up added': 'noted the set-up',
  'layout confirmed': 'confirmed the columns of',
  'layout forgotten': 'forgot the columns of',
  'rule silenced': 'silenced the rule',
  'rule let speak': 'let the rule speak:',
  'prediction added': 'noted the prediction',
  'compressorMap added': 'added the compressor map',
  'compressorMap changed': 'changed the compressor map',
  'publication added': 'published',
  'publication changed': 'said where it appeared:',
  'enquiry added': 'asked',
  'enquiry changed': 'went on with the answer to',
  'settings changed': 'changed the settings of the shop',
  'books merged': 'merged a book into',
  'book rescued': 'rescued the book',
  'kept from a merge': 'kept what another book says of',
  'session changed': 'changed the session',
};

/** An act as a sentence: `Amended the pull “Base 1”`, `Undone: added the file “run.csv” with 3 pulls`. */
export function actWords(act: string, name: string, pulls = 0): string {
  const verb = VERBS[plainAct(act)] ?? plainAct(act);
  const prefix = /^(undone|done again): /.exec(act)?.[0] ?? '';
  const thing = name === '' ? '' : ` “${withinQuotes(name)}”`;
  const more = pulls === 0 ? '' : ` with ${pulls === 1 ? '1 pull' : `${pulls} pulls`}`;
  const words = `${prefix}${verb}${thing}${more}`;
  return words[0]!.toUpperCase() + words.slice(1);
}

/** What is quoted in a name stands in single quotes where the name is quoted itself. */
const withinQuotes = (name: string): string => name.replaceAll('“', '‘').replaceAll('”', '’');

/** The rule that an entry silences or lets speak, and for what; `null`: it does neither. */
export function silencedIn({ before, after }: Pick<LogEntry, 'before' | 'after'>): Silenced | null {
  const said = (after ?? before ?? {}) as Partial<Silenced>;
  return said.ruleId === undefined ? null : (said as Silenced);
}

/** Names of other things by id, for the words of a change. */
export type NameOf = (kind: 'combination' | 'pull', id: string) => string;

/** Ids that a change names, to look their names up first. */
export function subjectsIn({ before, after }: Pick<LogEntry, 'before' | 'after'>): string[] {
  const ids = [before, after].flatMap((side) => {
    const { combinationId, combinations, pulls, became } = (side ?? {}) as Partial<Trial & Enquiry> & {
      combinationId?: string | null;
    };
    return [
      ...(combinationId ? [`combination ${combinationId}`] : []),
      ...(combinations ?? []).map((one) => `combination ${one.combinationId}`),
      ...(pulls ?? []).map((one) => `pull ${one.pullId}`),
      ...(became ?? []).map((one) => `combination ${one.combinationId}`),
    ];
  });
  return [...new Set(ids)];
}

/** What an entry changed, field by field; of an addition nothing. */
export function changesOf(
  { act, before, after }: Pick<LogEntry, 'act' | 'before' | 'after'>,
  nameOf: NameOf,
  options: ViewOptions,
): FieldChange[] {
  const of = plainAct(act);
  if (!/ (amended|changed)$/.test(of)) return [];
  const left = (before ?? {}) as Record<string, unknown>;
  const right = (after ?? {}) as Record<string, unknown>;
  if (of === 'combination amended') return sheetChanges(left, right);
  const fields = [...new Set([...Object.keys(left), ...Object.keys(right)])];
  return fields.flatMap((field) => {
    if (of === 'trial changed' && field === 'pulls') return roleChanges(left, right, nameOf);
    return valueChanges(field, left[field], right[field], nameOf, options);
  });
}

function sheetChanges(before: Record<string, unknown>, after: Record<string, unknown>): FieldChange[] {
  const changes = whatChanged(before.sheet as CombinationSheet, after.sheet as CombinationSheet, []);
  const name = before.name === after.name ? [] : [plainChange('Name', before.name, after.name)];
  return [
    ...name,
    ...changes.map((one) => ({ label: one.label, before: one.before ?? '', after: one.after ?? '' })),
  ];
}

const plainChange = (label: string, before: unknown, after: unknown): FieldChange => ({
  label,
  before: String(before ?? ''),
  after: String(after ?? ''),
});

function roleChanges(
  before: Record<string, unknown>,
  after: Record<string, unknown>,
  nameOf: NameOf,
): FieldChange[] {
  const rolesOf = (side: Record<string, unknown>) =>
    new Map(
      ((side.pulls ?? []) as Trial['pulls']).map(({ pullId, role, reason }) => [
        pullId,
        reason ? `${role}: ${reason}` : role,
      ]),
    );
  const [left, right] = [rolesOf(before), rolesOf(after)];
  return [...new Set([...left.keys(), ...right.keys()])]
    .filter((id) => left.get(id) !== right.get(id))
    .map((id) => ({
      label: nameOf('pull', id),
      before: left.get(id) ?? 'not in the trial',
      after: right.get(id) ?? 'not in the trial',
    }));
}

const isPlainObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A nested thing is told part by part. */
function valueChanges(
  path: string,
  before: unknown,
  after: unknown,
  nameOf: NameOf,
  options: ViewOptions,
): FieldChange[] {
  if (isPlainObject(before) || isPlainObject(after)) {
    const [left, right] = [isPlainObject(before) ? before : {}, isPlainObject(after) ? after : {}];
    const parts = [...new Set([...Object.keys(left), ...Object.keys(right)])];
    return parts.flatMap((part) => valueChanges(`${path}.${part}`, left[part], right[part], nameOf, options));
  }
  if (JSON.stringify(before ?? null) === JSON.stringify(after ?? null)) return [];
  const label = labelOfField(path);
  if (label === null) return [];
  const words = (value: unknown) => wordsOfValue(path, value, nameOf, options);
  return [{ label, before: words(before), after: words(after) }];
}
