import type { QuantityKind } from '../quantity/index.ts';
import { entryPattern } from './entry-pattern.ts';
import { exampleEntry, FIELDS, type SheetEntry, type SheetField } from './fields.ts';
import { ORIGINS } from './origins.ts';
import { SECTIONS } from './sections.ts';
import type { TableShape } from './table-shapes.ts';

/** A JSON Schema, or a part of one. */
export type JsonSchema = { [keyword: string]: unknown };

/**
 * The plain form of a combination sheet as a JSON Schema, draft 2020-12, made from the table of fields. Every sheet that
 * Pullbook writes fits it. Reading is stricter in what a schema cannot say (a number that could be two, an impossible value)
 * and more forgiving in names (`Rod length` for `rodLength`).
 */
export function sheetSchema(): JsonSchema {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Combination sheet',
    description:
      'The hardware of an engine as built for a pull. Quantities are text with their unit, "unknown" is a legal value, and an origin may stand beside any value.',
    type: 'object',
    required: ['schemaVersion', 'name'],
    properties: {
      schemaVersion: { const: 1 },
      name: {
        type: ['string', 'number'],
        pattern: '\\S',
        description: 'What the shop calls this combination.',
      },
      ...Object.fromEntries(SECTIONS.map(({ id, title }) => [id, sectionSchema(id, title)])),
    },
    additionalProperties: false,
    $defs: {
      origin: { enum: ORIGINS },
      ...Object.fromEntries(
        usedKinds().flatMap((kinds) => [
          [nameOf(kinds), withOrigin({ $ref: `#/$defs/${nameOf(kinds)}Alone` })],
          [`${nameOf(kinds)}Alone`, valueSchema(kinds)],
        ]),
      ),
    },
  };
}

function sectionSchema(section: string, title: string): JsonSchema {
  const own = FIELDS.filter((field) => field.section === section);
  return {
    title,
    type: ['object', 'null'],
    properties: Object.fromEntries(own.map((field) => [field.field, fieldSchema(field)])),
    additionalProperties: { $ref: '#/$defs/text', description: 'A line of its own, kept as text.' },
  };
}

function fieldSchema(field: SheetField): JsonSchema {
  const { label, kinds, table, understood } = field;
  const described = {
    title: label,
    ...(understood.length > 0 ? { description: `Understood: ${understood.join(', ')}.` } : {}),
    examples: [exampleEntry(field)],
  };
  if (table === null) return { ...described, $ref: `#/$defs/${nameOf(kinds)}` };
  const { anyOf } = withOrigin({ enum: ['unknown', '', null] });
  return { ...described, anyOf: [tableSchema(table), ...anyOf] };
}

function tableSchema({ details, columns, example }: TableShape): JsonSchema {
  const [first, second] = columns;
  return {
    type: 'object',
    required: [...details.filter(({ needed }) => needed).map(({ field }) => field), 'points'],
    properties: {
      origin: { $ref: '#/$defs/origin' },
      ...Object.fromEntries(details.map((detail) => [detail.field, detailSchema(detail)])),
      points: {
        type: 'string',
        pattern: '^[^\\n]*\\S[^\\n]*\\n(?:[^\\n]*\\n)*[^\\n]*[0-9]',
        description: `A heading that names ${first.word} and ${second.word} with their units, then one point a line, ${first.word} rising.`,
        examples: [example],
      },
    },
    additionalProperties: false,
  };
}

function detailSchema({ label, kinds, example }: SheetEntry): JsonSchema {
  return { title: label, $ref: `#/$defs/${nameOf(kinds)}Alone`, examples: [example] };
}

function usedKinds(): SheetEntry['kinds'][] {
  const entries: SheetEntry[] = FIELDS.flatMap((field) => [field, ...(field.table?.details ?? [])]);
  const kinds = entries.map((entry) => entry.kinds).filter(([kind]) => kind !== 'table');
  return kinds.filter((one, index) => kinds.findIndex((other) => nameOf(other) === nameOf(one)) === index);
}

/** `massFlowOrVolumeFlow` */
const nameOf = (kinds: SheetEntry['kinds']): string =>
  kinds.map((kind, index) => (index === 0 ? kind : `Or${kind[0]!.toUpperCase()}${kind.slice(1)}`)).join('');

/** A bare number is enough where the kind has no unit. */
function valueSchema(kinds: SheetEntry['kinds']): JsonSchema {
  const [kind] = kinds;
  if (kind === 'text') return { type: ['string', 'number', 'boolean', 'null'] };
  const bare = kind === 'count' ? ['integer'] : kind === 'ratio' ? ['number'] : [];
  return {
    type: ['string', ...bare, 'null'],
    pattern: entryPattern(kinds as readonly (QuantityKind | 'count')[]),
  };
}

/** The value alone, or with its origin beside it. */
function withOrigin(value: JsonSchema): { anyOf: JsonSchema[] } {
  return {
    anyOf: [
      value,
      {
        type: 'object',
        required: ['value'],
        properties: { value, origin: { $ref: '#/$defs/origin' } },
        additionalProperties: false,
      },
    ],
  };
}
