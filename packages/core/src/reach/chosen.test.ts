import { expect, test } from 'vitest';
import { said } from '../remark/index.ts';
import { chosenOf, type Way, withoutWorse } from './chosen.ts';
import type { ChangePart, CostClass, ReachChange } from './model.ts';

const change = (part: ChangePart, cost: CostClass, name: string = part): ReachChange => ({
  part,
  said: said`${name}`,
  edits: [],
  clears: [],
  cost,
  ground: 'rule of thumb',
  from: said`invented`,
});

let count = 0;
const way = (changes: ReachChange[], figures: Partial<Way> = {}): Way => ({
  id: `way ${count++}`,
  changes,
  cost: {
    total: changes.reduce((sum, { cost }) => sum + cost, 0),
    highest: Math.max(...changes.map(({ cost }) => cost)) as CostClass,
  },
  reaches: true,
  likely: 0.8,
  margin: 0.05,
  ...figures,
});
const pulley = (name: string) => change('pulley', 1, name);

test('what holds another’s changes for no better chance and margin goes; what is worth its cost stays', () => {
  const plain = way([pulley('80 mm')]);
  const needless = way([pulley('80 mm'), change('fuel', 1)]);
  const likelier = way([pulley('80 mm'), change('cooler', 3)], { likely: 0.95 });
  const easier = way([pulley('82 mm'), change('breathing', 3)], { margin: 0.09 });
  const hardly = way([pulley('82 mm'), change('fuel', 1, 'E10')], { likely: 0.81 });
  expect(withoutWorse([needless, plain, likelier, easier, hardly])).toEqual([plain, likelier, easier]);
});

test('more margin than enough is no reason to change more, and two alike do not put each other out', () => {
  const plain = way([change('supercharger', 4)], { margin: 0.1 });
  const slower = way([change('supercharger', 4), pulley('116 mm')], { margin: 0.3, likely: 0.6 });
  const [one, other] = [way([pulley('78 mm')], { margin: 0.03 }), way([pulley('80 mm')], { likely: 0.6 })];
  expect(withoutWorse([plain, slower, one, other])).toEqual([plain, one, other]);
});

test('cheapest first, then the likelier; those that reach before those that come near, and of these only the near', () => {
  const dear = way([change('cooler', 3)]);
  const cheap = way([pulley('80 mm')], { likely: 0.6 });
  const surer = way([change('fuel', 1)], { likely: 0.9 });
  const near = way([change('breathing', 2)], { reaches: false, likely: 0.97 });
  const far = way([change('speedLimit', 0)], { reaches: false, likely: 0.7 });
  expect(chosenOf([far, near, dear, cheap, surer], 12)).toEqual([surer, cheap, dear, near]);
  expect(chosenOf([far, near], 12)).toEqual([far, near]);
});

test('a ladder of few rungs is not one idea over and over', () => {
  const pulleys = [0.5, 0.6, 0.7, 0.8].map((likely, place) =>
    way([pulley(`${80 - place} mm`)], { likely, margin: 0.09 - 0.02 * place }),
  );
  const others = [way([change('cooler', 3)]), way([change('breathing', 4)])];
  const shown = chosenOf([...pulleys, ...others], 4);
  expect(shown.filter(({ changes }) => changes[0]!.part === 'pulley')).toHaveLength(2);
  expect(shown).toEqual(expect.arrayContaining(others));
});
