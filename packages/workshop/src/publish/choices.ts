import { PUBLICATION_KINDS, type PublicationKind } from '@pullbook/core/publication';
import { accepted, type Result } from '@pullbook/core/remark';
import { RUNNING_ORDER_LIMITS } from '@pullbook/core/trial';
import { PAPERS, type Paper } from '@pullbook/views';
import { PICTURES } from '@pullbook/views/publish';
import { correctionByName } from '../correction-by-name.ts';
import { refuse } from '../refuse.ts';
import { FORMATS, type PictureWanted, type PublishRequest, SIZE_NAMES, USUAL_KINDS } from './model.ts';

/** What is to be published, as a person says it; missing: as usual. */
export interface PublishText {
  kinds?: readonly string[] | undefined;
  formats?: readonly string[] | undefined;
  /** Names of the set's pictures; of one combination `alone:B`. */
  pictures?: readonly string[] | undefined;
  sizes?: readonly string[] | undefined;
  theme?: 'light' | 'dark' | undefined;
  transparent?: boolean | undefined;
  fps?: number | undefined;
  speed?: number | undefined;
  seconds?: number | undefined;
  correction?: string | undefined;
  paper?: string | undefined;
  privateToo?: boolean | undefined;
  draft?: boolean | undefined;
}

const PAPER_NAMES = Object.keys(PAPERS) as Paper[];
/** s; a longer clip is a film. */
const SECONDS = { least: 2, most: 600 } as const;

/** A checked request; what does not go together is refused with what does. */
export function publishRequest(text: PublishText): Result<PublishRequest> {
  const kinds = named(text.kinds ?? [], PUBLICATION_KINDS, 'kind', 'a kind of publication');
  if (!kinds.ok) return kinds;
  const wanted = kinds.value.length > 0 ? kinds.value : [...USUAL_KINDS];
  const formats = formatsOf(wanted, text.formats ?? []);
  if (!formats.ok) return formats;
  const pictures = picturesFrom(text.pictures ?? []);
  if (!pictures.ok) return pictures;
  const sizes = named(text.sizes ?? [], SIZE_NAMES, 'size', 'a size');
  if (!sizes.ok) return sizes;
  const paper = named(text.paper === undefined ? [] : [text.paper], PAPER_NAMES, 'paper', 'a paper');
  if (!paper.ok) return paper;
  const { fps = 60, speed = null, seconds = null } = text;
  if (fps !== 30 && fps !== 60)
    return refuse('frames-a-second', `${fps} frames a second are not made. Accepted: 30, 60.`);
  const saidFormats = (text.formats ?? []).map(plain);
  if (text.transparent === true && saidFormats.includes('mp4'))
    return refuse(
      'no-alpha-in-mp4',
      'An MP4 file has no transparency. For a clip to lay over a film take webm, mov or png; or take the clip with its ground.',
    );
  const timing = timingTrouble(speed, seconds);
  if (timing !== null) return refuse('clip-timing', timing);
  const correction = text.correction === undefined ? null : correctionByName(text.correction);
  if (correction?.ok === false) return correction;
  return accepted({
    kinds: wanted,
    formats: formats.value,
    clipFormatSaid: saidFormats.some((format) => isOneOf(FORMATS.clip, format)),
    pictures: pictures.value.length > 0 ? pictures.value : null,
    sizes: sizes.value.length > 0 ? sizes.value : ['1080p'],
    theme: text.theme ?? 'light',
    ground: text.transparent !== true,
    fps,
    speed,
    seconds,
    ...(correction ? { correction: correction.value } : {}),
    paper: paper.value[0] ?? 'a4',
    privateToo: text.privateToo === true,
    draft: text.draft === true,
  });
}

/** Each format goes to every asked kind that has it; a kind that gets none is made in its usual one. */
function formatsOf(
  kinds: readonly PublicationKind[],
  given: readonly string[],
): Result<PublishRequest['formats']> {
  const said = [...new Set(given.map(plain))];
  const stray = said.find((format) => !kinds.some((kind) => isOneOf(FORMATS[kind], format)));
  if (stray !== undefined) {
    const allowed = kinds.map((kind) => `${kind}: ${FORMATS[kind].join(', ')}`).join('; ');
    return refuse(
      'format-of-kind',
      `"${stray}" is not a format of ${kinds.length === 1 ? `a ${kinds[0]}` : 'what is asked for'}. Accepted: ${allowed}.`,
    );
  }
  const chosen = <Kind extends PublicationKind>(kind: Kind): PublishRequest['formats'][Kind] => {
    const all: readonly PublishRequest['formats'][Kind][number][] = FORMATS[kind];
    const fitting = all.filter((format) => said.includes(format));
    return (fitting.length > 0 ? fitting : all.slice(0, 1)) as PublishRequest['formats'][Kind];
  };
  return accepted({
    still: chosen('still'),
    clip: chosen('clip'),
    report: chosen('report'),
    table: chosen('table'),
    bundle: chosen('bundle'),
  });
}

function picturesFrom(given: readonly string[]): Result<PictureWanted[]> {
  const parted = given.map((word) => word.split(':'));
  const names = named(
    parted.map(([name = '']) => name),
    PICTURES,
    'picture',
    'a picture of the set',
  );
  if (!names.ok) return names;
  return accepted(
    parted.map(([name = '', key]) => ({
      name: names.value.find((one) => one === plain(name))!,
      key: key?.trim().toUpperCase() || null,
    })),
  );
}

/** Words of a closed list, each once, in the order of the list. */
function named<Word extends string>(
  given: readonly string[],
  words: readonly Word[],
  field: string,
  what: string,
): Result<Word[]> {
  const said = given.map(plain);
  const stray = said.find((word) => !isOneOf(words, word));
  if (stray !== undefined)
    return refuse(`unknown-${field}`, `"${stray}" is not ${what}. Accepted: ${words.join(', ')}.`);
  return accepted(words.filter((word) => said.includes(word)));
}

function timingTrouble(speed: number | null, seconds: number | null): string | null {
  const { speedLow, speedHigh } = RUNNING_ORDER_LIMITS;
  if (speed !== null && seconds !== null)
    return 'Give how fast the clip runs (speed) or how long it is (seconds), not both.';
  if (speed !== null && !(speed >= speedLow && speed <= speedHigh))
    return `A speed of ${speed} is not made. Accepted: ${speedLow} to ${speedHigh}; 1 is as worked out, 2 twice as fast.`;
  if (seconds !== null && !(seconds >= SECONDS.least && seconds <= SECONDS.most))
    return `A clip of ${seconds} s is not made. Accepted: ${SECONDS.least} to ${SECONDS.most} s.`;
  return null;
}

const plain = (word: string): string => word.trim().toLowerCase();

const isOneOf = <Word extends string>(words: readonly Word[], word: string): word is Word =>
  (words as readonly string[]).includes(word);
