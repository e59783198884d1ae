import { writeSaid } from '@pullbook/core/quantity';
import type { Badge } from '@pullbook/core/trial';
import { dayText } from './date.ts';
import type { ShownBadge, ViewOptions } from './model.ts';

/** Badges with their figures in the units shown and their days as people write them. */
export const shownBadges = (badges: readonly Badge[], options: ViewOptions): ShownBadge[] =>
  badges.map(({ id, label, earned, why, parts }) => ({
    id,
    label,
    earned,
    why: writeSaid(why, parts, options).replace(/\d{4}-\d{2}-\d{2}/gu, dayText),
  }));
