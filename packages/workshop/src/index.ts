export { type Book, BookTrouble, openBook } from '@pullbook/store';
export { amendPull } from './amend-pull.ts';
export { type BookReport, bookReport } from './book-report.ts';
export { combinationPageOf } from './combination-page.ts';
export {
  addCombinationFromText,
  amendCombination,
  type CombinationRow,
  changesBetween,
  combinationRows,
  type NewCombination,
} from './combinations.ts';
export { comparePulls, type PullsToCompare } from './compare-pulls.ts';
export { correctionByName } from './correction-by-name.ts';
export { makeDemoBook } from './demo-book.ts';
export { type AirReport, airReport } from './edge/air-report.ts';
export type { CompareReport } from './edge/compare-report.ts';
export type { ReadFileReport } from './edge/file-report.ts';
export { type PullDetails, type PullDetailsText, pullDetailsFromText } from './edge/pull-details.ts';
export type { PullFigures } from './edge/pull-figures.ts';
export type { PullListing } from './edge/pull-listing.ts';
export { type EdgeRemark, edgeRemarks, shownRemarks } from './edge/remark.ts';
export { type WeatherText, weatherFromText } from './edge/weather-text.ts';
export { editTrial, type PullEdit, type TrialEdit } from './edit-trial.ts';
export { type ExportReport, exportBook, exportFiles } from './export-book.ts';
export { findOne, shortId } from './find-one.ts';
export { type FileToImport, type ImportReport, importFile, previewImport } from './import-file.ts';
export { type BookListing, listBook } from './list-book.ts';
export { addPackage } from './packages.ts';
export { fontFolder, programVersion, webBuildFolder } from './places.ts';
export { pullPageOf, pullRows } from './pull-pages.ts';
export { readFileForImport } from './read-file.ts';
export { type RestoreReport, restoreBook } from './restore-book.ts';
export { type ShownThing, type ShowOptions, showThing } from './show-thing.ts';
export { type NewTrial, startTrial } from './start-trial.ts';
export { type Still, type StillRequest, stillOf } from './still.ts';
export { addSummaryPull, type SummaryText } from './summary-pull.ts';
export type { Looking } from './trial-answer.ts';
export { trialCards, trialPageOf } from './trial-pages.ts';
export { zipOf } from './zip.ts';
