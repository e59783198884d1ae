import { type JsonSchema, readSheet, sheetSchema } from '@pullbook/core/combination';
import { withSheetLine } from '../combination/combination-text.ts';
import type { Written } from '../yaml/read-written.ts';
import { isRecord } from './group-shape.ts';
import type { WrittenCombination } from './model.ts';
import { inWords, refuse, type Shape } from './shape.ts';

/** A sheet's sections here, a sheet in a file beside this one, or a combination of the book. */
export function combination(written: Written, matchName: string): Shape<WrittenCombination> {
  return {
    get schema() {
      return combinationSchema();
    },
    read: (value, path, reading) => {
      if (typeof value === 'string' && value.trim() !== '') return elsewhere(value.trim());
      if (!isRecord(value))
        return refuse(
          reading,
          path,
          'match-combination',
          `${inWords(value)} stands where a combination is due: sections of a sheet such as supercharger and drive, a file such as six.yaml, or a name in the book.`,
        );
      const { name = matchName, schemaVersion = 1 } = value;
      const read = readSheet({ ...value, name, schemaVersion });
      reading.remarks.push(...read.remarks.map((one) => withSheetLine(one, written, path.map(String))));
      return read.ok ? { from: 'sheet', sheet: read.value } : undefined;
    },
  };
}

const elsewhere = (text: string): WrittenCombination =>
  /\.(ya?ml|json)$/i.test(text) ? { from: 'file', path: text } : { from: 'book', name: text };

/** Sections as those of a sheet of its own, whose name and version are this file's. */
function combinationSchema(): JsonSchema {
  const { properties, title } = sheetSchema() as { properties: JsonSchema; title: string };
  return {
    anyOf: [
      {
        type: 'string',
        description:
          'A sheet in a file beside this one (six.yaml), or a combination of the book by its id or name.',
      },
      { type: 'object', title, properties, additionalProperties: false },
    ],
  };
}
