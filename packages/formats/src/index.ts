export { combinationToJson, combinationToYaml, readCombinationText } from './combination/combination-text.ts';
export { readBookFiles, writeBookFiles } from './export/book-files.ts';
export { type EdgeTreatment, edgeFromTreatment } from './export/edge-book.ts';
export type { ExportedBook, ExportFile, Originals } from './export/exported-book.ts';
export { pullToCsv } from './export/pull-to-csv.ts';
export * from './model.ts';
export { guessedMapping } from './pulls/guessed-mapping.ts';
export { pullsFromReading } from './pulls/pulls-from-reading.ts';
export { readTextFile } from './read-text-file.ts';
