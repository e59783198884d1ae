import type { Case, Section } from './cases.ts';
import type { GateOutcome } from './gates.ts';
import { type PowerByHand, twiceByHand } from './power.ts';
import { SEED } from './run-case.ts';
import { type Measure, medianHalfWidth, shareOf, type Tally } from './tally.ts';

export interface CaseResult {
  one: Case;
  tally: Tally;
  gates: GateOutcome[];
}

const NAMES: Record<Measure, string> = {
  mean: 'mean',
  pointwise: 'pointwise',
  simultaneous: 'simultaneous',
  falseClear: 'false clear',
  falseClearSpeed: 'false clear speed',
  clear: 'clear',
  falseNoDifference: 'false "no difference"',
  halfWidth: 'half-width',
};

/** What stands above the rows of a section. */
const LEADS: Partial<Record<Section, string>> = {
  'Spreads drawn from the stated prior':
    'What the bands are made for: history is right on average, and as uncertain as it says.',
  'History wrong':
    'At 1 + 1 no data can show that history is wrong: printed, not gated. Beyond, history is set aside where the repeats scatter more than it lets pass (75 % point of F).',
  Drift:
    'Where the order of the pulls lets a straight drift cancel, it is taken out, however large. Blocks cannot: their band carries the drift that history leads one to expect, and no more.',
  Soak: 'An exponential approach is not straight. After two warm-up pulls little of it is left; without them no order takes it out, and the rows only say by how much the bands then flatter.',
  'Other forms of scatter':
    'The bands assume normal scatter with neighbours alike by an exponential. Here neither holds. Gated is only that little is called clear that is not there.',
  'Several changes': 'Mean coverage is of all gains of a comparison at once. Pointwise coverage is per gain.',
  Looks:
    'False clear over all looks. Planned, the error is shared over the looks; not planned, every look spends it anew.',
  'Little history':
    'A prior of one degree of freedom. Drawn from it, one comparison in ten scatters eight times as stated, or more: the bands are as wide as that.',
  'No difference': 'Gated: "no difference larger than 1 %" said of a true gain of just 1 %.',
};

const percent = (share: number, decimals = 1) => `${(100 * share).toFixed(decimals)}`;

