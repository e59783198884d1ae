import { type JsonSchema, sheetSchema } from '@pullbook/core/combination';
import { matchFileShape } from './file-shape.ts';

/**
 * A match file as a JSON Schema, draft 2020-12, made of the very shapes by which it is read. `docs/match.schema.json` is
 * this, written out by `npx tsx tools/write-match-schema.ts`. Reading is stricter in what a schema cannot say (what may not stand
 * beside one another, an impossible value) and more forgiving in names (`blower pulley diameter`).
 */
export function matchSchema(): JsonSchema {
  const nowhere = { plain: null, placeOf: () => null, blockLine: () => null };
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Match file',
    ...matchFileShape(nowhere, '').schema,
    $defs: sheetSchema().$defs,
  };
}
