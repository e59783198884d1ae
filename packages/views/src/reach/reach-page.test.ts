import { figureOf, speedFigure } from '@pullbook/core/quantity';
import { remark, said } from '@pullbook/core/remark';
import { expect, test } from 'vitest';
import { plainText } from '../sentence.ts';
import { reachPage } from './reach-page.ts';
import { revivedReach } from './revived-reach.ts';
import {
  answerOf,
  both,
  bundleOf,
  hp,
  IMPELLER,
  INJECTORS,
  keptOf,
  NOW_RUNG,
  PULLEY,
  psi,
  rung,
  TARGET,
} from './test-reach.ts';

const US = { units: 'us', decimalMark: '.' } as const;
const SI = { units: 'si', decimalMark: ',' } as const;
const plain = (text: string) => text.replaceAll(/[\u00a0\u202f\u2009]/gu, ' ');
const searched = (answer = answerOf(), rungId: string | null = null, options: typeof US | typeof SI = US) =>
  reachPage({ bundle: bundleOf(), answer, progress: null, rungId }, options);
const sentence = (page: ReturnType<typeof reachPage>) => plain(plainText(page.sentence));

test('the answer in a sentence, in either units', () => {
  expect(sentence(searched())).toBe(
    '520 hp is reached with blower pulley 80 mm in place of 84 mm: 528 hp (505 to 551), likely, 84 of 100. What binds first: impeller speed at 6,900 rpm, 1.5 % left. Computed, not measured: a planning aid.',
  );
  expect(sentence(searched(answerOf(), null, SI))).toBe(
    '388 kW is reached with blower pulley 80 mm in place of 84 mm: 394 kW (376 to 411), likely, 84 of 100. What binds first: impeller speed at 6 900 rpm, 1,5 % left. Computed, not measured: a planning aid.',
  );
});

test('power at a speed and an average say where they are asked, and the boost that may not be passed', () => {
  const at = answerOf({ target: { ...TARGET, what: 'power at a speed', atRpm: 6000, boostCap: psi(10) } });
  const bundle = bundleOf();
  const ofTarget = (target: typeof TARGET) => ({
    ...bundle,
    input: { ...bundle.input, target },
  });
  const page = reachPage({ bundle: ofTarget(at.target), answer: at, progress: null, rungId: null }, US);
  expect(plain(page.title)).toBe(
    'How does “base cam, 84 mm” make 520 hp at 6,000 rpm within 10.0 psi of boost?',
  );
  expect(page.chosen!.chart.panels[0]!.marks.map(({ x, text }) => [x, plain(text)])).toEqual([
    [6000, '520 hp asked for'],
  ]);
  expect(page.chosen!.chart.panels.at(-1)!.lines.map(({ label }) => plain(label?.key ?? ''))).toContain(
    '10.0 psi',
  );
  const over = { ...TARGET, what: 'average power' as const, windowRpm: [4000, 6500] as [number, number] };
  const average = reachPage(
    { bundle: ofTarget(over), answer: answerOf({ target: over }), progress: null, rungId: null },
    US,
  );
  expect(sentence(average)).toMatch(/^520 hp on average from 4,000 to 6,500 rpm is reached with /u);
  expect(average.rungs[0]!.reached).toBe('528\u00a0hp');
  expect(average.chosen!.chart.xWindow?.range).toEqual([4000, 6500]);
});

