import { usableTime } from './lag.ts';
import type { ChannelMeaning, Pull, Recipe, Treatment } from './model.ts';

/** A pull read as it comes: no lags, window found, bins adapted, inertia left as it is. */
export const PLAIN_TREATMENT: Treatment = Object.freeze({
  lags: Object.freeze({}),
  windowRpm: null,
  binWidthRpm: null,
  addInertia: false,
});

/** Channels a lag says nothing of: the clock the lags are told by, and what nobody understands. */
const WITHOUT_LAG: readonly ChannelMeaning[] = ['time', 'other'];

/** Whether a channel of that meaning can be late. */
export const canBeLate = (meaning: ChannelMeaning): boolean => !WITHOUT_LAG.includes(meaning);

/**
 * The recipe a pull is viewed by. One rule, field by field: what the recipe asks for wins; where it is as `defaultRecipe`
 * makes it, the pull's own treatment stands. Lags are joined, meaning by meaning.
 *
 * @example recipeFor({ treatment: { ...PLAIN_TREATMENT, binWidthRpm: 200 } }, defaultRecipe()).binWidthRpm // 200
 */
export function recipeFor({ treatment }: Pick<Pull, 'treatment'>, recipe: Recipe): Recipe {
  return {
    correction: recipe.correction,
    binWidthRpm: recipe.binWidthRpm === 'adapted' ? (treatment.binWidthRpm ?? 'adapted') : recipe.binWidthRpm,
    lags: { ...treatment.lags, ...recipe.lags },
    windowRpm: recipe.windowRpm ?? treatment.windowRpm,
    addInertia: recipe.addInertia || treatment.addInertia,
  };
}

/** Lags that move a channel of this pull, s. None without a time that can be relied on. */
export function lagsInForce(
  pull: Pick<Pull, 'channels'>,
  recipe: Pick<Recipe, 'lags'>,
): [ChannelMeaning, number][] {
  const meanings = new Set(pull.channels.map(({ meaning }) => meaning));
  if (usableTime(pull.channels.find(({ meaning }) => meaning === 'time')?.values) === null) return [];
  return askedLags(recipe).filter(([meaning]) => meanings.has(meaning));
}

/** Lags asked for that are not nothing, s, by meaning in the order of the alphabet. */
export function askedLags({ lags }: Pick<Recipe, 'lags'>): [ChannelMeaning, number][] {
  return (Object.entries(lags) as [ChannelMeaning, number][])
    .filter(([meaning, lag]) => lag !== 0 && canBeLate(meaning))
    .sort(([one], [other]) => one.localeCompare(other, 'en'));
}
