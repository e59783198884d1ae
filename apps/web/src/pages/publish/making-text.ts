import type { PublishJob } from '../../api/publish.ts';

/** How far it is: `Frames of the clip … 43 %`; `null`: it has only been asked for. */
export function makingText(job: PublishJob | null): string {
  if (job === null || job.what === '') return 'Making it …';
  return job.share > 0 ? `${job.what} … ${Math.floor(100 * job.share)} %` : `${job.what} …`;
}
