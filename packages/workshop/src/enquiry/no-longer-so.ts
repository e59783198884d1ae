import type { Combination } from '@pullbook/core/combination';
import type { Enquiry } from '@pullbook/core/reach';
import { type Remark, remark } from '@pullbook/core/remark';
import type { Book, LogEntry } from '@pullbook/store';
import { plainAct } from '../history-words.ts';

/**
 * What is no longer as it was when a target was asked: pulls of the engine that came since, pulls, sheet or map that it rests on and
 * that were amended, other parts or limits of the shop. `since`: the log after it was asked, newest first.
 */
export async function noLongerSo(
  book: Book,
  { pullIds }: Enquiry,
  combination: Combination | null,
  since: readonly LogEntry[],
): Promise<Remark[]> {
  if (since.length === 0) return [];
  const touched = new Set(since.map(({ subject }) => subject));
  const came = new Set(
    since.flatMap(({ act, subject }) => (plainAct(act) === 'pull added' ? [subject] : [])),
  );
  const ofEngine = (await book.combinationNames()).filter(
    ({ engineId }) => engineId === combination?.engineId,
  );
  const known = new Set(pullIds);
  const heads = await book.pullHeadsWith(ofEngine.map(({ id }) => id));
  const added = heads.filter(({ id }) => !known.has(id) && came.has(`pull ${id}`)).length;
  const amended = pullIds.filter((id) => touched.has(`pull ${id}`)).length;
  const map = combination?.sheet.sections.supercharger?.map?.text.trim().toLowerCase();
  const maps = map === undefined ? [] : await book.compressorMaps();
  const ownMap = maps.find(({ name }) => name.trim().toLowerCase() === map);
  return [
    ...(added === 0
      ? []
      : [
          said(
            'pulls-since',
            `${counted(added, 'pull')} of this engine came since this was asked and ${added === 1 ? 'is' : 'are'} not in the answer.`,
          ),
        ]),
    ...(amended === 0
      ? []
      : [
          said(
            'rests-on-amended',
            `${counted(amended, 'pull')} that this answer rests on changed since it was asked.`,
          ),
        ]),
    ...(combination !== null && touched.has(`combination ${combination.id}`)
      ? [said('sheet-amended', `The sheet of ${combination.name} was amended since this was asked.`)]
      : []),
    ...(ownMap !== undefined && touched.has(`compressorMap ${ownMap.id}`)
      ? [said('map-changed', `The compressor map ${ownMap.name} changed since this was asked.`)]
      : []),
    ...(since.some(isAboutParts)
      ? [said('parts-changed', "The shop's parts list or its limits changed since this was asked.")]
      : []),
  ];
}

/** Settings that a search rests on. */
const SETTINGS = ['partsList', 'ruleThresholds'];

const isAboutParts = ({ subject, before, after }: LogEntry): boolean =>
  subject === 'settings' && SETTINGS.some((name) => Object.hasOwn(Object(after ?? before), name));

const said = (code: string, what: string): Remark =>
  remark('caution', code, `${what} Ask again to have an answer of today; this one stays as it was given.`);

const counted = (count: number, what: string): string => (count === 1 ? `1 ${what}` : `${count} ${what}s`);
