/**
 * Writes `docs/book.schema.json` from the one place where the shape of an export's `book.json` stands:
 *
 *   npx tsx tools/write-book-schema.ts
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { bookSchema } from '@pullbook/formats';

const target = join(import.meta.dirname, '..', 'docs', 'book.schema.json');
writeFileSync(target, `${JSON.stringify(bookSchema(), null, 2)}\n`);
console.log(`Wrote ${target}`);
