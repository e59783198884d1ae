import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { onTestFinished } from 'vitest';
import { DRIVER_NAME } from '../driver.ts';
import { databaseFile } from '../places.ts';

const HOLD = `
const Database = require(process.argv[3]);
const database = new Database(process.argv[1]);
database.exec(process.argv[2]);
console.log('held');
process.stdin.once('data', () => { database.close(); process.exit(0); });
`;

/** Another process that holds a lock on a book until `release` is called. */
export async function otherProgramHolding(
  folder: string,
  statements: string,
): Promise<{ release: () => void }> {
  const child: ChildProcess = spawn(
    process.execPath,
    ['-e', HOLD, databaseFile(folder), statements, DRIVER_NAME],
    {
      cwd: import.meta.dirname,
      stdio: ['pipe', 'pipe', 'inherit'],
    },
  );
  onTestFinished(() => void child.kill('SIGKILL'));
  await once(child.stdout!, 'data');
  return { release: () => void child.stdin!.write('release\n') };
}
