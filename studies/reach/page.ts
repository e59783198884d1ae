import { inStep, type Judged, judged, missed, STEPS } from './judge.ts';
import type { Held } from './run.ts';
import { WAYS } from './world.ts';

/** The study's page, docs/reach-study.md. */
export function reachPage(all: readonly Held[], worlds: number): string {
  const failed = missed(all);
  const part = (isFitted: boolean): string => {
    const of = all.filter((one) => one.isFitted === isFitted);
    const rows: [name: string, of: Held[]][] = [
      ...WAYS.map((way): [string, Held[]] => [way, of.filter((one) => one.way === way)]),
      ['the first said to reach', of.filter(({ isFirst }) => isFirst)],
    ];
    return `| rungs of | | bias | off, rms | width | hold | chance said | reached |
|---|---:|---:|---:|---:|---:|---:|---:|
${rows.map(([name, held]) => `| ${name} | ${row(judged(held))} |`).join('\n')}

| chance said | rungs | mean of it | reached |
|---|---:|---:|---:|
${STEPS.map((step) => [step, judged(inStep(of, step))] as const)
  .filter(([, { rungs }]) => rungs > 0)
  .map(
    ([[from, to], { rungs, chance, reached }]) =>
      `| ${from} to ${Math.min(1, to)} | ${rungs} | ${chance.toFixed(2)} | ${reached.toFixed(2)} |`,
  )
  .join('\n')}`;
  };
  return `# Whether a rung of the ladder makes what it says

Written by \`npm run study:reach\`. ${worlds} invented engines, as in [the study of the next pulley](next-pulley.md): hidden faults drawn from the spreads that the program states. Of each 1.5
to 8 % more power is asked for than it makes: by another pulley, by another cooler (ice where there was one, cell water where there was none), by a gain in breathing that its owner states
(2 to 7 %, ±1.5 %), and by pulley and breathing. Every rung shown is then matched anew without any fit, with the faults, in another set-up, and held against what was said of it. The other cooler is
off by as much as is stated of one, the gain stated likewise. That engine and match follow the same equations is granted; knock, fuels and limits are not in it.

Asked for: bands of 95 of 100 hold in 90 to 99.5 of 100, and of rungs said to reach by a chance of 0.5 to 0.9 no fewer do than said, less 0.1. ${
    failed.length === 0 ? 'They do.' : `**Missed: ${failed.join('; ')}.**`
  }

## After three pulls at the present pulley

${part(true)}

What the fit takes of the lost work that grows with boost errs to the careful side: rungs make a little more than is said. The draws lie some 0.3 % under the figure as solved, for some of what
is open can only cost. So a rung reaches more often than its chance says. That stays: nobody knows an engine's lost work before its second pulley, and the careful side is the right one.

## Before any boosted pull

${part(false)}

Off is foretold over true, less 1; width that of the whole band. Common practice, no source: ±4 to 5 % one change from a tested combination, ±8 to 12 % untested. After a fit the bands are within
the first; before any boosted pull, with nothing known of map, belt and cooler but what a sheet says, they are wider than the second, and as wide as they have to be.
`;
}

const percent = (share: number, decimals = 1) => `${(100 * share).toFixed(decimals)} %`;

const row = ({ rungs, bias, off, width, held, chance, reached }: Judged): string =>
  [
    rungs,
    percent(bias),
    percent(off),
    percent(width),
    percent(held),
    chance.toFixed(2),
    reached.toFixed(2),
  ].join(' | ');
