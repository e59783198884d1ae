import { spawn } from 'node:child_process';
import { basename, resolve } from 'node:path';
import type { Book } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { portValue } from '../option-values.ts';
import { Refusal } from '../refusal.ts';
import { type Shared, takeSettings, withShared } from '../shared-options.ts';

const USUAL_PORT = 4680;
/** Ports tried after the usual one, before it is said that none is free. */
const NEXT_PORTS = 20;

interface ServeOptions {
  port?: number;
  demo?: boolean;
  open?: boolean;
}

export function addServeCommand(program: Command, context: Context): void {
  withShared(program.command('serve'))
    .description('show the book in the browser, on this machine only; Ctrl+C stops it')
    .option('--port <number>', `port (default: ${USUAL_PORT}, or the next free one)`, portValue)
    .option('--demo', 'with the invented demo book (default folder: ./demo-book)')
    .option('--open', 'open the browser')
    .addHelpText('after', examples('pullbook serve --demo --open', 'pullbook serve --book shop --port 8080'))
    .action(async (options: ServeOptions, own: Command) => {
      const shared = context.shared(own);
      // Listened for before the address is out: whoever reads it may stop the program at once.
      const stopped = context.terminal.stopped();
      const { backUpIfDue } = await import('@pullbook/workshop');
      const book = await bookToServe(shared, options.demo === true, context);
      try {
        const server = await startOnFreePort(book, options.port, context);
        const info = await book.info();
        const { address, port } = server;
        context.answer(shared, { address, port, book: { id: info.id, name: info.name } }, () => [
          `${info.name} is at ${address}`,
          'Ctrl+C stops it.',
        ]);
        if (options.open) openBrowser(address);
        await takeSettings(shared, book);
        workOutFirstPage(book, shared);
        // Beside the pages; the shop page says when it was, or why it was not.
        void backUpIfDue(book, new Date());
        await stopped;
        await server.close();
      } finally {
        await book.close();
      }
    });
}

async function bookToServe(shared: Shared, demo: boolean, context: Context): Promise<Book> {
  const { makeDemoBook, openBook } = await import('@pullbook/workshop');
  if (!demo) {
    await rescueIfDamaged(shared.bookFolder, context);
    return openBook(shared.bookFolder, { create: { name: basename(shared.bookFolder) } });
  }
  const folder = shared.bookNamed ? shared.bookFolder : resolve('demo-book');
  await makeDemoBook(folder);
  const book = await openBook(folder);
  if ((await book.info()).invented) return book;
  await book.close();
  throw new Refusal(
    'not-the-demo',
    `${folder} holds a book of your own, not the demo. Leave --demo out to open it, or name another folder with --book.`,
  );
}

/** A damaged book is made a sound one first; what is lost is said here and on every page until it is put away. */
async function rescueIfDamaged(folder: string, context: Context): Promise<void> {
  const { damageOf, rescueBook, rescueLines } = await import('@pullbook/workshop');
  const damage = damageOf(folder);
  if (damage === null) return;
  context.terminal.err(`The book ${folder} is damaged (${damage}). Rescuing it.\n`);
  const report = await rescueBook(folder, new Date());
  context.terminal.err(`${rescueLines(report).join('\n')}\n`);
}

async function startOnFreePort(book: Book, wanted: number | undefined, context: Context) {
  const { PortTaken, startServer } = await import('@pullbook/server');
  const ports =
    wanted === undefined ? Array.from({ length: NEXT_PORTS }, (_, next) => USUAL_PORT + next) : [wanted];
  for (const port of ports) {
    try {
      return await startServer({ book, port });
    } catch (trouble) {
      if (!(trouble instanceof PortTaken)) throw trouble;
      if (wanted === undefined) context.terminal.err(`Port ${port} is taken; trying ${port + 1}.\n`);
    }
  }
  const tried = wanted ?? `${USUAL_PORT} to ${USUAL_PORT + NEXT_PORTS - 1}`;
  throw new Refusal(
    'port-taken',
    `Port ${tried} is taken by another program. Name another with --port, or --port 0 for any free one.`,
  );
}

/** Works out the trials while the browser starts; what goes wrong here is said by the page that asks for it. */
function workOutFirstPage(book: Book, { view }: Shared): void {
  import('@pullbook/workshop').then(({ trialCards }) => trialCards(book, view)).catch(() => undefined);
}

function openBrowser(address: string): void {
  const [program, ...leading] =
    process.platform === 'darwin'
      ? ['open']
      : process.platform === 'win32'
        ? ['cmd', '/c', 'start', '']
        : ['xdg-open'];
  const child = spawn(program!, [...leading, address], { stdio: 'ignore', detached: true });
  // Without a browser the address on the screen is enough.
  child.on('error', () => undefined);
  child.unref();
}
