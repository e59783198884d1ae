export { type CamEvents, type CamFigures, camFromEvents } from './cam-card.ts';
export { type CompressionVolumes, compressionRatioFromVolumes } from './compression-ratio.ts';
export { deriveFigures, displacement, meanPistonSpeed } from './derive-figures.ts';
export { entryPattern } from './entry-pattern.ts';
export { FIELDS, fieldNamed, type SheetEntry, type SheetField } from './fields.ts';
export {
  COMMON_TEST_PRESSURE,
  FLOW_FIELDS,
  type FlowField,
  type FlowPoint,
  flowPoints,
} from './flow-sheet.ts';
export { isSupercharged } from './is-supercharged.ts';
export * from './model.ts';
export { CHANGED_ON_THE_BRAKE, needsTakingApart } from './needs-taking-apart.ts';
export { ORIGINS } from './origins.ts';
export { readSheet } from './read-sheet.ts';
export { remarksOnSheet } from './remarks-on-sheet.ts';
export { SECTIONS, sectionTitle } from './sections.ts';
export { sheetNumber, sheetValue } from './sheet-number.ts';
export { type JsonSchema, sheetSchema } from './sheet-schema.ts';
export { type PlainSheet, sheetToPlain } from './sheet-to-plain.ts';
export type { TableColumn, TableDetail, TableShape } from './table-shapes.ts';
export { whatChanged } from './what-changed.ts';
export { type LineToChange, withLines } from './with-lines.ts';
