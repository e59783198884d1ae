import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book, BookTrouble, LogEntry } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import { findNamed } from './find-named.ts';
import { actWords, changesOf, type FieldChange, plainAct, silencedIn, subjectsIn } from './history-words.ts';

/** One step of the log, as a person reads it. */
export interface HistoryStep {
  /** Global name of the entry; undo takes it. */
  uid: string;
  /** ISO 8601, by the clock of then */
  at: string;
  /** `Amended the pull “Base 1”` */
  words: string;
  reason: string;
  changes: FieldChange[];
  /** What it was done to; `null`: it is not in the book now, or has no page. */
  thing: { kind: 'pull' | 'trial' | 'combination'; id: string } | null;
  /** It is undone now. */
  isUndone: boolean;
  /** Undo can be tried: what stands in the way is said then. */
  canUndo: boolean;
  /** It is itself the undoing of an earlier step. */
  isUndoing: boolean;
}

export interface HistoryPage {
  steps: HistoryStep[];
  /** Give it as `before` for the steps before these; `null`: there are none. */
  next: number | null;
}

/** What cannot be undone alone, for nothing is seen of it alone. */
const NOT_UNDONE = new Set([
  'book created',
  'session added',
  'set-up added',
  'book restored',
  'books merged',
]);
const WITH_A_PAGE = ['pull', 'trial', 'combination'] as const;
const STEPS_A_PAGE = 50;

/** What was done to the book, the newest first. `subject`: only about this (`pull <id>`). */
export async function history(
  book: Book,
  options: ViewOptions,
  { before, subject, limit = STEPS_A_PAGE }: { before?: number; subject?: string; limit?: number } = {},
): Promise<HistoryPage> {
  const { entries, undone, next } = await book.logPage({
    limit,
    ...(before === undefined ? {} : { before }),
    ...(subject === undefined ? {} : { subject }),
  });
  return { steps: await stepsOf(book, entries, undone, options), next };
}

/**
 * A file stands for its pulls and its columns, a combination for the engine that was new with it; but an enquiry for all that a rung
 * of it became.
 */
const STANDS_FOR_ALL = new Set(['file added', 'combination added']);

/** Entries of the log as steps: what was done at once is one. */
async function stepsOf(
  book: Book,
  entries: readonly LogEntry[],
  undone: ReadonlySet<string>,
  options: ViewOptions,
): Promise<HistoryStep[]> {
  const subjects = entries.flatMap((entry) => [
    entry.subject,
    silencedIn(entry)?.subject ?? entry.subject,
    ...subjectsIn(entry),
  ]);
  const named = await book.subjects([...new Set(subjects)]);
  const nameOf = (kind: string, id: string) => named.get(`${kind} ${id}`)?.name ?? id.slice(0, 8);
  const steps = new Map<string, LogEntry[]>();
  for (const entry of entries) steps.set(entry.together, [...(steps.get(entry.together) ?? []), entry]);
  return [...steps.values()].map((step) => {
    // Else the first of what was done at once.
    const head =
      step.find(({ act }) => step.length > 1 && plainAct(act) === 'enquiry changed') ??
      step.find(({ act }) => STANDS_FOR_ALL.has(plainAct(act))) ??
      step.at(-1)!;
    const pulls = step.filter((one) => one !== head && plainAct(one.act) === 'pull added').length;
    const name = named.get(head.subject)?.name ?? '';
    const isUndone = undone.has(head.uid);
    return {
      uid: head.uid,
      at: head.at,
      words: `${actWords(head.act, silencedIn(head)?.ruleId ?? name, pulls)}${silencedFor(head, nameOf)}`,
      reason: head.reason,
      changes: step.flatMap((entry) => changesOf(entry, nameOf, options)),
      thing: thingOf(step, named),
      isUndone,
      canUndo: !isUndone && !NOT_UNDONE.has(plainAct(head.act)),
      isUndoing: head.undoes !== null,
    };
  });
}

/** ` for the pull “Base 1”`, where a rule was silenced or let speak. */
function silencedFor(entry: LogEntry, nameOf: (kind: string, id: string) => string): string {
  const { subject } = silencedIn(entry) ?? {};
  if (subject === undefined) return '';
  const [kind, ...id] = subject.split(' ');
  return ` for the ${kind} “${nameOf(kind!, id.join(' '))}”`;
}

function thingOf(
  step: readonly LogEntry[],
  named: ReadonlyMap<string, { isThere: boolean }>,
): HistoryStep['thing'] {
  for (const { subject } of step) {
    const kind = WITH_A_PAGE.find((one) => subject.startsWith(`${one} `));
    if (kind && named.get(subject)?.isThere) return { kind, id: subject.slice(kind.length + 1) };
  }
  return null;
}

/** What is done beside a person's act; it is never the last act meant. */
const BESIDE = new Set(['session added', 'set-up added', 'layout confirmed']);

/** The last thing a person did to the book; `null`: nothing yet. */
export async function lastStep(book: Book, options: ViewOptions): Promise<HistoryStep | null> {
  const { entries, undone } = await book.logPage({ limit: 10 });
  const last = entries.find(({ act }) => !BESIDE.has(plainAct(act)));
  if (!last) return null;
  const step = entries.filter(({ together }) => together === last.together);
  return (await stepsOf(book, step, undone, options))[0] ?? null;
}

/**
 * Undoes the step of that entry, or the last that can be. It is an act of its own and can be undone. The book says what
 * stands in the way (`BookTrouble`).
 */
export async function undo(
  book: Book,
  uid: string | null,
  options: ViewOptions,
): Promise<Result<HistoryStep>> {
  const known = uid === null ? null : await entryNamed(book, uid);
  if (uid !== null && known === null) {
    return refused(
      remark(
        'refusal',
        'unknown-id',
        `The log has no entry "${uid}". Give one of the history: its number, or its whole name.`,
      ),
    );
  }
  const undone = await book.undo(known);
  const [step] = await stepsOf(book, undone.toReversed(), new Set(), options);
  return accepted(step!);
}

/** An entry by its global name, or by its number in this book. */
async function entryNamed(book: Book, given: string): Promise<string | null> {
  const id = /^\d+$/.test(given) ? Number(given) : null;
  if (id === null) return given;
  const { entries } = await book.logPage({ before: id + 1, limit: 1 });
  return entries.find((entry) => entry.id === id)?.uid ?? null;
}

/** What was written since, line by line, for one whose change was refused because of it. */
export async function wordsOfSince(
  book: Book,
  trouble: BookTrouble,
  options: ViewOptions,
): Promise<HistoryStep[]> {
  return stepsOf(book, trouble.since, new Set(), options);
}

/** The subject of the log that an id, the beginning of one, or a name stands for: `pull <id>`. */
export async function subjectNamed(book: Book, given: string): Promise<Result<string>> {
  const found = await findNamed(book, ['trial', 'pull', 'combination', 'enquiry'], given, 'thing');
  return found.ok ? accepted(`${found.value.kind} ${found.value.id}`) : found;
}
