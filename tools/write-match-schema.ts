/**
 * Writes `docs/match.schema.json` from the shapes by which a match file is read:
 *
 *   npx tsx tools/write-match-schema.ts
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { matchSchema } from '@pullbook/formats';

const target = join(import.meta.dirname, '..', 'docs', 'match.schema.json');
writeFileSync(target, `${JSON.stringify(matchSchema(), null, 2)}\n`);
console.log(`Wrote ${target}`);
