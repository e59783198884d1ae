/**
 * Text of the README that stands in every export, for whoever finds the folder years later. `question`: of the one trial that
 * it holds; `null`: it is of the whole book.
 */
export function exportReadme(bookName: string, question: string | null = null): string {
  const [title, held] =
    question === null
      ? [`Open export of the book "${bookName}"`, 'everything the book has']
      : [`A trial of the book "${bookName}": ${question}`, 'one trial with all that it rests on'];
  return `${title}

This folder holds ${held}, in open formats that need no particular program.

book.json
    Engines, combinations (the hardware as built), packages, compressor maps, set-ups, sessions,
    pulls, trials, predictions, publications, enquiries, the list of original files and the log. JSON, UTF-8. The unit is last in a key that holds a
    bare number: pressurePa, momentOfInertiaKgM2. null means unknown. A value on a combination's
    sheet has its text as entered and, beside it, value in unit. "before" and "after" in the log
    are as the book holds them: SI, engine speed in r/min.

pulls/<id>.csv
    The channels of one pull as they were read: not corrected, not gridded, not smoothed. SI
    units, engine speed in r/min; the unit stands in the header's brackets. Comma, decimal point,
    UTF-8. An empty field is a missing reading. Gauge pressures are above ambient. A header that
    would begin like a formula has a quote sign (') in front.

pulls/<id>.csv-metadata.json
    What each column of the CSV is, by the W3C's "CSV on the Web" (Metadata Vocabulary for
    Tabular Data). Units by schema.org's unitText and the QUDT vocabulary.

originals/<hash>-<name>
    The bytes of each file that was imported, unaltered. <hash> is their SHA-256 in hex;
    "sha256sum originals/*" checks them.

${question === null ? 'To read it back: pullbook restore <this folder> --book <new book folder>' : 'To take it into a book: pullbook open <the ZIP file> --book <book folder>'}
`;
}
