import type { ClipFrames } from './clip-choice.ts';

/** Whether the page can make a clip, and what somebody should know before; '' nothing. */
export interface CanBeMade {
  can: boolean;
  /** What stands in the way and what can be done instead, or what is different here. */
  words: string;
}

const INSTEAD =
  'The command line makes it: pullbook publish TRIAL --kind clip. Numbered pictures (PNG) work here too.';

/** What this browser can do of what is asked, in words for who reads them. */
export async function whatCanBeMade(frames: ClipFrames): Promise<CanBeMade> {
  if (typeof OffscreenCanvas === 'undefined' || navigator.storage?.getDirectory === undefined) {
    return {
      can: false,
      words:
        'This browser cannot make clips: it has no drawing beside the page, or no place to keep a large file while it is made (some have none in a private window). The command line makes it: pullbook publish TRIAL --kind clip.',
    };
  }
  if (frames.format === 'png') return { can: true, words: '' };
  const { codecFor } = await import('./codec-for.ts');
  const codec = await codecFor(frames);
  if (codec === null) {
    const what = frames.ground
      ? `${frames.format === 'mp4' ? 'an MP4' : 'a WebM'} of this size`
      : 'a transparent WebM';
    return { can: false, words: `This browser cannot encode ${what}. ${INSTEAD}` };
  }
  if (frames.format === 'mp4' && codec !== 'avc') {
    const name = codec === 'vp9' ? 'VP9' : 'AV1';
    return {
      can: true,
      words: `This browser writes no H.264: the MP4 will hold ${name}, which newer players show. The command line writes H.264.`,
    };
  }
  return { can: true, words: '' };
}
