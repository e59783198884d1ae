import { randomUUID } from 'node:crypto';
import {
  type Combination,
  type CombinationSheet,
  type SheetValue,
  whatChanged,
} from '@pullbook/core/combination';
import { type Rung, sheetWith } from '@pullbook/core/reach';
import { accepted, type Remark, type Result, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { refuse } from '../refuse.ts';
import { shortChange, shortChanges } from './rung-names.ts';

/** The combination of a rung, and whether the book has it already. */
export interface CombinationOfRung {
  combination: Combination;
  wasThere: boolean;
}

/**
 * The combination that a rung makes of the one it was asked of: one of the book with that hardware that was not pulled yet, else a new
 * one, not in the book yet. A gain that was only stated changes no line of the sheet, so a note on it says what is to be fitted.
 * Refused where that hardware was pulled: then it is no plan.
 */
export async function combinationOfRung(
  book: Book,
  base: Combination,
  rung: Rung,
  now: Date,
): Promise<Result<CombinationOfRung>> {
  const stated = rung.changes.filter(({ edits, clears }) => edits.length === 0 && clears.length === 0);
  const changed = sheetWith(base.sheet, rung.changes);
  const sheet = stated.length === 0 ? changed : withNote(changed, stated.map(shortChange).join(', '));
  const ofEngine = (await book.combinations()).filter(({ engineId }) => engineId === base.engineId);
  const same = ofEngine.filter((one) => whatChanged(one.sheet, sheet, []).length === 0);
  const counts = same.length === 0 ? null : await book.pullCounts();
  const pulled = same.find(({ id }) => (counts?.get(id) ?? 0) > 0);
  if (pulled !== undefined) {
    const pulls = counts!.get(pulled.id)!;
    return refuse(
      'combination-is-there',
      `The book has this hardware already, as "${pulled.name}", pulled ${pulls === 1 ? 'once' : `${pulls} times`}: that is measured and needs no plan. Start a trial of "${base.name}" and "${pulled.name}" to compare them.`,
    );
  }
  const [planned] = same;
  if (planned !== undefined)
    return accepted({ combination: planned, wasThere: true }, [isThereAlready(planned.name)]);
  const name = freeName(`${base.name}, ${shortChanges(rung)}`, ofEngine);
  const combination: Combination = {
    id: randomUUID(),
    engineId: base.engineId,
    name,
    sheet: { ...sheet, name },
    revision: 1,
    madeFromId: base.id,
    packageIds: await packagesLeft(book, base, rung),
    createdAt: now.toISOString(),
    invented: base.invented,
  };
  return accepted(
    { combination, wasThere: false },
    stated.map((change) => toBeFitted(name, shortChange(change))),
  );
}

/** Where a person writes what has no line of its own. */
const NOTES = { section: 'heads', field: 'notes' } as const;

function withNote(sheet: CombinationSheet, what: string): CombinationSheet {
  const { section, field } = NOTES;
  const before = sheet.sections[section]?.[field]?.text;
  const text = [before, `to be fitted: ${what}`].filter(Boolean).join('; ');
  const note: SheetValue = { text, value: null, kind: 'text', origin: 'assumed' };
  return {
    ...sheet,
    sections: { ...sheet.sections, [section]: { ...sheet.sections[section], [field]: note } },
  };
}

const isThereAlready = (name: string): Remark =>
  remark(
    'note',
    'combination-was-planned',
    `The book has this hardware already, as "${name}", not pulled yet: the trial is of that, and no combination was added.`,
  );

const toBeFitted = (name: string, change: string): Remark =>
  remark(
    'caution',
    'to-be-fitted',
    `"${name}" stands for a gain that was only stated (${change}): a note on its sheet says so. Write down what was fitted before it is pulled.`,
  );

/** A package that covers a section which a change takes away is not fitted any more. */
async function packagesLeft(book: Book, base: Combination, { changes }: Rung): Promise<string[]> {
  const cleared = changes.flatMap(({ clears }) => clears);
  const gone = new Set(
    (await book.packages())
      .filter(({ covers }) =>
        cleared.some((section) => covers.some((line) => line.split('.')[0] === section)),
      )
      .map(({ id }) => id),
  );
  return base.packageIds.filter((id) => !gone.has(id));
}

const LONGEST_NAME = 200;

function freeName(wanted: string, others: readonly Combination[]): string {
  const plain = wanted.slice(0, LONGEST_NAME);
  const taken = new Set(others.map(({ name }) => name.toLowerCase()));
  let name = plain;
  for (let count = 2; taken.has(name.toLowerCase()); count += 1) name = `${plain} (${count})`;
  return name;
}
