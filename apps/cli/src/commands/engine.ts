import type { EngineChange } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

export function addEngineCommands(program: Command, context: Context): void {
  const parent = program.command('engine').description('one physical engine: its name and build revision');
  withShared(parent.command('change <engine>'))
    .description('another name, build revision or note of the same engine')
    .option('--name <text>', 'what the shop calls it')
    .option('--build <text>', 'build revision')
    .option('--notes <text>', 'notes')
    .requiredOption('--reason <text>', 'what was entered wrong, or what was done to it')
    .addHelpText('after', examples('pullbook engine change "Six" --build 3 --reason "new rings"'))
    .action(
      async (
        id: string,
        options: Omit<EngineChange, 'buildRevision'> & { build?: string; reason: string },
        own: Command,
      ) => {
        const shared = context.shared(own);
        const { changeEngine } = await import('@pullbook/workshop');
        const { name, build, notes, reason } = options;
        const change = { name, buildRevision: build, notes };
        const changed = valueOrRefusal(
          await withBook(shared, { create: false }, (book) => changeEngine(book, id, change, reason)),
        );
        context.answer(shared, changed, () => [`Changed engine ${changed.id.slice(0, 8)}.`]);
      },
    );
}
