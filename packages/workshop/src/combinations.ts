import { randomUUID } from 'node:crypto';
import {
  type Combination,
  type Engine,
  isSupercharged,
  type PartChange,
  whatChanged,
} from '@pullbook/core/combination';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import { readCombinationText } from '@pullbook/formats';
import type { Book } from '@pullbook/store';
import type { Chip } from '@pullbook/views';
import { amendmentWithoutReason } from './amendment-reason.ts';
import { findCombination, findNamed } from './find-named.ts';
import { findOne } from './find-one.ts';
import { packageIdsOf } from './packages.ts';

export interface NewCombination {
  /** YAML or JSON */
  sheetText: string;
  /** For messages: the file's name. */
  sheetName?: string | undefined;
  /** Id, beginning of an id, or name of an engine of the book. */
  engineId?: string | undefined;
  /** Name of an engine; made where the book does not have it. */
  engineName?: string | undefined;
  /** Combination this one was made from by a change. */
  madeFromId?: string | undefined;
  /** Packages fitted, by id, its beginning, or name; missing: those of the one it was made from. */
  packageIds?: string[] | undefined;
}

/** Puts a combination into the book. Without an engine named: that of the one it was made from, or the book's only one. */
export async function addCombinationFromText(
  book: Book,
  wanted: NewCombination,
): Promise<Result<{ id: string; name: string }>> {
  const sheet = readCombinationText(wanted.sheetText, wanted.sheetName);
  if (!sheet.ok) return sheet;
  const madeFrom = wanted.madeFromId
    ? await findCombination(book, wanted.madeFromId)
    : accepted<Combination | null>(null);
  if (!madeFrom.ok) return madeFrom;
  const engine = await engineFor(book, wanted, madeFrom.value);
  if (!engine.ok) return engine;
  const names = await book.combinationNames();
  const same = names.find(
    (one) => one.engineId === engine.value.id && one.name.toLowerCase() === sheet.value.name.toLowerCase(),
  );
  if (same) {
    return refused(
      remark(
        'refusal',
        'combination-exists',
        `The engine "${engine.value.name}" has a combination "${same.name}" already. Amend that one, or give the new hardware a name of its own.`,
      ),
    );
  }
  const packageIds = wanted.packageIds
    ? await packageIdsOf(book, wanted.packageIds)
    : accepted(madeFrom.value?.packageIds ?? []);
  if (!packageIds.ok) return packageIds;
  const combination: Combination = {
    id: randomUUID(),
    engineId: engine.value.id,
    name: sheet.value.name,
    sheet: sheet.value,
    revision: 1,
    madeFromId: madeFrom.value?.id ?? null,
    packageIds: packageIds.value,
    createdAt: new Date().toISOString(),
    invented: engine.value.invented,
  };
  const { isNew, ...chosen } = engine.value;
  await book.addCombination(combination, isNew ? chosen : undefined);
  return accepted({ id: combination.id, name: combination.name }, sheet.remarks);
}

/** `isNew`: not in the book yet; it goes in together with its combination. */
type ChosenEngine = Engine & { isNew: boolean };

async function engineFor(
  book: Book,
  wanted: NewCombination,
  madeFrom: Combination | null,
): Promise<Result<ChosenEngine>> {
  const engines = await book.engines();
  const known = (result: Result<Engine>): Result<ChosenEngine> =>
    result.ok ? accepted({ ...result.value, isNew: false }) : result;
  if (wanted.engineId) return known(findOne(engines, wanted.engineId, 'engine'));
  const name = wanted.engineName?.trim();
  if (name) {
    const isKnown = engines.some((one) => one.name.toLowerCase() === name.toLowerCase());
    if (isKnown) return known(findOne(engines, name, 'engine'));
    const engine: Engine = { id: randomUUID(), name, buildRevision: '1', notes: '', invented: false };
    return accepted({ ...engine, isNew: true });
  }
  const only = madeFrom
    ? engines.find((one) => one.id === madeFrom.engineId)
    : engines.length === 1
      ? engines[0]
      : undefined;
  if (only) return accepted({ ...only, isNew: false });
  const those =
    engines.length === 0
      ? 'the book has none yet'
      : `the book has ${engines.map((one) => one.name).join(', ')}`;
  return refused(
    remark(
      'refusal',
      'no-engine',
      `Say which engine this combination is built on: ${those}. Give the name of an engine; a new name makes a new engine.`,
    ),
  );
}

/** Better knowledge of the same hardware: the revision goes up and the log keeps both sides with the reason. */
export async function amendCombination(
  book: Book,
  id: string,
  sheetText: string,
  reason: string,
  sheetName?: string,
  stamp?: string,
): Promise<Result<{ id: string; revision: number }>> {
  if (reason.trim() === '') return amendmentWithoutReason();
  const found = await findNamed(book, ['combination'], id, 'combination');
  if (!found.ok) return found;
  const sheet = readCombinationText(sheetText, sheetName);
  if (!sheet.ok) return sheet;
  const amended = await book.amendCombination(found.value.id, sheet.value, reason.trim(), stamp);
  return accepted({ id: amended.id, revision: amended.revision }, sheet.remarks);
}

/** What changed between two combinations, line by line. */
export async function changesBetween(
  book: Book,
  before: string,
  after: string,
): Promise<Result<{ before: Combination; after: Combination; changes: PartChange[] }>> {
  const left = await findCombination(book, before);
  if (!left.ok) return left;
  const right = await findCombination(book, after);
  if (!right.ok) return right;
  const fitted = new Set([...left.value.packageIds, ...right.value.packageIds]);
  const packages = (await book.packages()).filter((one) => fitted.has(one.id));
  const changes = whatChanged(left.value.sheet, right.value.sheet, packages);
  return accepted({ before: left.value, after: right.value, changes });
}

export interface CombinationRow {
  id: string;
  name: string;
  engineId: string;
  engineName: string;
  revision: number;
  /** How many pulls were made with it. */
  pulls: number;
  chips: Chip[];
}

/** All combinations of the book for a list, the one added last first. */
export async function combinationRows(book: Book): Promise<CombinationRow[]> {
  const engines = new Map((await book.engines()).map((one) => [one.id, one.name]));
  const counts = await book.pullCounts();
  const combinations = (await book.combinations()).reverse();
  return combinations.map((one) => {
    const pulls = counts.get(one.id) ?? 0;
    return {
      id: one.id,
      name: one.name,
      engineId: one.engineId,
      engineName: engines.get(one.engineId) ?? '',
      revision: one.revision,
      pulls,
      chips: chipsOf(one, pulls),
    };
  });
}

function chipsOf(combination: Combination, pulls: number): Chip[] {
  return [
    {
      text: isSupercharged(combination.sheet) ? 'Supercharged' : 'Naturally aspirated',
      tone: 'quiet' as const,
    },
    ...(pulls === 0 ? [{ text: 'Never pulled', tone: 'caution' as const }] : []),
    ...(combination.invented ? [{ text: 'Invented data', tone: 'quiet' as const }] : []),
  ];
}
