import { join } from 'node:path';
import { type ReachInput, reachInParts, reachPart } from '@pullbook/core/reach';
import { readMatchText, readPartsText } from '@pullbook/formats';
import { reachFromFile } from '@pullbook/workshop';
import { type Outcome, refusedOutcome } from './outcome.ts';

/**
 * Takes the bytes of a match file or of a parts list the whole way: read, a match made of it, a target a little above what it makes asked for, a small
 * search.
 *
 * @param folder where files that it names lie
 */
export async function readWritten(bytes: Uint8Array, name: string, folder: string): Promise<Outcome> {
  const text = new TextDecoder().decode(bytes);
  if (/parts[^/]*\.yaml$/u.test(name)) {
    const parts = readPartsText(text, name);
    return parts.ok ? ACCEPTED : refusedOutcome(bytes, parts.remarks);
  }
  const written = readMatchText(text, name);
  if (!written.ok) return refusedOutcome(bytes, written.remarks);
  const made = await reachFromFile(text, { draws: 20 }, { fileName: name, folder, book: null });
  // What the figures of a file do not allow together has no line.
  if (!made.ok) return refusedOutcome(bytes, made.remarks, { hasPlace: false });
  return { refusedFor: null, pulls: 0, faults: await faultsOfSearch(made.value.bundle.input) };
}

const ACCEPTED: Outcome = { refusedFor: null, pulls: 0, faults: [] };

/** The engine as it is, and with one change at a time: whatever comes out, its figures are numbers. */
async function faultsOfSearch(input: ReachInput): Promise<string[]> {
  const { now, rungs } = await reachInParts(
    { ...input, mostChanges: 1, mostRungs: 2, fuels: input.fuels.slice(0, 1) },
    async (name, given) => reachPart(input, name, given),
    { atOnce: 1 },
  );
  return [now, ...rungs].flatMap(({ id, reached, peakPower, chance, limits }) => {
    const figures = [reached.low, reached.value, reached.high, peakPower.low, peakPower.high, chance];
    const values = limits.flatMap(({ value, threshold }) => [value, threshold]);
    return [...figures, ...values].every(Number.isFinite) ? [] : [`a figure of ${id} is no number`];
  });
}

/** Where the sample of a name lies. */
export const folderOf = (samples: string, name: string): string => join(samples, name, '..');
