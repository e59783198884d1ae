import { PUBLICATION_KINDS } from '@pullbook/core/publication';
import { PICTURES } from '@pullbook/views/publish';
import { SIZE_NAMES } from '@pullbook/workshop';
import { z } from 'zod';
import { lookingQuery } from './bodies.ts';

const text = z.string().max(2000);
const words = z.array(z.string().max(100)).max(100);
const sizes = z.enum(SIZE_NAMES);
const theme = z.enum(['light', 'dark']);
const paper = z.enum(['a4', 'letter']);
/** A query has texts; a body may have the thing itself. */
const yes = z
  .union([z.boolean(), z.enum(['true', 'false']).transform((said) => said === 'true')])
  .default(false);

export const publishPageQuery = lookingQuery;

/** Of one picture, to look at. */
export const stillQuery = lookingQuery.extend({
  picture: z.enum(PICTURES).optional(),
  key: z.string().max(10).optional(),
  format: z.enum(['svg', 'png', 'pdf']).default('svg'),
  size: sizes.default('1080p'),
  theme: theme.default('light'),
  ground: z.enum(['true', 'false']).default('true'),
  /** Although it holds what is not for everyone. */
  privateToo: yes,
  download: z.string().optional(),
});

export const clipQuery = lookingQuery.extend({ privateToo: yes });

export const reportQuery = lookingQuery.extend({
  format: z.enum(['html', 'pdf']).default('html'),
  paper: paper.optional(),
  privateToo: yes,
  download: z.string().optional(),
});

/** What is to be made. What goes with what is the workshop's to say, in words a person can act on. */
export const publishWanted = lookingQuery
  .extend({
    kinds: words.optional(),
    formats: words.optional(),
    pictures: words.optional(),
    sizes: words.optional(),
    theme: theme.optional(),
    transparent: z.boolean().optional(),
    fps: z.number().optional(),
    speed: z.number().optional(),
    seconds: z.number().optional(),
    paper: z.string().max(20).optional(),
    privateToo: yes,
    draft: z.boolean().optional(),
  })
  .strict();

/** What a page made itself. */
export const publicationToNote = lookingQuery
  .extend({
    files: z
      .array(
        z.strictObject({
          name: text.min(1),
          kind: z.enum(PUBLICATION_KINDS),
          bytes: z.int().nonnegative(),
          sha256: z.string().regex(/^[0-9a-f]{64}$/u, 'a SHA-256 is 64 signs of 0 to 9 and a to f'),
        }),
      )
      .min(1)
      .max(500),
    privateToo: yes,
  })
  .strict();

export const publicationsQuery = z.object({
  units: z.enum(['us', 'si']).default('us'),
  decimal: z.enum(['.', ',']).default('.'),
  trial: text.optional(),
});

export const linksWanted = z.strictObject({
  links: z.array(z.strictObject({ where: text, day: text.nullish(), note: text.optional() })).max(200),
  stamp: text.optional(),
});
