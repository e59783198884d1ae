import { resolve } from 'node:path';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { withShared } from '../shared-options.ts';

export function addDemoCommand(program: Command, context: Context): void {
  withShared(program.command('demo'))
    .description('make the demo book: an invented hill-climb six, to look at and to try things on')
    .addHelpText('after', examples('pullbook demo', 'pullbook demo --book somewhere-else'))
    .action(async (_options, own: Command) => {
      const shared = context.shared(own);
      const folder = shared.bookNamed ? shared.bookFolder : resolve('demo-book');
      const { makeDemoBook } = await import('@pullbook/workshop');
      await makeDemoBook(folder);
      context.answer(shared, { folder }, () => [`The demo book is at ${folder}. All in it is invented.`]);
    });
}
