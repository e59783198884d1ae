import { serveJobs } from '@pullbook/compute';
import { jobs } from './jobs.ts';

serveJobs(jobs);
