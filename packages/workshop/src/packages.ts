import { randomUUID } from 'node:crypto';
import { FIELDS, type Package, SECTIONS } from '@pullbook/core/combination';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { findOne } from './find-one.ts';

/**
 * Declares parts that belong to one change, as sections or `section.field`: a supercharger with its drive, cooler and
 * injectors. Refused for a name that is taken or a part no sheet has.
 */
export async function addPackage(
  book: Book,
  name: string,
  covers: string[],
): Promise<Result<{ id: string }>> {
  const wanted = name.trim();
  const same = (await book.packages()).find((one) => one.name.toLowerCase() === wanted.toLowerCase());
  if (wanted === '' || same) {
    const why = same ? `There is a package "${same.name}" already.` : 'A package needs a name.';
    return refused(
      remark('refusal', 'package-name', `${why} Give one of its own, such as "Supercharger, first".`),
    );
  }
  const known = [...SECTIONS.map((one) => one.id), ...FIELDS.map((one) => `${one.section}.${one.field}`)];
  const strange = covers.filter((part) => !known.includes(part));
  if (covers.length === 0 || strange.length > 0) {
    const why =
      strange.length > 0 ? `No sheet has ${strange.join(', ')}.` : 'A package covers at least one part.';
    const sections = SECTIONS.map((one) => one.id).join(', ');
    return refused(
      remark(
        'refusal',
        'package-parts',
        `${why} Accepted: a section (${sections}) or one line of it, such as fuelSystem.injectorFlow.`,
      ),
    );
  }
  const id = randomUUID();
  await book.addPackage({ id, name: wanted, covers, invented: false });
  return accepted({ id });
}

/** Ids of packages given by id, its beginning, or name. */
export async function packageIdsOf(book: Book, given: readonly string[]): Promise<Result<string[]>> {
  const packages = await book.packages();
  const ids: string[] = [];
  for (const one of given) {
    const found: Result<Package> = findOne(packages, one, 'package');
    if (!found.ok) return found;
    ids.push(found.value.id);
  }
  return accepted(ids);
}
