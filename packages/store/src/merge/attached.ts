import type { Channel } from '@pullbook/core/pull';
import type BetterSqlite3 from 'better-sqlite3';
import { channelsHash } from '../channels-hash.ts';
import { samplesFromBytes } from '../samples.ts';
import { MERGE_KINDS, type MergeKind } from './kinds.ts';
import { bringLogIn, digest, KEPT, laterBySubject, logRows, writeEntry } from './log.ts';
import type { MergeConflict } from './model.ts';
import { inOurWords, withOurPulls } from './names.ts';
import { pairSamePulls } from './same-pulls.ts';
import type { MergeSides, MergeState } from './state.ts';
import { differences, insertRow, insertThing, nameOf, replaceThing, type Thing, thingsOf } from './things.ts';
import { mergeWithdrawn } from './withdrawn.ts';

/**
 * Brings everything of the attached database `other` into `main`, inside a transaction of the caller's: new things with
 * their log; of things both have, what is later by the two logs; of what both changed, ours, with theirs kept in the log.
 */
export function mergeAttached(database: BetterSqlite3.Database, sides: MergeSides): MergeState['report'] {
  // Things that refer to one another come in one after the other; it is looked at the end whether all are there.
  database.pragma('defer_foreign_keys = ON');
  const ourLog = logRows(database, 'main');
  const theirLog = logRows(database, 'other');
  const state: MergeState = {
    database,
    sides,
    later: laterBySubject(ourLog, theirLog),
    report: {
      other: sides.theirs,
      added: {},
      taken: [],
      conflicts: [],
      renamed: [],
      samePulls: [],
      damaged: [],
      logEntries: 0,
    },
    entries: [],
    pullHere: new Map(),
    dropped: new Set(),
    cellNames: new Map(),
    mapNames: new Map(),
  };
  for (const kind of MERGE_KINDS) mergeKind(state, kind);
  mergeWithdrawn(state);
  state.report.logEntries = bringLogIn(database, ourLog, theirLog);
  writeOwnEntries(state);
  return state.report;
}

function mergeKind(state: MergeState, kind: MergeKind): void {
  const { database, pullHere } = state;
  const own = new Map(thingsOf(database, 'main', kind).map((thing) => [thing.key, thing]));
  const theirs = thingsOf(database, 'other', kind);
  if (kind.kind === 'pull') pairSamePulls(state, own, theirs);
  for (const given of theirs) {
    const here = own.get(given.key) ?? own.get(pullHere.get(given.key) ?? '');
    if (!here) addThing(state, kind, given, own);
    else if (here.key === given.key) mergeBoth(state, kind, here, withOurPulls(state, kind, given));
    else mergeTwin(state, kind, here, given);
  }
}

const FORGETTABLE = new Set(['layout', 'silenced']);

function addThing(state: MergeState, kind: MergeKind, given: Thing, own: Map<string, Thing>): void {
  const { database, report } = state;
  // What can be forgotten was forgotten here, later than it was kept there.
  if (FORGETTABLE.has(kind.kind) && state.later(`${kind.kind} ${given.key}`) === 'ours') return;
  if (kind.kind === 'pull' && !bringChannels(database, given)) {
    report.damaged.push({ id: given.key, name: nameOf(given) });
    state.dropped.add(given.key);
    return;
  }
  const thing = inOurWords(state, kind, given, own);
  insertThing(database, kind, thing);
  own.set(thing.key, thing);
  report.added[kind.kind] = (report.added[kind.kind] ?? 0) + 1;
}

/** The channels of a pull of theirs, proved by their hash; `false`: they are not what was stored there. */
function bringChannels(database: BetterSqlite3.Database, { key, row }: Thing): boolean {
  const rows = database.prepare('select * from other.channel where pullId = ? order by place').all(key);
  const lines = rows as (Omit<Channel, 'values'> & { samples: Uint8Array })[];
  const channels = lines.map(({ samples, ...rest }) => ({ ...rest, values: samplesFromBytes(samples) }));
  if (channelsHash(channels) !== row.channelsHash) return false;
  for (const line of lines) insertRow(database, 'channel', { ...line });
  return true;
}

function mergeBoth(state: MergeState, kind: MergeKind, here: Thing, given: Thing): void {
  const fields = differences(kind, here, given);
  if (fields.length === 0) return;
  const knows = state.later(`${kind.kind} ${given.key}`);
  if (knows === 'both') keepTheirs(state, kind, here, 'both changed it', fields);
  // What a part of a book leaves out is no other word for it.
  const said = fields.filter(({ theirs }) => theirs !== null);
  if (knows === 'same' && said.length > 0) keepTheirs(state, kind, here, 'no log tells which is later', said);
  if (knows !== 'theirs') return;
  replaceThing(state.database, kind, given);
  state.report.taken.push({ kind: kind.kind, id: given.key, name: nameOf(given) });
  if (kind.kind !== 'cell' || here.row.name === given.row.name) return;
  // Pulls and sessions name their cell, and it is the same one.
  for (const table of ['pull', 'session'])
    state.database
      .prepare(`update main."${table}" set cell = ? where cell = ?`)
      .run(given.row.name, here.row.name);
}

/** The same curve of the same bytes, imported in both books: ours stands, and what theirs says of it is kept. */
function mergeTwin(state: MergeState, kind: MergeKind, here: Thing, given: Thing): void {
  state.report.samePulls.push({ theirs: given.key, ours: here.key, name: nameOf(here) });
  const fields = differences(kind, here, given);
  if (fields.length > 0) keepTheirs(state, kind, here, 'same file in both', fields);
}

function keepTheirs(
  { entries }: MergeState,
  kind: MergeKind,
  here: Thing,
  why: MergeConflict['why'],
  fields: MergeConflict['fields'],
): void {
  const side = (of: 'ours' | 'theirs') => Object.fromEntries(fields.map((one) => [one.field, one[of]]));
  entries.push({
    act: KEPT,
    subject: `${kind.kind} ${here.key}`,
    before: side('ours'),
    after: side('theirs'),
    conflict: { kind: kind.kind, id: here.key, name: nameOf(here), why, fields },
  });
}

/** Entries of the merge itself. Named by what they say, so that merging once more does not say it again. */
function writeOwnEntries({ database, entries, sides, report }: MergeState): void {
  const isThere = database.prepare('select 1 from main.log where uid = ?');
  for (const { act, subject, before, after, conflict } of entries) {
    const uid = `${sides.ours.id}/merged-${digest([act, subject, after]).slice(0, 16)}`;
    if (isThere.get(uid)) continue;
    if (conflict) report.conflicts.push(conflict);
    writeEntry(database, {
      uid,
      undoes: null,
      together: uid,
      at: sides.at,
      act,
      subject,
      reason: `merge with the book "${sides.theirs.name}"`,
      before: JSON.stringify(before),
      after: JSON.stringify(after),
    });
  }
}
