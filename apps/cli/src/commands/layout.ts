import type { LayoutRow } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { counted, table } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

export function addLayoutCommands(program: Command, context: Context): void {
  const parent = program
    .command('layout')
    .description('kinds of file whose columns were confirmed, so that the next one asks nothing');
  withShared(parent.command('list'))
    .description('the kinds of file this book remembers, the last confirmed first')
    .addHelpText('after', examples('pullbook layout list', 'pullbook layout list --json'))
    .action(async (_options: unknown, own: Command) => {
      const shared = context.shared(own);
      const { layoutRows } = await import('@pullbook/workshop');
      const layouts = await withBook(shared, { create: false }, layoutRows);
      context.answer(shared, { schemaVersion: 1, layouts }, () =>
        layouts.length === 0 ? ['No kind of file is remembered yet.'] : layouts.flatMap(layoutLines),
      );
    });
  withShared(parent.command('forget <layout>'))
    .description('forget one: the next file of that kind is asked for again')
    .addHelpText('after', examples('pullbook layout forget 3f2a', 'pullbook layout forget run-1.csv --json'))
    .action(async (given: string, _options: unknown, own: Command) => {
      const shared = context.shared(own);
      const { forgetLayout } = await import('@pullbook/workshop');
      const forgotten = await withBook(shared, { create: false }, (book) => forgetLayout(book, given));
      const { fingerprint } = valueOrRefusal(forgotten);
      context.answer(shared, { schemaVersion: 1, fingerprint }, () => [
        `Forgot layout ${fingerprint.slice(0, 8)}.`,
      ]);
    });
}

function layoutLines({ fingerprint, name, confirmedAt, columns, said }: LayoutRow): string[] {
  return [
    `${fingerprint.slice(0, 8)}  confirmed on ${confirmedAt.slice(0, 10)} for ${name}, ${counted(columns.length, 'column')}`,
    ...(said === '' ? [] : [`  holds on: ${said}`]),
    ...table(
      [
        ['Column', 'In the file', 'Is', 'In'],
        ...columns.map((column) => [column.name, column.unitText, column.label, column.unit]),
      ],
      '  ',
    ),
  ];
}
