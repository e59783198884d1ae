import { first } from './0001-first.ts';
import { treatment } from './0002-treatment.ts';
import { wholeBook } from './0003-whole-book.ts';
import { verdict } from './0004-verdict.ts';
import { match } from './0005-match.ts';
import { publication } from './0006-publication.ts';
import { enquiry } from './0007-enquiry.ts';

/** Every migration in order; the schema's version is the number of those that have run. None is ever edited. */
export const MIGRATIONS: readonly string[] = [
  first,
  treatment,
  wholeBook,
  verdict,
  match,
  publication,
  enquiry,
];
