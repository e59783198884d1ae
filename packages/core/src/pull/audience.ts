import type { Audience } from './model.ts';

/** Nothing is held back: what stands where nobody said otherwise. */
export const OPEN_AUDIENCE: Audience = Object.freeze({ who: 'everyone', notBefore: null });

/** As it stands on a day (ISO 8601): an embargo whose date has come is none any more. */
export function audienceOn(audience: Audience, day: string): Audience {
  return audience.notBefore !== null && audience.notBefore <= day
    ? { ...audience, notBefore: null }
    : audience;
}

/** Whether a thing may be shown to everyone. Past embargoes are to be taken out first (`audienceOn`). */
export const isOpen = ({ who, notBefore }: Audience): boolean => who === 'everyone' && notBefore === null;
