import type { Withdrawn } from '../model.ts';
import type { MergeState } from './state.ts';
import { insertRow } from './things.ts';

/** What either withdrew is withdrawn, unless the book that knows more of it by the logs says otherwise. */
export function mergeWithdrawn({ database, later, pullHere, dropped }: MergeState): void {
  const read = (schema: 'main' | 'other') =>
    database.prepare(`select kind, id, at from ${schema}.withdrawn`).all() as Withdrawn[];
  const [ours, theirs] = [read('main'), read('other')];
  const nameOf = ({ kind, id }: Withdrawn) => `${kind} ${id}`;
  const own = new Set(ours.map(nameOf));
  const others = new Set(theirs.map(nameOf));
  for (const one of theirs) {
    const isHere = own.has(nameOf(one)) || pullHere.has(one.id) || dropped.has(one.id);
    if (!isHere && later(nameOf(one)) !== 'ours') insertRow(database, 'withdrawn', { ...one });
  }
  for (const one of ours) {
    if (others.has(nameOf(one)) || later(nameOf(one)) !== 'theirs') continue;
    database.prepare('delete from main.withdrawn where kind = ? and id = ?').run(one.kind, one.id);
  }
}