test('out of reach: the reason, the least that would do, and what comes nearest', () => {
  const page = searched(
    answerOf({
      feasible: false,
      rungs: [
        rung({ reaches: false, chance: 0.02, reached: { value: hp(506), low: hp(484), high: hp(526) } }),
        rung({
          id: 'too-fast',
          reaches: false,
          reached: { value: hp(560), low: hp(540), high: hp(580) },
          bindsFirst: { ...IMPELLER, value: 56_000, margin: -0.077 },
        }),
      ],
      reason: said`The impeller stands at its limit of ${speedFigure(52_000)} before that`,
      leastRemedy: {
        what: 'impellerSpeed',
        said: said`An impeller that stands ${speedFigure(55_400)} in place of ${speedFigure(52_000)}`,
        share: 0.065,
        changes: [PULLEY],
      },
      remedies: [
        { what: 'breathing', said: said`An engine that swallows ${'6 %'} more`, share: 0.06, changes: [] },
      ],
    }),
  );
  expect(sentence(page)).toBe(
    '520 hp is out of reach with what can be bought. Nearest within the limits: 506 hp (484 to 526) with blower pulley 80 mm in place of 84 mm. The impeller stands at its limit of 52,000 rpm before that. The least that would do: an impeller that stands 55,400 rpm in place of 52,000 rpm.',
  );
  expect(page.rungs.map(({ state }) => plain(state))).toEqual([
    '14 hp short',
    'passes a limit: impeller speed',
  ]);
  expect(page.infeasible?.others).toEqual(['An engine that swallows 6 % more.']);
  expect(page.chips[0]).toEqual({ text: 'Out of reach', tone: 'caution' });
  expect(plain(page.spoken)).toBe('No way to 520 hp within the limits.');
});

test('there already: nothing has to be changed', () => {
  const now = { ...NOW_RUNG, reaches: true, chance: 0.991, reached: rung().reached };
  const page = searched(answerOf({ now, rungs: [] }));
  expect(sentence(page)).toBe(
    '520 hp is there already: “base cam, 84 mm” makes 528 hp (505 to 551), very likely, 99 of 100. Computed, not measured: a planning aid.',
  );
  expect(page.chosen?.rung.title).toBe('As it is now');
  expect(page.infeasible).toBeNull();
});

test('a target that was refused says so in its own sentence', () => {
  const refusal = remark(
    'refusal',
    'no-baseline',
    said`No pull without the supercharger: make one, or state ${figureOf(250_000, 'power')}.`,
  );
  const page = reachPage(
    { bundle: bundleOf({ remarks: [refusal] }), answer: null, progress: null, rungId: null },
    US,
  );
  expect(sentence(page)).toBe('No pull without the supercharger: make one, or state 335.3 hp.');
  expect(page.chosen).toBeNull();
});

test('the ladder as it fills: no band, no chance, and no claim before they come', () => {
  const early = rung({
    reached: { value: hp(528), low: hp(528), high: hp(528) },
    peakPower: { value: hp(528), low: hp(528), high: hp(528), atRpm: 6500 },
    chance: Number.NaN,
  });
  const page = reachPage(
    { bundle: bundleOf(), answer: null, progress: { share: 0.3, rungs: [early] }, rungId: null },
    US,
  );
  expect(sentence(page)).toBe('Looking for ways to 520 hp: 1 way so far.');
  expect(page.isFinished).toBe(false);
  expect(page.rungs[0]).toMatchObject({ band: '', chance: '' });
  expect(page.chosen!.figures.find(({ label }) => label === 'Highest power')!.band).toBe('');
});

test('a row of the ladder: each change with its ground and what opens it, what binds first, what cautions', () => {
  const row = searched().rungs[1]!;
  expect(row.changes.map(({ text, ground, cost }) => [plain(text), ground, cost])).toEqual([
    ['Blower pulley 80 mm in place of 84 mm', 'scaled from your data', 'small cost'],
    ['Longer cam', 'measured by you', 'considerable cost'],
  ]);
  expect(row.changes[0]!.from).toEqual({
    text: 'The match fitted to 2 boosted pulls.',
    links: [
      { kind: 'pull', id: 'p1', text: 'boosted 1' },
      { kind: 'pull', id: 'p2', text: 'boosted 2' },
      { kind: 'parts', id: '', text: 'the parts list' },
    ],
  });
  // What was measured of a pair opens to the pair and its pulls, not to what can be bought.
  expect(row.changes[1]!.from.links).toEqual([
    { kind: 'combination', id: 'cam-84', text: 'longer cam, 84 mm' },
    { kind: 'pull', id: 'p5', text: 'cam 1' },
  ]);
  expect(plain(row.bindsFirst)).toBe('impeller speed 51,233 of 52,000 rpm, 1.5 % left, at 6,900 rpm');
  expect(plain(row.spoken)).toBe(
    'Blower pulley 80 mm in place of 84 mm and longer cam: 548 hp, 520 to 575; very likely, 98 of 100; reaches the target; considerable cost; binds first: impeller speed 51,233 of 52,000 rpm, 1.5 % left, at 6,900 rpm; 2 cautions.',
  );
});

