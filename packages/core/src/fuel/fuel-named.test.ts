import { describe, expect, test } from 'vitest';
import { blendOf } from './blend.ts';
import { fuelNamed } from './fuel-named.ts';
import { NAMED_FUELS } from './named-fuels.ts';

const named = (text: string) => {
  const read = fuelNamed(text);
  if (!read.ok) throw new Error(read.remarks[0]!.message);
  return read.value;
};
const shareOf = (text: string, substance: string) =>
  named(text).parts.find((part) => part.substance === substance)?.volumeShare ?? 0;

test('every named fuel is found by its name and its other words, in any capitals and spacing', () => {
  for (const { fuel, spellings } of NAMED_FUELS)
    for (const word of [fuel.name, ...spellings])
      for (const written of [word, word.toUpperCase(), word.replaceAll(' ', '-')])
        expect(named(written).name, written).toBe(fuel.name);
});

test.each([
  ['E30', 'ethanol', 0.3],
  ['m50', 'methanol', 0.5],
  ['70 % ethanol, 30 % gasoline', 'ethanol', 0.7],
  ['70% ethanol', 'gasoline', 0.3],
  ['30 % methanol in gasoline', 'gasoline', 0.7],
  ['30 % methanol in ethanol', 'ethanol', 0.7],
  ['20 % gasoline in ethanol by volume', 'ethanol', 0.8],
  ['50 % ethanol and 50 % petrol', 'gasoline', 0.5],
  ['50 % methanol, 50 % toluene', 'toluene', 0.5],
  ['12,5 percent ethanol', 'ethanol', 0.125],
  ['33.3 % ethanol, 33.3 % methanol, 33.3 % gasoline', 'gasoline', 1 / 3],
])('%s has %s at %f', (text, substance, share) => {
  expect(shareOf(text, substance)).toBeCloseTo(share, 9);
});

test('a gasoline by its octane, either way it is told', () => {
  expect(named('gasoline 102 RON').researchOctane).toBe(102);
  expect(named('93 AKI')).toMatchObject({ researchOctane: 98, motorOctane: 88 });
  expect(named('93 (R+M)/2').researchOctane).toBe(98);
});

test('E85 is the label’s, and says that the pump’s is another', () => {
  const read = fuelNamed('e85');
  expect(read.ok && read.value.name).toBe('E85 as labelled');
  expect(read.remarks.map(({ message }) => message).join()).toContain('51 to 83 %');
});

describe('refused with what to do', () => {
  test.each([
    ['ethanl', 'Did you mean ethanol?'],
    ['wine', 'Known are gasoline'],
    ['', 'is not a fuel that is known'],
    ['E120', '100 % at most'],
    ['70 % ethanol, 40 % gasoline', '110 % of a fuel'],
    ['60 % ethanol, 30 % gasoline', 'add up to 90 %'],
    ['50 % wine', '"wine" is not a fuel'],
    ['50 % ethanol in wine', '"wine" is not a fuel'],
    ['120 % methanol in ethanol', '100 % at most'],
    ['gasoline 300 RON', '60 to 130'],
  ])('"%s": %s', (text, words) => {
    const read = fuelNamed(text);
    expect(read.ok).toBe(false);
    expect(read.remarks[0]!.message).toContain(words);
  });
});

test('shares that are no whole are a fault of the program', () => {
  expect(() => blendOf([{ substance: 'ethanol', volumeShare: 0.5 }])).toThrow('add up to 0.5');
});
