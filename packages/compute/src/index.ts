export { inLine } from './in-line.ts';
export type { Computing, Job, JobContext, Jobs, RunOptions } from './model.ts';
export { serveJobs } from './serve-jobs.ts';
export { threads } from './threads.ts';