test('limits: what binds first, each in the units of its own sentence', () => {
  const rows = searched().chosen!.limits.map(({ label, value, threshold, left, kind, state }) =>
    plain([label, value, threshold, left, kind, state].join(' | ')),
  );
  expect(rows).toEqual([
    'Impeller speed | 51,233 rpm | at most 52,000 rpm | 1.5 % left | binds | near',
    'Ring gap | 0.35 mm | at least 0.40 mm | 13 % short | cautions | passed',
    'Injectors | 91 % | at most 85 % | 7.1 % over | cautions | passed',
  ]);
});

test('nearest measured: how far from the target, and what separates it from the rung', () => {
  const near = searched().chosen!.near;
  expect(
    near.map(({ name, measured, distance, separates }) =>
      plain([name, measured, distance, separates].join(' | ')),
    ),
  ).toEqual([
    'longer cam, 84 mm | 523 hp, 3 pulls | 3 hp above | drive and cam differ',
    'base cam, 80 mm | 503 hp, 1 pull | 17 hp below | its sheet is the same',
  ]);
  expect(near[0]!.lines[0]).toEqual({
    label: 'Drive, blower pulley diameter',
    pulled: '84 mm',
    rung: '80 mm',
  });
});

test('what is left: how fast it may be turned, what it then makes, what stops it', () => {
  const [left] = searched().left;
  expect(plain(plainText(left!.sentence))).toBe(
    'Turned 7.54 times as fast as the engine in place of 7.07 (a blower pulley of 3.10 in, 78.8 mm) this supercharger makes 524 hp (501 to 547); stopped there by impeller speed, at its limit of 52,000 rpm at 6,900 rpm.',
  );
  expect(plain(left!.buyable)).toBe(
    'The smallest blower pulley of the list within the limits is 3.15 in, 80 mm: 519 hp (497 to 541) at 6,500 rpm.',
  );
  expect(left!.stops!.rows[0]!.cells.map(plain)).toEqual([
    '7.54',
    '524 hp',
    '52,000 rpm',
    '52,000 rpm',
    '6,900 rpm',
    'the sheet (data sheet)',
  ]);
  expect(left!.from.links.map(({ text }) => text)).toEqual([
    'alone 1',
    'alone 2',
    'boosted 1',
    'boosted 2',
    'the match',
  ]);
});

test('the picture: now, the way with its band, what was measured, the target across; torque is power over speed', () => {
  const { chart, cursor, map } = searched(answerOf(), both.id).chosen!;
  const [power, torque] = chart.panels;
  expect(power!.lines.map(({ id, weight, dotted }) => [id, weight, dotted ?? false])).toEqual([
    ['measured', 'pull', true],
    ['target', 'pull', false],
    ['Now', 'mean', false],
    ['2', 'mean', false],
  ]);
  expect(power!.bands).toHaveLength(2);
  expect(power!.lines[1]!.y).toEqual([520, 520]);
  // 1 hp is 5252.1 lb-ft at 1 rpm, whatever the engine.
  const node = power!.lines[3]!.x.indexOf(5250);
  const ratio = torque!.lines.at(-1)!.y[node]! / power!.lines[3]!.y[node]!;
  expect(ratio).toBeCloseTo(5252.113 / 5250, 4);
  expect(cursor.columns.map(({ key }) => key)).toEqual(['Now', '2', 'Now measured']);
  expect(cursor.at[cursor.start]).toBe(6500);
  expect(map!.operating.map(({ key }) => key)).toEqual(['Now', '2']);
});

