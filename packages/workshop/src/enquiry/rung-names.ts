import type { ChangePart, ReachChange, Rung } from '@pullbook/core/reach';
import { accepted, type Result } from '@pullbook/core/remark';
import { refuse } from '../refuse.ts';

/** A change in few words: `blower pulley 80 mm`, `12° longer cam`, without what was there before. */
export function shortChange({ part, said }: ReachChange): string {
  const [now = ''] = said.text.split(' in place of ');
  const named = part === 'breathing' ? now.replace(/^[^:]*: /u, '') : now.replace(': ', ' ');
  // Not the capital of E85.
  return named
    .replace(/^\p{Lu}(?=\p{Ll})/u, (first) => first.toLowerCase())
    .replace(/(\d)\.0(?= )/gu, '$1')
    .replace(/\.$/u, '')
    .trim();
}

/** Kinds of change that follow of themselves from another: they go without saying in a name. */
const FOLLOW: readonly ChangePart[] = ['injectors', 'pump', 'belt'];

/** The changes of a rung in few words: `blower pulley 80 mm, longer cam`. */
export function shortChanges({ changes }: Pick<Rung, 'changes'>, between = ', '): string {
  const meant = changes.filter(({ part }) => !FOLLOW.includes(part));
  return (meant.length === 0 ? changes : meant).map(shortChange).join(between);
}

/** The rung a person means: its id, or its number on the ladder from 1. */
export function rungNamed(rungs: readonly Rung[], given: string): Result<{ rung: Rung; number: number }> {
  const wanted = given.trim().toLowerCase();
  const place = rungs.findIndex(({ id }) => id.toLowerCase() === wanted);
  const at = place >= 0 ? place : /^\d+$/u.test(wanted) ? Number(wanted) - 1 : -1;
  const rung = rungs[at];
  if (rung !== undefined) return accepted({ rung, number: at + 1 });
  if (rungs.length === 0)
    return refuse(
      'no-rung',
      'This answer has no rung: nothing that was tried comes near the target. See its least remedy.',
    );
  const there = rungs.map((one, index) => `${index + 1} ${shortChanges(one)}`).join('; ');
  return refuse(
    'unknown-id',
    `There is no rung "${given}" in this answer. Give its number or its id: ${there}.`,
  );
}
