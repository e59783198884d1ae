// README's first command: sets up what is missing, then starts Pullbook with the invented demo book.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { checkNode, ensurePackages, root, run } from './setup.mjs';

checkNode();
ensurePackages();
const commandLine = join(root, 'apps/cli/dist/pullbook.mjs');
if (!existsSync(commandLine)) run('npm', ['run', '--silent', 'build']);
const given = process.argv.slice(2);
const book = given.includes('--book') ? [] : ['--book', join(root, 'demo-book'), '--demo'];
// The child gets Ctrl-C from the terminal itself and stops cleanly; this process only waits for it.
process.on('SIGINT', () => {});
process.exitCode = run(process.execPath, [commandLine, 'serve', ...book, ...given]);
