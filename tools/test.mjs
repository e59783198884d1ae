// README's second command: sets up what is missing, then runs every test and closes with "N passed, N failed".
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { checkNode, ensureChromium, ensureFilmTools, ensurePackages, run } from './setup.mjs';

checkNode();
ensurePackages();
ensureChromium();
ensureFilmTools();

let passed = 0;
let failed = 0;

/** A step that is one check by itself. */
function step(title, script) {
  console.log(`\n== ${title}`);
  if (run('npm', ['run', '--silent', script]) === 0) passed += 1;
  else {
    failed += 1;
    console.log(`FAILED: ${title} (npm run ${script})`);
  }
}

/** A run of the test runner, counted test by test. */
function tests(title, project) {
  console.log(`\n== ${title}`);
  const folder = mkdtempSync(join(tmpdir(), 'pullbook-tests-'));
  const report = join(folder, 'report.json');
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const code = run('npx', ['vitest', 'run', '--project', project, ...reporters]);
  try {
    const counts = JSON.parse(readFileSync(report, 'utf8'));
    passed += counts.numPassedTests;
    failed += counts.numFailedTests;
    // A file that did not load, or an unhandled error, fails no single test.
    if (code !== 0 && counts.numFailedTests === 0) failed += 1;
    if (counts.numTotalTests === 0) failed += 1;
  } catch {
    failed += 1;
  }
  rmSync(folder, { recursive: true, force: true });
}

step('Build', 'build');
step('Format and lint', 'lint');
step('Types', 'types');
step('Unused files, exports and packages', 'unused');
tests('Unit, property, direction and outside checks', 'unit*');
tests('Screens in a real browser, with accessibility', 'browser');

console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
