import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { bundleBytes, bundledTrial } from './open-bundle.ts';

/** What a bundle holds, before anything of it is in the book. `isKnown`: the book has it already. */
export interface BundleLook {
  trials: { id: string; question: string; isKnown: boolean }[];
  combinations: { name: string; isKnown: boolean }[];
  pulls: { name: string; isKnown: boolean }[];
  invented: boolean;
}

/** Reads a bundle without keeping anything of it. */
export async function lookAtBundleFile(book: Book, path: string): Promise<Result<BundleLook>> {
  const bytes = await bundleBytes(path);
  if (!bytes.ok) return bytes;
  const opened = await bundledTrial(bytes.value);
  if (!opened.ok) return opened;
  const { trial, content } = opened.value;
  const { combinations, pulls, info } = content.contents;
  const knownCombinations = new Set((await book.combinationNames()).map(({ id }) => id));
  const knownPulls = new Set((await book.pullHeadsOf(pulls.map(({ id }) => id))).map(({ id }) => id));
  return accepted(
    {
      trials: [{ id: trial.id, question: trial.question, isKnown: (await book.trial(trial.id)) !== null }],
      combinations: combinations.map(({ id, name }) => ({ name, isKnown: knownCombinations.has(id) })),
      pulls: pulls.map(({ id, name }) => ({ name, isKnown: knownPulls.has(id) })),
      invented: info.invented || trial.invented,
    },
    opened.remarks,
  );
}
