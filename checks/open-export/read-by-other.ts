import { Readable } from 'node:stream';
import rdf from '@rdfjs/data-model';
import CsvwParser from 'rdf-parser-csvw';

/**
 * The export's CSV read by another program: rdf-parser-csvw 1.1.0, an implementation of "Generating RDF from Tabular Data
 * on the Web" that takes the table apart by its metadata. It wants that metadata as RDF, which is made here by the terms
 * of the CSVW context (http://www.w3.org/ns/csvw, terms from memory), so this step is ours; the reading of the CSV, the
 * finding of columns by their titles, what counts as missing and the datatypes are its own.
 */
const CSVW = 'http://www.w3.org/ns/csvw#';
export const XSD = 'http://www.w3.org/2001/XMLSchema#';
const RDF = 'http://www.w3.org/1999/02/22-rdf-syntax-ns#';
const BASE = 'http://example.org/pull.csv';

export interface Metadata {
  dialect: { delimiter: string; lineTerminators: string[] };
  tableSchema: { columns: { name: string; titles: string; datatype: string; null: string }[] };
}

type Term =
  | ReturnType<typeof rdf.blankNode>
  | ReturnType<typeof rdf.namedNode>
  | ReturnType<typeof rdf.literal>;
type Quad = { subject: Term; predicate: Term; object: Term };

interface Dataset extends Iterable<Quad> {
  size: number;
  match: (subject?: Term | null, predicate?: Term | null, object?: Term | null) => Dataset;
}

/** The metadata as RDF: the properties of the table, its dialect, and its columns as a list. */
function asRdf({ dialect, tableSchema }: Metadata): Dataset {
  const quads: Quad[] = [];
  const csvw = (name: string) => rdf.namedNode(CSVW + name);
  const add = (subject: Term, predicate: Term, object: Term) => quads.push({ subject, predicate, object });
  const table = rdf.blankNode();
  const dialectNode = rdf.blankNode();
  add(table, csvw('dialect'), dialectNode);
  add(dialectNode, csvw('delimiter'), rdf.literal(dialect.delimiter));
  for (const one of dialect.lineTerminators) add(dialectNode, csvw('lineTerminators'), rdf.literal(one));
  const schema = rdf.blankNode();
  add(table, csvw('tableSchema'), schema);
  let list: Term = rdf.namedNode(`${RDF}nil`);
  for (const column of tableSchema.columns.toReversed()) {
    const node = rdf.blankNode();
    add(node, csvw('name'), rdf.literal(column.name));
    add(node, csvw('title'), rdf.literal(column.titles));
    add(node, csvw('null'), rdf.literal(column.null));
    add(node, csvw('datatype'), rdf.namedNode(XSD + column.datatype));
    const cell = rdf.blankNode();
    add(cell, rdf.namedNode(`${RDF}first`), node);
    add(cell, rdf.namedNode(`${RDF}rest`), list);
    list = cell;
  }
  add(schema, csvw('column'), list);
  return datasetOf(quads);
}

/** As much of the RDF/JS dataset interface as the other program asks for. */
function datasetOf(quads: readonly Quad[]): Dataset {
  const is = (wanted: Term | null | undefined, term: Term) => !wanted || wanted.equals(term as never);
  return {
    size: quads.length,
    [Symbol.iterator]: () => quads[Symbol.iterator](),
    match: (subject, predicate, object) =>
      datasetOf(
        quads.filter(
          (one) => is(subject, one.subject) && is(predicate, one.predicate) && is(object, one.object),
        ),
      ),
  };
}

/** What the other program reads: for each row its values by the name of the column, with their datatypes. */
export async function readByOther(
  csv: string,
  metadata: Metadata,
): Promise<Map<string, { value: string; type: string }>[]> {
  const parser = new CsvwParser({ metadata: asRdf(metadata), baseIRI: BASE });
  const rows: Map<string, { value: string; type: string }>[] = [];
  const byNode = new Map<string, Map<string, { value: string; type: string }>>();
  for await (const quad of parser.import(Readable.from([csv]))) {
    if (quad.predicate.value === `${CSVW}describes`) {
      const row = byNode.get(quad.object.value) ?? new Map();
      byNode.set(quad.object.value, row);
      rows.push(row);
    }
    if (!quad.predicate.value.startsWith(`${BASE}#`)) continue;
    const row = byNode.get(quad.subject.value) ?? new Map();
    byNode.set(quad.subject.value, row);
    const name = decodeURI(quad.predicate.value.slice(BASE.length + 1));
    row.set(name, { value: quad.object.value, type: quad.object.datatype.value });
  }
  return rows;
}

/** A double as XML Schema 1.1 part 2, 3.3.5 writes it. */
export const doubleOf = (text: string): number =>
  text === 'INF' ? Number.POSITIVE_INFINITY : text === '-INF' ? Number.NEGATIVE_INFINITY : Number(text);
