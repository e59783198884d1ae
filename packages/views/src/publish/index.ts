export { reportDescription } from '../report/report.ts';
export type { ReportMore } from '../report/report-in-view.ts';
export { clipDescription, type PresentedStep, presentation } from './clip.ts';
export { leaving } from './leaving.ts';
export * from './model.ts';
export { type ShownPublication, shownPublication } from './shown-publication.ts';
export { shownRunningOrder } from './shown-running-order.ts';
export { stillNamed, stillSet } from './still-set.ts';
