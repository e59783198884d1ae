import { GATE, type Judged, judged, type Kind, missed } from './judge.ts';
import { type EngineRun, FORETOLD } from './run.ts';

const NAMES = { boost: 'boost', brakePower: 'power' };

/** The study's page, docs/next-pulley.md. */
export function nextPulleyPage(runs: readonly EngineRun[]): string {
  const parts: [name: string, of: (run: EngineRun) => boolean][] = [
    ['air measured', ({ engine }) => engine.airBasis === 'air flow'],
    ['air by fuel and mixture', ({ engine }) => engine.airBasis === 'fuel and mixture'],
    ['air by torque and efficiency', ({ engine }) => engine.airBasis === 'torque and efficiency'],
    ['map of points', ({ engine }) => !engine.isRated],
    ['one rated point', ({ engine }) => engine.isRated],
    ['cooled', ({ engine }) => engine.isCooled],
    ['not cooled', ({ engine }) => !engine.isCooled],
    ['impeller 3 to 6 % faster', ({ engine }) => engine.faster < 1.06],
    ['impeller 6 to 10 % faster', ({ engine }) => engine.faster >= 1.06],
  ];
  const failed = missed(runs);
  return `# How often the next pulley lies in its band

Written by \`npm run study:match\`. ${runs.length} invented engines of 2 to 8 litres, each with hidden faults drawn from the spreads that the program states of what it does not
know: air and power of the engine alone, head, flow and efficiency of the map, cooler, slip, swallowing, heat, work, how the last bend over speed, and what differs from one
set-up to the next. Three pulls at one pulley, with gauges and scatter as the demo book has them, are fitted; the next pulley turns the impeller 3 to 10 % faster. Its bands
of 95 of 100 are held against what that engine then is, at 15 speeds. Faults and readings come from a simulator that uses nothing of the fit; that engine and match follow the same equations is
granted, so this tells whether the bands are of the right size where the stated spreads are, and not whether those are. How much of the lost work grows with boost is drawn for each engine, and the fit does not know it.

Asked for: a band holds in ${percent(GATE.low, 0)} to ${percent(GATE.high, 0)}. ${
    failed.length === 0
      ? 'It does.'
      : `**Missed: ${failed.map(({ figure, held }) => `${NAMES[figure]} ${percent(held)}`).join(', ')}.**`
  } Before any boosted pull the same is asked; the widths say what a pull is worth.

| bands | figure | hold | ± | width | middle off, rms |
|---|---|---:|---:|---:|---:|
${rows(runs, 'before any boosted pull', 'unfitted')}
${rows(runs, 'after three pulls at the first pulley', 'fitted')}
${rows(runs, 'the same, against the mean of three pulls', 'againstRead')}

± is one standard error, an engine counting once. Width and distance are shares of the figure.

## By kind of engine, after three pulls

| engines | | figure | hold | ± | width | middle off, rms |
|---|---:|---|---:|---:|---:|---:|
${parts.map(([name, of]) => rowsOfPart(runs.filter(of), name)).join('\n')}
`;
}

const percent = (share: number, decimals = 1) => `${(100 * share).toFixed(decimals)} %`;

const figures = ({ held, error, width, off }: Judged): string =>
  [percent(held), percent(error), percent(width), percent(off)].join(' | ');

const rows = (runs: readonly EngineRun[], name: string, kind: Kind): string =>
  FORETOLD.map((figure) => `| ${name} | ${NAMES[figure]} | ${figures(judged(runs, kind, figure))} |`).join(
    '\n',
  );

const rowsOfPart = (runs: readonly EngineRun[], name: string): string =>
  FORETOLD.map(
    (figure) =>
      `| ${name} | ${runs.length} | ${NAMES[figure]} | ${figures(judged(runs, 'fitted', figure))} |`,
  ).join('\n');
