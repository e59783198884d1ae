import type { Rows } from '../connection.ts';
import { BookTrouble, type WithdrawnKind } from '../model.ts';
import { amongIds } from '../rows/among-ids.ts';
import { readCombinations } from '../rows/combinations.ts';
import { readEnquiry } from '../rows/enquiries.ts';
import { understandFileAs } from '../rows/files.ts';
import { readHeadsOf } from '../rows/pulls.ts';
import { readTrials } from '../rows/trials.ts';
import { deleteWithdrawn, insertWithdrawn, isThere, isWithdrawn } from '../rows/withdrawn.ts';
import { missingOf, type RestsOn } from './missing-of.ts';
import type { Reversal } from './reversal-of.ts';

/** Undoes an addition: the thing is hidden while nothing rests on it. Undone itself, the thing comes back. */
export function withdrawing(kind: WithdrawnKind): Reversal {
  return async (rows, { subject, before }, { at }, wasUndoing) => {
    const id = subject.slice(subject.indexOf(' ') + 1);
    const isGone = await isWithdrawn(rows, kind, id);
    if (wasUndoing) {
      if (!isGone) return kind === 'file' ? readAnew() : 'changed';
      await deleteWithdrawn(rows, kind, id);
      const missing = await missingOf(rows, await restsOn(rows, kind, id));
      if (missing) return missing;
      // The columns as they were understood when it was added, should the file have been read anew meanwhile.
      if (kind === 'file') await understoodAs(rows, id, before);
      return null;
    }
    if (isGone) return 'changed';
    const users = await usersOf(rows, kind, id);
    if (users.length > 0) return inUse(kind, users);
    await insertWithdrawn(rows, { kind, id, at });
    return null;
  };
}

async function understoodAs(rows: Rows, hash: string, added: unknown): Promise<void> {
  const mapping = (added as { mapping?: unknown } | null)?.mapping;
  if (mapping === undefined) return;
  await understandFileAs(rows, hash, mapping);
}

function readAnew(): BookTrouble {
  const message = `This file cannot be brought back: the same bytes were read anew since and their pulls are in the book. Undo that reading first; no file gives its pulls twice.`;
  return new BookTrouble('changed meanwhile', message);
}

/** What uses a thing, in words. */
async function usersOf(rows: Rows, kind: WithdrawnKind, id: string): Promise<string[]> {
  switch (kind) {
    case 'pull':
      return trialsWith(rows, 'trialPull', 'pullId', id);
    case 'combination': {
      const pulls = await rows
        .selectFrom('pull')
        .select('name')
        .where('combinationId', '=', id)
        .where(isThere('pull', 'pull.id'))
        .execute();
      const made = await rows
        .selectFrom('combination')
        .select('name')
        .where('madeFromId', '=', id)
        .where(isThere('combination', 'combination.id'))
        .execute();
      return [
        ...pulls.map(({ name }) => `the pull "${name}"`),
        ...made.map(({ name }) => `the combination "${name}", made from it`),
        ...(await trialsWith(rows, 'trialCombination', 'combinationId', id)),
        ...(await enquiriesOf(rows, id)),
      ];
    }
    case 'enquiry': {
      const enquiry = await readEnquiry(rows, id);
      return trialsMadeOf(rows, enquiry?.became.map(({ trialId }) => trialId) ?? []);
    }
    case 'package': {
      const found = await rows
        .selectFrom('combinationPackage as fitted')
        .innerJoin('combination as c', 'c.id', 'fitted.combinationId')
        .select('c.name')
        .where('fitted.packageId', '=', id)
        .where(isThere('combination', 'c.id'))
        .execute();
      return found.map(({ name }) => `the combination "${name}"`);
    }
    case 'engine': {
      const found = await rows
        .selectFrom('combination')
        .select('name')
        .where('engineId', '=', id)
        .where(isThere('combination', 'combination.id'))
        .execute();
      return found.map(({ name }) => `the combination "${name}"`);
    }
    // A compressor map too: sheets name it and do not rest on it, and what was read from a wrong file must be easy to take back.
    default:
      return [];
  }
}

async function trialsWith(
  rows: Rows,
  table: 'trialPull' | 'trialCombination',
  column: 'pullId' | 'combinationId',
  id: string,
): Promise<string[]> {
  const found = await rows
    .selectFrom('trial')
    .select('question')
    .where('trial.id', 'in', (query) =>
      query
        .selectFrom(table)
        .select('trialId')
        .where(column as never, '=', id as never),
    )
    .where(isThere('trial', 'trial.id'))
    .execute();
  return found.map(({ question }) => `the trial "${question}"`);
}

async function enquiriesOf(rows: Rows, combinationId: string): Promise<string[]> {
  const found = await rows
    .selectFrom('enquiry')
    .select('question')
    .where('combinationId', '=', combinationId)
    .where(isThere('enquiry', 'enquiry.id'))
    .execute();
  return found.map(({ question }) => `the enquiry "${question}"`);
}

/** Trials that a rung of an enquiry became: their predictions name the enquiry as what they rest on. */
async function trialsMadeOf(rows: Rows, ids: readonly string[]): Promise<string[]> {
  const found = await rows
    .selectFrom('trial')
    .select('question')
    .where('id', 'in', amongIds(ids))
    .where(isThere('trial', 'trial.id'))
    .execute();
  return found.map(({ question }) => `the trial "${question}"`);
}

const MOST_NAMED = 3;

function inUse(kind: WithdrawnKind, users: readonly string[]): BookTrouble {
  const more = users.length > MOST_NAMED ? ` and ${users.length - MOST_NAMED} more` : '';
  const message = `Adding this ${kind} cannot be undone: it is used by ${users.slice(0, MOST_NAMED).join(', ')}${more}. Nothing was changed. Take it out of there first, or undo that first.`;
  return new BookTrouble('in use', message);
}

async function restsOn(rows: Rows, kind: WithdrawnKind, id: string): Promise<RestsOn> {
  if (kind === 'pull') {
    const [head] = await readHeadsOf(rows, [id]);
    return { combinationIds: head?.combinationId ? [head.combinationId] : [] };
  }
  if (kind === 'combination') {
    const [one] = await readCombinations(rows, id);
    return { engineIds: one ? [one.engineId] : [], packageIds: one?.packageIds ?? [] };
  }
  if (kind === 'trial') {
    const [one] = await readTrials(rows, [id]);
    return {
      combinationIds: one?.combinations.map(({ combinationId }) => combinationId) ?? [],
      pullIds: one?.pulls.map(({ pullId }) => pullId) ?? [],
    };
  }
  if (kind === 'enquiry') {
    const one = await readEnquiry(rows, id);
    return { combinationIds: one ? [one.combinationId] : [] };
  }
  return {};
}
