export {
  combinationToJson,
  combinationToYaml,
  plainToYaml,
  readCombinationText,
  readPlainText,
} from './combination/combination-text.ts';
export { bookSchema } from './export/book-schema.ts';
export { type EdgeTreatment, edgeFromTreatment } from './export/edge-book.ts';
export type { ExportedBook, ExportedHead, ExportFile, ExportSource } from './export/exported-book.ts';
export { pullToCsv } from './export/pull-to-csv.ts';
export { type OpenExport, openExport, type ReadExportFile } from './export/read-export.ts';
export { type LeftOut, type Reader, seenBy } from './export/seen-by.ts';
export { exportFiles } from './export/write-export.ts';
export { type ConfirmedLayout, confirmedLayout } from './layout/confirmed-layout.ts';
export { layoutConflicts } from './layout/layout-conflicts.ts';
export { layoutFingerprint } from './layout/layout-fingerprint.ts';
export { rememberedMapping } from './layout/remembered-mapping.ts';
export * from './model.ts';
export { guessedMapping } from './pulls/guessed-mapping.ts';
export { pullsFromReading } from './pulls/pulls-from-reading.ts';
export { readTextFile } from './read-text-file.ts';
export { TextTableReader } from './text-table-reader.ts';
