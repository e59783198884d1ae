import type { CompressorMap } from '@pullbook/core/airpath';
import type { Combination, Engine } from '@pullbook/core/combination';
import type { Publication } from '@pullbook/core/publication';
import type { Cell } from '@pullbook/core/pull';
import type { Silenced } from '@pullbook/core/rule';
import type { Trial } from '@pullbook/core/trial';
import type { Connection, Rows } from '../connection.ts';
import type { BookTrouble, KnownLayout, LogEntry, PullAmendment, StoredSettings } from '../model.ts';
import { readCells, replaceCell } from '../rows/cells.ts';
import { readCombinations, reviseCombination } from '../rows/combinations.ts';
import { readCompressorMaps, replaceCompressorMap } from '../rows/compressor-maps.ts';
import { readEngines, replaceEngine } from '../rows/engines.ts';
import { type EnquiryChange, readEnquiry, updateEnquiry } from '../rows/enquiries.ts';
import { deleteLayout, keepLayout, readLayouts } from '../rows/layouts.ts';
import { readPublication, updateLinks } from '../rows/publications.ts';
import { readHeadsOf, updatePullHead } from '../rows/pulls.ts';
import { keepSettings, readSettings } from '../rows/settings.ts';
import { deleteSilenced, keepSilenced, readSilencedById } from '../rows/silenced.ts';
import { readTrials, replaceTrial } from '../rows/trials.ts';
import { sameValue } from '../same-value.ts';
import { missingOf } from './missing-of.ts';
import { withdrawing } from './withdrawing.ts';

export interface Acting {
  folder: Connection['folder'];
  /** ISO 8601 */
  at: string;
}

/**
 * Does the opposite of an entry. Gives `null` when it did, `changed` where the state is no longer as the entry left it, or
 * the trouble that stands in the way. `wasUndoing`: the entry is itself an undoing.
 */
export type Reversal = (
  rows: Rows,
  entry: LogEntry,
  acting: Acting,
  wasUndoing: boolean,
) => Promise<'changed' | BookTrouble | null>;

/** How an act is undone; `null`: it cannot be, for nothing is seen of it alone (a session, a set-up, the book itself). */
export function reversalOf(act: string): Reversal | null {
  return REVERSALS[act] ?? null;
}

const idOf = ({ subject }: LogEntry): string => subject.slice(subject.indexOf(' ') + 1);

const REVERSALS: Record<string, Reversal> = {
  'pull added': withdrawing('pull'),
  'file added': withdrawing('file'),
  'trial added': withdrawing('trial'),
  'combination added': withdrawing('combination'),
  'package added': withdrawing('package'),
  'engine added': withdrawing('engine'),
  'cell added': withdrawing('cell'),
  'prediction added': withdrawing('prediction'),
  'compressorMap added': withdrawing('compressorMap'),
  'publication added': withdrawing('publication'),
  'enquiry added': withdrawing('enquiry'),
  'pull amended': async (rows, entry) => {
    const [head] = await readHeadsOf(rows, [idOf(entry)]);
    const after = entry.after as PullAmendment;
    if (!head || !holds(head, after)) return 'changed';
    const before = entry.before as PullAmendment;
    const missing = await missingOf(rows, {
      combinationIds: before.combinationId ? [before.combinationId] : [],
    });
    if (missing) return missing;
    await updatePullHead(rows, { ...head, ...before });
    return null;
  },
  'combination amended': async (rows, entry) => {
    const [now] = await readCombinations(rows, idOf(entry));
    const { sheet, name } = entry.after as Combination;
    if (!now || !holds(now, { sheet, name })) return 'changed';
    // The revision goes on: a figure that was printed with the later one stays told apart.
    await reviseCombination(rows, now, (entry.before as Combination).sheet);
    return null;
  },
  'trial changed': async (rows, entry) => {
    const [now] = await readTrials(rows, [idOf(entry)]);
    if (!now || !sameValue(now, entry.after)) return 'changed';
    const before = entry.before as Trial;
    const missing = await missingOf(rows, {
      combinationIds: before.combinations.map(({ combinationId }) => combinationId),
      pullIds: before.pulls.map(({ pullId }) => pullId),
    });
    if (missing) return missing;
    await replaceTrial(rows, before);
    return null;
  },
  'cell changed': async (rows, entry) => {
    const [now] = await readCells(rows, idOf(entry));
    if (!now || !sameValue(now, entry.after)) return 'changed';
    await replaceCell(rows, now, entry.before as Cell);
    return null;
  },
  'engine changed': async (rows, entry) => {
    const now = (await readEngines(rows)).find(({ id }) => id === idOf(entry));
    if (!now || !sameValue(now, entry.after)) return 'changed';
    await replaceEngine(rows, entry.before as Engine);
    return null;
  },
  'compressorMap changed': async (rows, entry) => {
    const [now] = await readCompressorMaps(rows, idOf(entry));
    if (!now || !sameValue(now, entry.after)) return 'changed';
    await replaceCompressorMap(rows, entry.before as CompressorMap);
    return null;
  },
  'publication changed': async (rows, entry) => {
    type Links = Pick<Publication, 'links'>;
    const now = await readPublication(rows, idOf(entry));
    if (!now || !holds(now, entry.after as Links)) return 'changed';
    await updateLinks(rows, now.id, (entry.before as Links).links);
    return null;
  },
  'enquiry changed': async (rows, entry) => {
    const now = await readEnquiry(rows, idOf(entry));
    if (!now || !holds(now, entry.after as EnquiryChange)) return 'changed';
    await updateEnquiry(rows, now.id, entry.before as EnquiryChange);
    return null;
  },
  'layout confirmed': layoutBack,
  'layout forgotten': layoutBack,
  'rule silenced': silencedBack,
  'rule let speak': silencedBack,
  'settings changed': async (rows, entry) => {
    if (!holds(await readSettings(rows), entry.after as StoredSettings)) return 'changed';
    await keepSettings(rows, entry.before as StoredSettings);
    return null;
  },
};

async function layoutBack(rows: Rows, entry: LogEntry): Promise<'changed' | null> {
  const fingerprint = idOf(entry);
  const [now = null] = await readLayouts(rows, fingerprint);
  if (!sameValue(now, entry.after)) return 'changed';
  if (entry.before === null) await deleteLayout(rows, fingerprint);
  else await keepLayout(rows, entry.before as KnownLayout);
  return null;
}

async function silencedBack(rows: Rows, entry: LogEntry): Promise<'changed' | null> {
  const id = idOf(entry);
  if (!sameValue(await readSilencedById(rows, id), entry.after)) return 'changed';
  if (entry.before === null) await deleteSilenced(rows, id);
  else await keepSilenced(rows, entry.before as Silenced);
  return null;
}

/** Whether the thing has these values in these fields. */
function holds(thing: object, fields: object): boolean {
  return Object.entries(fields).every(([field, value]) =>
    sameValue((thing as Record<string, unknown>)[field], value),
  );
}
