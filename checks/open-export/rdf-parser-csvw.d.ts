/** The few functions of the two packages that the check calls; they ship no types. */
declare module '@rdfjs/data-model' {
  interface Term {
    value: string;
    equals(other: Term | null | undefined): boolean;
  }
  interface Literal extends Term {
    datatype: Term;
  }
  const factory: {
    blankNode(): Term;
    namedNode(address: string): Term;
    literal(value: string): Literal;
  };
  export default factory;
}

declare module 'rdf-parser-csvw' {
  import type { Readable } from 'node:stream';

  interface Term {
    value: string;
    datatype: { value: string };
  }
  export default class CsvwParser {
    constructor(options: { metadata: unknown; baseIRI: string });
    import(input: Readable): AsyncIterable<{ subject: Term; predicate: Term; object: Term }>;
  }
}
