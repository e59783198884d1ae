import type { Explanation } from './model.ts';
import { STORIES } from './stories.ts';

const BY_LINE = new Set(STORIES.filter((one) => one.boostFollowsLine === true).map(({ id }) => id));

/** Whether one of the reasons told would read otherwise if it were known how the supercharger's speed line runs. */
export const restsOnSpeedLine = ({ likeliest, notExcluded }: Explanation): boolean =>
  [...(likeliest === null ? [] : [likeliest]), ...notExcluded].some(({ id }) => BY_LINE.has(id));
