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
export { type OneTrial, ofTrial } from './export/of-trial.ts';
export { pullToCsv } from './export/pull-to-csv.ts';
export { type OpenExport, openExport, type ReadExportFile } from './export/read-export.ts';
export { type LeftOut, type Reader, seenBy } from './export/seen-by.ts';
export { exportFiles } from './export/write-export.ts';
export { type ConfirmedLayout, confirmedLayout } from './layout/confirmed-layout.ts';
export { layoutConflicts } from './layout/layout-conflicts.ts';
export { layoutFingerprint } from './layout/layout-fingerprint.ts';
export { rememberedMapping } from './layout/remembered-mapping.ts';
export { mapToCsv } from './map/map-to-csv.ts';
export { readMapText } from './map/read-map.ts';
export { matchSchema } from './match/match-schema.ts';
export type * from './match/model.ts';
export { readMatchText } from './match/read-match.ts';
export * from './model.ts';
export { type PlainParts, partsToPlain, partsToYaml } from './parts/parts-to-plain.ts';
export { readPartsText, readPlainParts } from './parts/read-parts.ts';
export { guessedMapping } from './pulls/guessed-mapping.ts';
export { pullsFromReading } from './pulls/pulls-from-reading.ts';
export { readTextFile } from './read-text-file.ts';
export type { OutCell, OutColumn, OutTable } from './table-out/model.ts';
export { tablesToCsv } from './table-out/tables-to-csv.ts';
export { type TablesJson, tablesToJson } from './table-out/tables-to-json.ts';
export { type TablesAsked, trialTables } from './table-out/trial-tables.ts';
export { workbookOf } from './table-out/workbook.ts';
export { editDistance } from './text/edit-distance.ts';
export { TextTableReader } from './text-table-reader.ts';
