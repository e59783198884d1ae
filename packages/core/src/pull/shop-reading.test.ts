import { expect, test } from 'vitest';
import { inventedPull, inventedSweep, inventedTorque } from './invented-pull.testing.ts';
import { defaultRecipe } from './recipe.ts';
import { SILENT_SHOP } from './shop-reading.ts';
import { PLAIN_TREATMENT } from './treatment.ts';
import { viewPull } from './view-pull.ts';

const { channels } = inventedSweep({ torqueAt: inventedTorque });
const pull = inventedPull(channels);
const shop = { ...SILENT_SHOP, binWidthRpm: 200 };
const widthOf = (view: ReturnType<typeof viewPull>) => view.curve?.binWidthRpm;
const names = (view: ReturnType<typeof viewPull>) =>
  view.remarks.filter(({ code }) => code.startsWith('bin-width')).map(({ code }) => code);

test('a width: what is asked for, then the pull’s own, then the shop’s, then the sampling’s; each named', () => {
  const adapted = viewPull(pull, defaultRecipe());
  expect(widthOf(adapted)).not.toBe(200);
  expect(names(adapted)).toEqual([]);
  const byShop = viewPull(pull, defaultRecipe(), shop);
  expect(widthOf(byShop)).toBe(200);
  expect(names(byShop)).toEqual(['bin-width-of-shop']);
  const treated = { ...pull, treatment: { ...PLAIN_TREATMENT, binWidthRpm: 100 } };
  expect(widthOf(viewPull(treated, defaultRecipe(), shop))).toBe(100);
  expect(names(viewPull(treated, defaultRecipe(), shop))).toEqual(['bin-width-set']);
  expect(widthOf(viewPull(treated, { ...defaultRecipe(), binWidthRpm: 250 }, shop))).toBe(250);
});
