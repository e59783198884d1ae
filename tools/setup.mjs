// Does whatever set-up is missing on a fresh machine. Uses nothing but Node: it runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));
export const chromium = '/usr/bin/chromium';

/** Runs a command from the project's root with its output shown; returns its exit code. */
export function run(command, args, options = {}) {
  const done = spawnSync(command, args, {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
    ...options,
  });
  return done.status ?? 1;
}

function stop(message) {
  console.error(message);
  process.exit(1);
}

export function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (!(major > 20 || (major === 20 && minor >= 19))) {
    stop(
      `Pullbook needs Node.js 20.19 or newer; this is ${process.versions.node}. Install a newer one and try again.`,
    );
  }
}

/** Installs the packages of the lock file once; again when the lock file or the Node.js line has changed. */
export function ensurePackages() {
  const stamp = join(root, 'node_modules', '.pullbook-set-up');
  const lock = readFileSync(join(root, 'package-lock.json'));
  const wanted = createHash('sha256').update(lock).update(process.versions.modules).digest('hex');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  console.log('Setting up: installing packages (first time a few minutes, one of them is compiled) …');
  if (run('npm', ['ci', '--no-audit', '--no-fund']) !== 0) {
    stop(
      'npm ci failed. It needs the npm registry and, on some machines, python3, make and g++ to compile the database.',
    );
  }
  writeFileSync(stamp, wanted);
}

/** Installs packages from Debian where that can be done without asking anybody. */
function installFromDebian(what, packages) {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return;
  console.log(`Setting up: installing ${what} from Debian for the tests …`);
  run('apt-get', ['update', '-qq']);
  run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], {
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
}

/** The browser that the tests drive, from Debian; elsewhere the person installs it. */
export function ensureChromium() {
  if (existsSync(chromium)) return;
  installFromDebian('Chromium', ['chromium']);
  if (!existsSync(chromium)) {
    stop(
      `The browser tests need Chromium at ${chromium}: run "sudo apt-get install chromium" and try again.`,
    );
  }
}

/** Programs that make and read clips and PDFs: the tests have files opened by readers that are not ours. */
export function ensureFilmTools() {
  const areThere = () =>
    [
      ['ffmpeg', '-version'],
      ['ffprobe', '-version'],
      ['pdftoppm', '-v'],
      ['pdftotext', '-v'],
    ].every(([name, about]) => spawnSync(name, [about]).status === 0);
  if (areThere()) return;
  installFromDebian('ffmpeg and poppler-utils', ['ffmpeg', 'poppler-utils']);
  if (!areThere()) {
    stop(
      'The tests of clips and PDFs need ffmpeg, ffprobe, pdftoppm and pdftotext: run "sudo apt-get install ffmpeg poppler-utils" and try again.',
    );
  }
}