test('what was kept reads the same, without what it was made of', () => {
  const page = reachPage({ kept: keptOf(), rungId: null }, US);
  expect(sentence(page)).toBe(sentence(searched()));
  expect(page.chosen!.map).toBeNull();
  expect(plain(page.basis)).toBe(
    'Highest power · SAE J1349 · in air of 28.94 inHg and 80 °F · 4,812 combinations of changes looked at · asked 26 November 2026 of 4 pulls, version 0.1.0, seed 1',
  );
  expect(page.chosen!.near[0]).toMatchObject({ separates: 'drive differs' });
  const changed = { ...keptOf(), remarks: [remark('caution', 'pulls-since', 'Asked before 2 pulls.')] };
  expect(reachPage({ kept: changed, rungId: null }, US).chips).toContainEqual({
    text: 'Changed since it was asked',
    tone: 'caution',
  });
});

test('a bundle comes back over the wire as it was sent, gaps and absent shapes alike', () => {
  const bundle = bundleOf();
  bundle.measured!.boost![1] = Number.NaN;
  const { match } = bundle.input.builds[0]!;
  match!.spread.push({
    key: 'fit',
    parts: ['head', 'work'],
    factor: [[0.01], [0.02]],
    shapes: [null, [1, Number.NaN]],
  });
  expect(revivedReach(JSON.parse(JSON.stringify(bundle)))).toEqual(bundle);
});

test('where the cheapest way is not likely enough, the cheapest of the surer ones is named too', () => {
  const unsure = rung({ id: 'unsure', chance: 0.53 });
  const page = searched(answerOf({ rungs: [unsure, rung({ id: 'hardly', chance: 0.6 }), both] }));
  expect(sentence(page)).toContain(
    ' Surer: blower pulley 80 mm in place of 84 mm and longer cam, 548 hp (520 to 575), very likely, 98 of 100.',
  );
  expect(sentence(searched())).not.toContain('Surer');
});

test('a supercharger whose limit is passed from the slowest ratio on is not said to stop at it', () => {
  const [left] = answerOf().left;
  const passed = { ...INJECTORS, value: 1.32, margin: 1 - 1.32 / 0.85 };
  const page = searched(answerOf({ left: [{ ...left!, stoppedBy: passed, buyable: null }] }));
  expect(plain(plainText(page.left[0]!.sentence))).toMatch(
    /; a limit is passed even so: injectors, 132 % where 85 % is allowed at 6,500 rpm\.$/u,
  );
});

test('a way that most draws miss only barely reaches the target, and says so', () => {
  const page = searched(answerOf({ rungs: [rung({ chance: 0.44 })] }));
  expect(sentence(page)).toMatch(/^520 hp is barely reached with .*, less likely than not, 44 of 100\./u);
  expect(page.rungs[0]!.state).toBe('barely reaches the target');
});

test('an engine without a supercharger has no boost and no map, and its computing is carried, not matched', () => {
  const alone = (one: typeof both) => ({
    ...one,
    buildId: 'alone',
    made: { ...one.made!, match: null },
    highestBoost: null,
    bindsFirst: null,
    limits: [],
    curve: { ...one.curve, boost: null, map: null, impellerSpeedRpm: null },
  });
  const bundle = bundleOf();
  const [build] = bundle.input.builds;
  bundle.measured!.boost = null;
  bundle.input.builds = [{ ...build!, id: 'alone', match: null, fit: null }];
  const answer = answerOf({ now: alone(NOW_RUNG), rungs: [alone(rung())], left: [] });
  const page = reachPage({ bundle, answer, progress: null, rungId: null }, US);
  expect(page.chosen!.chart.panels.map(({ id }) => id)).toEqual(['power', 'torque']);
  expect(page.chosen!.map).toBeNull();
  expect(page.chosen!.figures.at(-2)!.label).toBe('Air');
  expect(page.chosen!.figures[1]!.from.text).toBe(
    'Carried from naturally aspirated pulls (alone 1 and alone 2); band of 500 draws, seed 1.',
  );
  expect(page.rungs[0]!.bindsFirst).toBe('');
  expect(sentence(page)).not.toContain('binds first');
});
