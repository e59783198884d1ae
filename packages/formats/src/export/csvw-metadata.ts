import { safeText } from './safe-text.ts';

/** A column of a CSV, as its metadata says it. */
export interface CsvwColumn {
  name: string;
  /** As it stands in the first row. */
  header: string;
  datatype: 'double' | 'dateTime' | 'string';
  /** '' where there is none. */
  unit: string;
  /** Name in the QUDT vocabulary of units; `null`: none that fits. */
  qudt: string | null;
}

/**
 * What the W3C's "CSV on the Web" (Metadata Vocabulary for Tabular Data, 17 December 2015) asks for beside a CSV: where it is,
 * how it is written, and each column with its type and unit. `url`: the CSV's name, seen from the metadata.
 */
export const csvwMetadata = (url: string, title: string, columns: readonly CsvwColumn[]): object => ({
  '@context': ['http://www.w3.org/ns/csvw', { '@language': 'en' }],
  url,
  'dc:title': title,
  dialect: { delimiter: ',', header: true, encoding: 'utf-8', lineTerminators: ['\n'] },
  tableSchema: { columns: columns.map(columnMetadata) },
});

const columnMetadata = ({ name, header, datatype, unit, qudt }: CsvwColumn): object => ({
  name,
  titles: safeText(header),
  datatype,
  null: '',
  ...(unit === '' ? {} : { 'schema:unitText': unit }),
  ...(qudt === null
    ? {}
    : { 'http://qudt.org/schema/qudt/unit': { '@id': `http://qudt.org/vocab/unit/${qudt}` } }),
});
