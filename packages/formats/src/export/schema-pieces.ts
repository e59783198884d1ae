/** Pieces of JSON Schema in short, for the schema of the export. */
export type Schema = object | boolean;

/** An object with just these keys, all of them there. */
export function object(properties: Record<string, Schema>): object {
  return objectWith(properties, {});
}

/** An object with just these keys, of which only the first must be there. */
export function objectWith(needed: Record<string, Schema>, optional: Record<string, Schema>): object {
  return {
    type: 'object',
    properties: { ...needed, ...optional },
    required: Object.keys(needed),
    additionalProperties: false,
  };
}

/** An object of texts, none of which must be there. */
export function words(...keys: string[]): object {
  const properties = Object.fromEntries(keys.map((key) => [key, TEXT]));
  return { type: 'object', properties, additionalProperties: false };
}

export function list(items: Schema): object {
  return { type: 'array', items };
}

export function oneOf(...values: string[]): object {
  return { enum: values };
}

export function orNull(schema: object): object {
  return { anyOf: [schema, { type: 'null' }] };
}

export const TEXT = { type: 'string' };
export const TRUTH = { type: 'boolean' };
export const NUMBER = { type: 'number' };
export const COUNT = { type: 'integer', minimum: 0 };
export const HASH = { type: 'string', minLength: 1 };
export const MAYBE_TEXT = orNull(TEXT);
export const MAYBE_NUMBER = orNull(NUMBER);
