import { usualParts } from '@pullbook/core/reach';
import { said } from '@pullbook/core/remark';
import { expect, test } from 'vitest';
import { plainText } from '../sentence.ts';
import { answerCard } from './answer-card.ts';
import { enquiryCard } from './enquiry-card.ts';
import { partsPage } from './parts-page.ts';
import { answerOf, both, keptOf, rung } from './test-reach.ts';

const US = { units: 'us', decimalMark: '.' } as const;
const SI = { units: 'si', decimalMark: ',' } as const;
const plain = (text: string) => text.replaceAll(/[\u00a0\u202f\u2009]/gu, ' ');
const wordsOf = ({ body }: ReturnType<typeof answerCard>) =>
  body.kind === 'words' ? body.paragraphs.map(({ text }) => plain(text)) : [];

test('the answer card: asked, answered with its band, what it rests on, what binds first, what was measured', () => {
  const still = answerCard(keptOf(), US, null);
  expect(plain(still.headline)).toBe('How does “base cam, 84 mm” make 520 hp?');
  expect(wordsOf(still)).toEqual([
    '528 hp (505 to 551) with blower pulley 80 mm in place of 84 mm; 520 hp is likely, 84 of 100.',
    'Scaled from our pulls: the match fitted to 2 boosted pulls.',
    'Binds first: impeller speed 51,233 of 52,000 rpm, 1.5 % left, at 6,900 rpm.',
    'Measured nearest: “longer cam, 84 mm”: 523 hp (3 pulls).',
  ]);
  expect(still.warning).toBe('Computed, not measured: a planning aid');
  expect(still.footer.at(-1)).toBe(
    'SAE J1349 · computed from 4 pulls · 1 assumption · 26 November 2026 · invented data',
  );
});

test('the card of one way, with its own question and the shop’s units', () => {
  const kept = keptOf(answerOf(), { question: 'What would it take for 520?' });
  const still = answerCard(kept, SI, null, { rungId: both.id });
  expect(still.headline).toBe('What would it take for 520?');
  expect(wordsOf(still).slice(0, 3)).toEqual([
    '409 kW (387 to 429) with blower pulley 80 mm in place of 84 mm and longer cam; 388 kW is very likely, 98 of 100.',
    'Blower pulley 80 mm in place of 84 mm: scaled from our pulls.',
    'Longer cam: measured by us.',
  ]);
});

test('where none reaches, the card says so and claims no way', () => {
  const answer = answerOf({
    feasible: false,
    rungs: [rung({ reaches: false, chance: 0.02 })],
    reason: said`The impeller stands at its limit`,
  });
  const [first, ...others] = wordsOf(answerCard(keptOf(answer), US, null));
  expect(first).toMatch(
    /^520 hp is out of reach with what can be bought\. Nearest within the limits: 528 hp /u,
  );
  expect(others).toEqual([
    'The impeller stands at its limit.',
    'Measured nearest: “longer cam, 84 mm”: 523 hp (3 pulls).',
  ]);
});

test('the curves of a way: now and then with their bands, the target across', () => {
  const { body, headline, subline } = answerCard(keptOf(), US, null, { shows: 'curves' });
  if (body.kind !== 'stack') throw new Error(`a ${body.kind} in place of curves`);
  expect(plain(headline)).toBe('528 hp (505 to 551); 520 hp is likely, 84 of 100');
  expect(plain(subline)).toMatch(
    /^With blower pulley 80 mm in place of 84 mm · Binds first: impeller speed /u,
  );
  expect(body.chart.panels.map(({ id }) => id)).toEqual(['power', 'boost']);
  expect(body.chart.panels[0]!.lines.map(({ id }) => id)).toEqual(['target', 'Now', 'Then']);
});

test('what was asked before, in few words, with what became of it', () => {
  const kept = keptOf(answerOf(), {
    became: [{ rungId: '80-mm', combinationId: 'c', trialId: 't', at: '2026-11-27T08:00:00Z' }],
  });
  const card = enquiryCard(
    {
      ...kept,
      sources: [{ kind: 'trial', id: 't', name: 'What does the 80 mm pulley add towards 520 hp?' }],
    },
    US,
  );
  expect(plain(card.question)).toBe('How does “base cam, 84 mm” make 520 hp?');
  expect(plain(plainText(card.sentence))).toBe(
    '520 hp is reached with blower pulley 80 mm in place of 84 mm: 528 hp (505 to 551), likely, 84 of 100.',
  );
  expect(card.facts).toBe('base cam, 84 mm · 26 November 2026 · 4 pulls');
  expect(card.became).toEqual([
    { text: 'became What does the 80 mm pulley add towards 520 hp?', trialId: 't' },
  ]);
  expect(card.chips).toEqual([{ text: 'Invented data', tone: 'quiet' }]);
});

test('the parts list in the units shown, its rows in the places of the list', () => {
  const list = { ...usualParts(), binding: { ringGap: true } };
  const page = partsPage(list, US);
  const kind = (id: string) => page.kinds.find((one) => one.id === id)!;
  expect(kind('blowerPulleys').rows).toHaveLength(list.blowerPulleys.length);
  expect(plain(kind('blowerPulleys').rows[0]!.text)).toBe('2.36 in, 60 mm');
  expect(plain(partsPage(list, SI).kinds[0]!.rows[0]!.text)).toBe('60 mm');
  expect(plain(kind('injectors').rows.at(-1)!.text)).toBe('160 lb/h at 44 psi');
  expect(kind('blowerPulleys').rows[0]).toMatchObject({ cost: 1, from: 'common practice, no source' });
  expect(page.binding.find(({ id }) => id === 'ringGap')).toEqual({
    id: 'ringGap',
    label: 'Ring gap',
    usually: false,
    here: true,
    where: '',
  });
  expect(page.binding.find(({ id }) => id === 'surge')?.where).toBe('where the edge was measured');
});