/** The whole page, from the results alone: the same seeds write the same page. */
export function coveragePage(
  results: readonly CaseResult[],
  power: ReadonlyMap<string, PowerByHand>,
): string {
  const sections = [...new Set(results.map(({ one }) => one.section))];
  return `${[
    '# How far the verdicts can be trusted',
    '',
    'Made by `npm run study:coverage`; nothing here is written by hand. A simulator that uses nothing of the comparison makes',
    'pulls whose truth is known (scatter of pulls, set-ups, days and cells, drift, soak, wandering along the engine speed), and',
    'the comparison is asked what it makes of them. 95 % bands: a share of about 95 in 100 must hold the truth.',
    '',
    `Seed ${SEED}; each stretch of each case has a stream of its own, named by both. Behind each share stands its Monte-Carlo`,
    'standard error. A gate fails only where it is missed by more than three of them; "within error" says that it is missed by',
    'less. Known well: 0.4 % between pulls with 20 degrees of freedom, 0.5 % between set-ups with 10. Guessed: 0.6 % with 6,',
    '0.5 % with 4.',
    '',
    ...sections.flatMap((section) => [
      `## ${section}`,
      '',
      ...(LEADS[section] ? [LEADS[section], ''] : []),
      ...(section === 'Power'
        ? powerTable(results, power)
        : rowsOf(results.filter(({ one }) => one.section === section))),
      '',
    ]),
    ...outside(results),
  ].join('\n')}\n`;
}

function rowsOf(results: readonly CaseResult[]): string[] {
  const extra = new Set(results.flatMap(({ gates }) => gates.map(({ measure }) => measure)));
  const columns: Measure[] = ['mean', 'pointwise', 'simultaneous', 'falseClear', 'falseClearSpeed'];
  if (extra.has('falseNoDifference')) columns.push('falseNoDifference');
  return [
    `| case | runs | ${columns.map((one) => `${NAMES[one]}, %`).join(' | ')} | median half-width, % | gate, % | passed |`,
    `|---|---:|${columns.map(() => '---:').join('|')}|---:|---|---|`,
    ...results.map(({ one, tally, gates }) =>
      [
        '',
        // Another day is a `|` in an order of pulls, and the end of a cell in a table.
        one.says.replaceAll('|', '\\|'),
        tally.runs,
        ...columns.map((measure) => shown(tally, measure)),
        percent(medianHalfWidth(tally), 2),
        gates.length === 0 ? 'only reported' : gates.map(gateText).join('; '),
        gates.length === 0 ? '–' : outcomeText(gates),
        '',
      ]
        .join(' | ')
        .trim(),
    ),
  ];
}

function shown(tally: Tally, measure: Measure): string {
  const { share, error } = shareOf(tally, measure);
  return `${percent(share)} ±${percent(error)}`;
}

function gateText({ measure, low, high }: GateOutcome): string {
  const name = NAMES[measure];
  if (low === undefined) return `${name} ≤ ${percent(high!)}`;
  return high === undefined
    ? `${name} ≥ ${percent(low, 0)}`
    : `${name} ${percent(low, 0)}–${percent(high, high === 0.985 ? 1 : 0)}`;
}

function outcomeText(gates: readonly GateOutcome[]): string {
  const failed = gates.filter(({ outcome }) => outcome === 'failed');
  if (failed.length > 0) return `**no**: ${failed.map(({ measure }) => NAMES[measure]).join(', ')}`;
  const near = gates.filter(({ outcome }) => outcome === 'outside within error');
  return near.length > 0 ? `within error: ${near.map(({ measure }) => NAMES[measure]).join(', ')}` : 'yes';
}

function powerTable(results: readonly CaseResult[], power: ReadonlyMap<string, PowerByHand>): string[] {
  const { moderated, withRule } = twiceByHand();
  return [
    'How often a gain of 1 % is called clear at a scatter of 0.4 %, history of 20 degrees of freedom exactly right. Beside the',
    'program: the textbook’s Student t of the pulls at hand alone (noncentral t, exact), and history and repeats put together by',
    'hand, without and with the rule that sets history aside. The rule costs power where history is right. It stays, because',
    'history is sometimes wrong and nobody can tell beforehand: at a scatter of twice the stated, 2 + 2 pulls, bands put together',
    `by hand hold the truth in ${percent(moderated)} % of the cases without it, with it in ${percent(withRule)} % (the program: *History wrong*).`,
    '',
    '| pulls | runs | the program, % | textbook, % | put together by hand, no rule, % | with the rule, % |',
    '|---|---:|---:|---:|---:|---:|',
    ...results
      .filter(({ one }) => one.section === 'Power')
      .map(({ one, tally }) => {
        const hand = power.get(one.id)!;
        const n = one.scene.pulls.length / 2;
        const simulated = (share: number) => `${percent(share)} ±${percent(hand.error)}`;
        const book = hand.textbook === null ? 'not computable' : percent(hand.textbook);
        return `| ${n} + ${n} | ${tally.runs} | ${shown(tally, 'clear')} | ${book} | ${simulated(hand.moderated)} | ${simulated(hand.withRule)} |`;
      }),
  ];
}

/** Every row in which a band holds the truth in less than 93 of 100 cases, gated or not, said once more in one place. */
function outside(results: readonly CaseResult[]): string[] {
  const short = results.flatMap(({ one, tally }) => {
    if (one.section === 'Power' || one.looks) return [];
    const below = (['mean', 'pointwise', 'simultaneous'] as const).filter(
      (measure) => shareOf(tally, measure).share < 0.93,
    );
    if (below.length === 0) return [];
    const figures = below.map((measure) => `${NAMES[measure]} ${percent(shareOf(tally, measure).share)} %`);
    return [`- ${one.section}: ${one.says}: ${figures.join(', ')}.`];
  });
  if (short.length === 0) return [];
  return ['## Where the bands hold less than they say', '', 'Below 93 in 100, gated or not:', '', ...short];
}
