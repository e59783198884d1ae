import type { ShownPublication } from '@pullbook/workshop';
import type { Context } from '../context.ts';

/** What of a publication is no longer so: `B, highest power: said 412 hp, now 409 hp`. */
export const staleLines = ({ stale }: ShownPublication, indent: string): string[] =>
  stale.map(
    ({ label, said, now }) =>
      `${indent}no longer so: ${label}: said ${said}, ${now === null ? 'and now there is no such figure' : `now ${now}`}`,
  );

/** Publications that a change made old, under what was changed. */
export function erratumLines(publications: readonly ShownPublication[], context: Context): string[] {
  if (publications.length === 0) return [];
  const { yellow } = context.colours;
  return [
    yellow('These publications carry an old figure:'),
    ...publications.flatMap((one) => [
      `  ${one.id.slice(0, 8)}  ${one.at.slice(0, 10)}  ${one.question}`,
      ...one.links.map(({ where }) => `    appeared: ${where}`),
      ...staleLines(one, '    '),
    ]),
  ];
}
