import type { ShownThing } from '@pullbook/workshop';
import type { Context } from '../context.ts';

type Page = Extract<ShownThing, { kind: 'trial' }>['page'];

/** Why it came out so: the likeliest reason, what speaks for it, what is not excluded, what would settle it. */
export function whyLines(why: Page['why'], context: Context): string[] {
  return why.flatMap((one) => [
    '',
    context.colours.bold(one.name === '' ? 'Why' : `Why: ${one.name}`),
    `  ${one.likeliest === null ? '' : 'Likeliest: '}${one.sentence}`,
    ...one.evidence.map(evidenceLine),
    ...(one.notMeasured.length === 0 ? [] : [`    not measured: ${one.notMeasured.join(', ')}`]),
    ...one.notExcluded.flatMap(({ text, evidence }) => [
      `  Not excluded: ${text}`,
      ...evidence.map(evidenceLine),
    ]),
    ...(one.wouldSettle === '' ? [] : [`  ${one.wouldSettle}`]),
  ]);
}

/** Badges, earned or not, each with its reason. */
export function badgeLines(badges: Page['badges'], context: Context): string[] {
  if (badges.length === 0) return [];
  return [
    '',
    context.colours.bold('Badges'),
    ...badges.map(({ label, earned, why }) => `  ${earned ? 'earned     ' : 'not earned '} ${label}: ${why}`),
  ];
}

const evidenceLine = ({ text, speaks }: { text: string; speaks: 'for' | 'against' }): string =>
  `    ${speaks === 'for' ? '+' : '-'} ${text}`;
