import type { ChosenRung, ReachPage } from '@pullbook/views/reach';
import type { Context } from '../context.ts';
import { remarkLines } from './remarks.ts';
import { table } from './table.ts';

/** Lines under a heading; none where there is nothing to say. */
export const titled = (title: string, lines: readonly string[], { colours }: Context): string[] =>
  lines.length === 0 ? [] : ['', colours.bold(title), ...lines.map((line) => `  ${line}`)];

/** A target as a mechanic reads it: the answer, the ladder, one way laid open, what is left, and the cautions last. */
export function reachLines(page: ReachPage, context: Context): string[] {
  const { bold, dim } = context.colours;
  const { chosen, infeasible } = page;
  return [
    bold(page.title),
    page.sentence.map(({ text }) => text).join(''),
    dim(page.basis),
    ...titled('Ladder, cheapest first', ladderRows(page), context),
    ...(infeasible === null
      ? []
      : titled('Why not', [infeasible.reason, infeasible.remedy, ...infeasible.others], context)),
    ...(chosen === null ? [] : rungLines(chosen, context)),
    ...leftLines(page, context),
    ...(page.remarks.length === 0
      ? []
      : [
          '',
          bold('Remarks'),
          ...remarkLines(
            page.remarks.map(({ text, ...one }) => ({ ...one, message: text })),
            context,
          ),
        ]),
    '',
    ...page.cautions.map((one) => bold(one)),
  ];
}

/** What is left in each supercharger, and which limit stops it. */
export function leftLines({ left }: ReachPage, context: Context): string[] {
  return left.flatMap(({ name, sentence, buyable, stops }) =>
    titled(
      `What is left: ${name}`,
      [
        `${sentence.map(({ text }) => text).join('')} ${buyable}`.trim(),
        ...(stops === null
          ? []
          : table([
              [stops.title, ...stops.columns.map(({ text }) => text)],
              ...stops.rows.map((row) => [row.name, ...row.cells]),
            ])),
      ],
      context,
    ),
  );
}

/** The change stands last: it is the longest. */
function ladderRows({ now, rungs }: ReachPage): string[] {
  const all = [...(now === null ? [] : [now]), ...rungs];
  if (all.length === 0) return [];
  return table([
    ['', 'Makes', 'Band', 'Chance', 'Cost', 'State', 'Binds first', 'Change'],
    ...all.map(({ number, title, reached, band, chance, state, cost, bindsFirst }) => [
      number || '-',
      reached,
      band,
      chance,
      number === '' ? '' : cost,
      state,
      bindsFirst,
      title,
    ]),
  ]);
}

function rungLines(chosen: ChosenRung, context: Context): string[] {
  const { rung, limits, near, figures, fuel, fuelEffect, assumptions } = chosen;
  const row = ({ label, value, band, ground, from }: ChosenRung['figures'][number]) =>
    `${label}: ${value}${band === '' ? '' : ` (${band})`} - ${[ground, from.text].filter(Boolean).join('; ')}`;
  return [
    ...titled(
      rung.number === '' ? 'As it is' : `Way ${rung.number}: ${rung.title}`,
      [
        ...rung.changes.map(({ text, ground, cost, from }) => `${text} (${cost}) - ${ground}; ${from.text}`),
        ...figures.map(row),
        ...fuel.map(row),
        ...fuelEffect,
      ],
      context,
    ),
    ...titled(
      'Its limits, nearest first',
      limits.length === 0
        ? []
        : table([
            ['Limit', 'Value', 'Allowed', 'Left', 'At', ''],
            ...limits.map(({ label, value, threshold, left, at, kind, state }) => [
              label,
              value,
              threshold,
              left,
              at,
              `${kind}${state === 'within' ? '' : `, ${state}`}`,
            ]),
          ]),
      context,
    ),
    ...titled(
      'Do',
      limits.filter(({ state }) => state !== 'within').map(({ text }) => text),
      context,
    ),
    ...titled(
      'Nearest measured',
      near.map(
        ({ name, measured, distance, separates }) =>
          `${name}: ${measured}, ${distance}${separates === '' ? '' : `; ${separates}`}`,
      ),
      context,
    ),
    ...(assumptions.length === 0
      ? []
      : [
          '',
          context.colours.bold('Assumed'),
          ...remarkLines(
            assumptions.map(({ text, ...one }) => ({ ...one, message: text })),
            context,
          ),
        ]),
  ];
}
