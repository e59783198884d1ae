export type { RescueReport } from '@pullbook/store';
export { type Book, BookTrouble, damageOf, openBook } from '@pullbook/store';
export type { ShownPublication, ShownRunningOrder } from '@pullbook/views/publish';
export { amendPull } from './amend-pull.ts';
export { type AudienceText, setAudience } from './audience.ts';
export {
  type BackupCheckReport,
  type BackupReport,
  type BackupState,
  backUp,
  backUpIfDue,
  backupState,
  checkBackupFolder,
} from './backup-book.ts';
export { type BookReport, bookReport, clockCaution } from './book-report.ts';
export type { CalibrationRow } from './calibration-log.ts';
export { addCalibration, addInstrument, removeInstrument } from './cell-instruments.ts';
export { addCell, cellReportOf, cellsReport, changeCell } from './cells.ts';
export { type CheckReport, checkThing } from './check.ts';
export { combinationPageOf } from './combination-page.ts';
export {
  addCombinationFromText,
  amendCombination,
  type CombinationRow,
  changesBetween,
  combinationRows,
  type NewCombination,
} from './combinations.ts';
export { comparePulls, type PullsCompared, type PullsToCompare } from './compare-pulls.ts';
export { correctionByName } from './correction-by-name.ts';
export { makeDemoBook } from './demo-book.ts';
export { type AirReport, airReport } from './edge/air-report.ts';
export type { CellReport, CellsReport, InstrumentReport } from './edge/cell-report.ts';
export type { CalibrationText, CellText, InstrumentText } from './edge/cell-text.ts';
export type { CompareReport } from './edge/compare-report.ts';
export {
  type FiguresReport,
  figuresReport,
  type PredictionReport,
  predictionReport,
} from './edge/figures-report.ts';
export type { ReadFileReport } from './edge/file-report.ts';
export { type EdgeFinding, edgeFindings } from './edge/finding.ts';
export { type FuelReport, fuelReport } from './edge/fuel-report.ts';
export type { FuelText } from './edge/fuel-text.ts';
export type { MapReport } from './edge/map-report.ts';
export { matchAirFromText } from './edge/match-air-text.ts';
export { csvOfMatches } from './edge/match-csv.ts';
export type { MatchPoint } from './edge/match-points.ts';
export type { MatchedReport, MatchReport, MatchReportOfOne } from './edge/match-report.ts';
export type { KeptPlan, PlanReport } from './edge/plan-report.ts';
export type { PredictionText } from './edge/prediction-text.ts';
export { type PublishedNumbers, publishedNumbers } from './edge/published-numbers.ts';
export { type PullDetails, type PullDetailsText, pullDetailsFromText } from './edge/pull-details.ts';
export type { PullFigures } from './edge/pull-figures.ts';
export type { PullListing } from './edge/pull-listing.ts';
export {
  csvOfReach,
  type EdgeRung,
  type ReachReport,
  reachReport,
} from './edge/reach-report.ts';
export type { ReachRequest } from './edge/reach-request.ts';
export { type EdgeRemark, edgeRemarks, shownRemarks, wordsOf } from './edge/remark.ts';
export { FIRST_SETTINGS, SETTING_NAMES, type ShopSettings } from './edge/setting-readers.ts';
export { type WeatherText, weatherFromText } from './edge/weather-text.ts';
export { editTrial, type PullEdit, type TrialEdit } from './edit-trial.ts';
export { changeEngine, type EngineChange, type EngineRow, engineRows } from './engines.ts';
export { answerCardOf, type CardRequest, noteCard } from './enquiry/answer-card.ts';
export { ENQUIRIES_A_PAGE, type EnquirySearch, enquiriesPage } from './enquiry/enquiries-page.ts';
export { type CardNumbers, type EnquiryReport, enquiryReport } from './enquiry/enquiry-report.ts';
export { keepAnswer, keepEnquiry } from './enquiry/keep-enquiry.ts';
export { enquiryOf } from './enquiry/kept-enquiry.ts';
export { type CardFile, leaveCard } from './enquiry/leave-card.ts';
export { type PlannedRung, planRung } from './enquiry/plan-rung.ts';
export { rungNamed } from './enquiry/rung-names.ts';
export { type ExportReport, exportBook } from './export-book.ts';
export { zippedExport } from './export-zip.ts';
export { findPull, findTrial } from './find-named.ts';
export { findOne, shortId } from './find-one.ts';
export {
  type HistoryPage,
  type HistoryStep,
  history,
  lastStep,
  subjectNamed,
  undo,
  wordsOfSince,
} from './history.ts';
export { type FileToImport, type ImportReport, importFile, previewImport } from './import-file.ts';
export { forgetLayout, type LayoutRow, layoutRows } from './layouts.ts';
export { type LikeReport, likeReport, writtenReport } from './like-report.ts';
export { type BookListing, LISTED_KINDS, type ListedKind, listBook } from './list-book.ts';
export { listInBackground } from './listed-pulls.ts';
export { type BundleLook, lookAtBundleFile } from './look-at-bundle.ts';
export {
  addMapFromText,
  changeMap,
  mapAsCsv,
  mapCardsOf,
  mapPageOf,
  mapReportOf,
  mapRows,
} from './maps.ts';
export { markFromBytes, type ShopMark } from './mark.ts';
export { bandsOfMatch } from './match/bands-of-match.ts';
export { keepMatchPrediction } from './match/keep-prediction.ts';
export { matchOfCombination, matchOfTrial } from './match/match-bundle.ts';
export { matchFromFile } from './match/match-from-file.ts';
export { matchReportOf } from './match/match-report-of.ts';
export { mergeIntoBook } from './merge-books.ts';
export { type OpenedBundle, openBundle, openBundleFile } from './open-bundle.ts';
export { addPackage } from './packages.ts';
export { fontFolder, programVersion, webBuildFolder } from './places.ts';
export { forgetPlan, keepPlan, planOf } from './plan.ts';
export { baselinesAtRisk } from './plan-guard.ts';
export { planPageOf, pullSheetOf } from './plan-page.ts';
export { predict } from './predictions.ts';
export { answerToPublish } from './publish/answer-to-publish.ts';
export { type PublishText, publishRequest } from './publish/choices.ts';
export { clipOf } from './publish/clip.ts';
export { type PublishedFile, type PublishReport, type PublishRequest, SIZE_NAMES } from './publish/model.ts';
export { noteMadeElsewhere } from './publish/note-made-elsewhere.ts';
export { type NumbersOfFile, numbersOfFile } from './publish/numbers-of-file.ts';
export { presentationOf } from './publish/presentation.ts';
export { addLink, changeLinks, takeOutLink } from './publish/publication-links.ts';
export { errataOf, publicationsPage, staleAfter, staleAfterStep } from './publish/publications.ts';
export { type PublishPage, publishPageOf } from './publish/publish-page.ts';
export { publishTrial } from './publish/publish-trial.ts';
export { type ReportRequest, reportOf } from './publish/report.ts';
export { changeRunningOrder, type OrderChange, runningOrderOf } from './publish/running-order.ts';
export { type Still, type StillRequest, stillOf } from './publish/still.ts';
export { pullPageOf } from './pull-pages.ts';
export {
  changePartsList,
  type PartsReport,
  partsListOf,
  partsReport,
  resetPartsList,
} from './reach/parts-list.ts';
export { reachFromFile } from './reach/reach-from-file.ts';
export { reachOfCombination } from './reach/reach-of-combination.ts';
export { runReach } from './reach/run-reach.ts';
export { mapOfRung, rungFile } from './reach/rung-file.ts';
export { readFileForImport } from './read-file.ts';
export { recordedPageOf } from './recorded-page.ts';
export {
  faultOfBook,
  putRescueAway,
  rescueBook,
  rescueLines,
  rescueToTell,
} from './rescue-book.ts';
export { type RestoreReport, restoreBook } from './restore-book.ts';
export { type RulesReport, rulesReport, setRuleThreshold, type ThresholdReport } from './rules.ts';
export { type SameBut, sheetSameBut } from './same-but.ts';
export { type ScatterAsked, scatterHistoryOf } from './scatter-history.ts';
export { type ListPage, type PullListPage, type PullSearch, searchPulls } from './search-pulls.ts';
export { changeSettings, type SettingsReport, settingsOf, settingsReport } from './settings.ts';
export {
  type FieldWords,
  lookAtSheet,
  type SheetAtHand,
  type SheetRemark,
  type SheetWords,
  sheetWords,
} from './sheet-at-hand.ts';
export {
  type FiguresPage,
  figuresOf,
  figuresPageOf,
  type ScatterPriorForm,
  scatterPriorForm,
} from './shop-figures.ts';
export { type ShownThing, type ShowOptions, showThing } from './show-thing.ts';
export { markOf } from './signature.ts';
export { letRuleSpeak, SILENCED_KINDS, type SilencedKind, silenceRule, type ToSilence } from './silence.ts';
export { type NewTrial, startTrial } from './start-trial.ts';
export { addSummaryPull, type SummaryText } from './summary-pull.ts';
export { sweepParts } from './sweep-parts.ts';
export { takeIntoTrial } from './take-into-trial.ts';
export type { TakenApartSaid } from './taken-apart.ts';
export type { Looking } from './trial-answer.ts';
export { type TrialSearch, trialCards, trialPageOf } from './trial-pages.ts';
export type { PlanAsked } from './worked-plan.ts';
export { zipOf } from './zip.ts';
