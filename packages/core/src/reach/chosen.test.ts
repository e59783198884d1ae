import { expect, test } from 'vitest';
import { said } from '../remark/index.ts';
import { chosenOf, costOf, type Way, withoutWorse } from './chosen.ts';
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
  cost: costOf(changes),
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

test('no several small things cost more than a dear one, and the word for cost never falls along a ladder', () => {
  const small = way([pulley('80 mm'), change('injectors', 2), change('pump', 2), change('belt', 1)]);
  const dear = way([change('cooler', 3)]);
  expect(chosenOf([dear, small], 12)).toEqual([small, dear]);
  expect(costOf([]).highest).toBe(0);
  expect(costOf([change('speedLimit', 0)])).toEqual({ total: 0, highest: 0 });
});

test('an engine that is stopped earlier stands behind one that is not, of the same cost', () => {
  const stopped = way([pulley('78 mm'), change('speedLimit', 0)], { likely: 0.95 });
  const plain = way([pulley('80 mm')], { likely: 0.8 });
  expect(chosenOf([stopped, plain], 12)).toEqual([plain, stopped]);
});

test('another gasoline does not stand for an alcohol: of these the cheapest comes first', () => {
  const fuel = (name: string, cost: CostClass): ReachChange => ({
    ...change('fuel', cost, name),
    edits: [{ section: 'fuel', field: 'name', text: name }],
  });
  const [racing, e85, methanol] = [
    way([fuel('racing gasoline', 2)]),
    way([fuel('E85 as labelled', 1), change('injectors', 2), change('pump', 2)]),
    way([fuel('methanol', 3), change('injectors', 2), change('pump', 2)], { likely: 0.95 }),
  ];
  const others = (['cooler', 'breathing', 'stepUp', 'supercharger'] as const).map((part) =>
    way([change(part, 4)]),
  );
  const shown = chosenOf([methanol, racing, e85, ...others], 6);
  expect(shown.slice(0, 2)).toEqual([racing, e85]);
  expect(shown).not.toContain(methanol);
});

test('among the first six each is another idea; further ones of an idea stand behind, or fill a ladder of few', () => {
  const ideas = (['cooler', 'breathing', 'supercharger', 'stepUp'] as const).map((part, place) =>
    way([change(part, 3)], { likely: 0.9 - 0.1 * place }),
  );
  const fuels = ['E85 as labelled', 'E85 usual 70 %', 'methanol'].map((name, place) =>
    way([change('fuel', place === 2 ? 4 : 1, name)], { likely: 0.9 - 0.1 * place }),
  );
  const both = way([change('fuel', 1, 'E85'), change('cooler', 3)], { likely: 0.99 });
  const shown = chosenOf([...ideas, ...fuels, both], 12);
  expect(new Set(shown)).toEqual(new Set([fuels[0], ...ideas, both, fuels[2]]));
  expect(shown).not.toContain(fuels[1]);
  expect(chosenOf(fuels, 12)).toEqual(fuels);
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
