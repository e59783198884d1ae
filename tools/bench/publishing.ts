import { performance } from 'node:perf_hooks';
import { STILL_SIZES, type StillDescription } from '@pullbook/charts';
import { findEncoder, stillPng } from '@pullbook/publish';
import type { Book } from '@pullbook/store';
import { type PublishText, publishRequest, publishTrial, reportOf } from '@pullbook/workshop';
import { busyChart } from './busy-chart.ts';
import { clipsInPage } from './clip-in-page.ts';

/** The demo trial whose pictures are timed. */
const TIMED_TRIAL = 'What does the longer cam add at the same pulley?';

const OPTIONS = { units: 'us', decimalMark: '.' } as const;

/** A still of four panels, two combinations of three logged pulls each. */
function busyStill(): StillDescription {
  return {
    headline: 'Longer cam, same pulley: +15 hp on average',
    subline: '±4 hp (95 %) · 3 pulls against 3, same day · SAE J1349',
    body: { kind: 'stack', chart: busyChart(6, 200) },
    footer: ['3.8 L straight six, gasoline · intake air 84 °F, factor 1.021', 'Invented data'],
    warning: null,
    signature: null,
    alternative: 'Invented curves.',
  };
}

/**
 * Rows of the bench for what is published of a demo trial: pictures, a report, ten seconds of film at 1080p and 60 frames a
 * second, and how much more memory a clip of a minute holds in its second half than in its first. `timed` gives a median, ms.
 */
export async function publishingRows(
  book: Book,
  folder: string,
  timed: (runs: number, work: () => unknown) => Promise<number>,
  add: (what: string, median: number, against: string, limit: number, unit?: string) => void,
): Promise<void> {
  const { id } = (await book.trials()).find(({ question }) => question === TIMED_TRIAL)!;
  const still = busyStill();
  add(
    'four panels as a 4K PNG',
    await timed(5, () => stillPng(still, { ...STILL_SIZES['4k'], theme: 'dark', ground: true })),
    'limit',
    1000,
  );

  /** Makes a draft of the trial; how many files. */
  const published = async (text: PublishText, onShare?: (share: number) => void): Promise<number> => {
    const request = publishRequest({ ...text, draft: true });
    if (!request.ok) throw new Error(request.remarks[0]!.message);
    const onProgress = onShare && ((_: string, share: number) => onShare(share));
    const made = await publishTrial(book, id, OPTIONS, request.value, { folder, onProgress });
    if (!made.ok || made.value.state !== 'done') throw new Error(made.remarks[0]?.message);
    return made.value.files.length;
  };
  const stills = await published({ kinds: ['still'] });
  add(
    `a set of ${stills} stills, 1080p PNG`,
    await timed(3, () => published({ kinds: ['still'] })),
    'limit',
    (6000 * stills) / 12,
  );
  for (const format of ['html', 'pdf'] as const)
    add(
      `a report as ${format.toUpperCase()}`,
      await timed(3, () => reportOf(book, id, OPTIONS, { format })),
      'limit',
      3000,
    );
  if ((await findEncoder()) === null) return;

  const film = async (format: string, transparent: boolean) => {
    const start = performance.now();
    await published({ kinds: ['clip'], formats: [format], transparent, seconds: 10 });
    return (performance.now() - start) / 1000;
  };
  add('a clip of 10 s, 1080p at 60, MP4', await film('mp4', false), 'limit', 25, 's');
  add('the same with alpha, WebM', await film('webm', true), 'limit', 40, 's');
  add('the same with alpha, MOV', await film('mov', true), 'limit', 40, 's');
  const { opaque, clear } = await clipsInPage(TIMED_TRIAL);
  add('a clip of 10 s, 1080p at 60, MP4, made in the page', opaque, 'limit', 25, 's');
  add('the same with alpha, WebM, made in the page', clear, 'limit', 40, 's');
  const peaks = [0, 0];
  await published({ kinds: ['clip'], formats: ['mp4'], seconds: 60 }, (share) => {
    const half = share < 0.5 ? 0 : 1;
    // Once all is warm.
    if (share > 0.1) peaks[half] = Math.max(peaks[half]!, process.memoryUsage.rss());
  });
  add(
    "a clip of 60 s: memory's growth from its first half to its second",
    (peaks[1]! - peaks[0]!) / 1e6,
    'limit',
    50,
    'MB',
  );
}
