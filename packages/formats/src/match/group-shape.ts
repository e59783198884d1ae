import { editDistance } from '../text/edit-distance.ts';
import { plainKey } from '../yaml/read-written.ts';
import { inWords, isUnknown, type Read, refuse, type Shape } from './shape.ts';

type Fields = Record<string, Shape<unknown>>;

/** What a group of these fields reads: what was not given is left out. */
export type ReadGroup<F extends Fields> = { [Field in keyof F]?: Read<F[Field]> };

/**
 * A group of named fields. A name that is not known is refused and the nearest known one named: a model input that is
 * misspelt and passed over would be a wrong answer.
 */
export function group<F extends Fields>(
  fields: F,
  { about, needed = [] }: { about: string; needed?: readonly (keyof F & string)[] },
): Shape<ReadGroup<F>> {
  const names = Object.keys(fields);
  return {
    get schema() {
      return {
        type: 'object',
        description: about,
        properties: Object.fromEntries(names.map((name) => [name, fields[name]!.schema])),
        ...(needed.length > 0 ? { required: needed } : {}),
        additionalProperties: false,
      };
    },
    read: (value, path, reading) => {
      if (isUnknown(value)) return undefined;
      if (!isRecord(value))
        return refuse(
          reading,
          path,
          'match-group',
          `${inWords(value)} stands where fields are due: ${names.join(', ')}.`,
        );
      const read: Record<string, unknown> = {};
      for (const [written, content] of Object.entries(value)) {
        const name = names.find((one) => plainKey(one) === plainKey(written));
        if (name === undefined) {
          refuse(
            reading,
            [...path, written],
            'match-key-not-known',
            `not known here. ${nearest(written, names)}`,
          );
        } else if (Object.hasOwn(read, name)) {
          refuse(reading, [...path, written], 'given-twice', 'given twice. Keep one of the two.');
        } else read[name] = fields[name]!.read(content, [...path, written], reading);
      }
      for (const name of needed) {
        if (Object.hasOwn(read, name)) continue;
        refuse(
          reading,
          [...path, name],
          'match-missing',
          `is missing. ${String(fields[name]!.schema.description ?? '')}`.trim(),
        );
      }
      return Object.fromEntries(Object.entries(read).filter(([, one]) => one !== undefined)) as ReadGroup<F>;
    },
  };
}

/** `Did you mean slip? Known are …` */
function nearest(written: string, names: readonly string[]): string {
  const [best] = names
    .map((name) => ({ name, far: editDistance(plainKey(written), plainKey(name)) }))
    .sort((one, other) => one.far - other.far);
  const isNear = best !== undefined && best.far <= Math.max(2, Math.ceil(best.name.length / 3));
  return `${isNear ? `Did you mean ${best.name}? ` : ''}Known are ${names.join(', ')}.`;
}

export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
