import type { CompressorMap } from '@pullbook/core/airpath';
import { readSheet } from '@pullbook/core/combination';
import type { Publication } from '@pullbook/core/publication';
import { OPEN_AUDIENCE } from '@pullbook/core/pull';
import type { Enquiry } from '@pullbook/core/reach';
import { expect, test } from 'vitest';
import type { ExportedBook } from './exported-book.ts';
import { seenBy } from './seen-by.ts';

const AT = '2026-03-14T10:42:00Z';

const map = (id: string, name: string): CompressorMap => ({
  id,
  name,
  form: 'points',
  reference: { pressure: 100_000, temperature: 298.15 },
  geometry: { wheelExitDiameter: null, wheelInletDiameter: null, blades: null, backsweep: null },
  points: [],
  leftEnd: 'not known',
  origin: 'measured',
  notes: '',
  invented: true,
  createdAt: AT,
});

function combination(id: string, mapName: string): ExportedBook['combinations'][number] {
  const read = readSheet({ schemaVersion: 1, name: id, supercharger: { map: mapName } });
  if (!read.ok) throw new Error(read.remarks[0]!.message);
  const sheet = read.value;
  return {
    id,
    engineId: 'e',
    name: id,
    sheet,
    revision: 1,
    madeFromId: null,
    packageIds: [],
    createdAt: AT,
    invented: true,
  };
}

const publication = (id: string, more: Partial<Publication> = {}): Publication => ({
  id,
  trialId: 't',
  question: 'Which pulley?',
  sentence: '',
  kinds: [],
  files: [],
  pullIds: [],
  correction: 'observed',
  figures: [],
  privateToo: false,
  links: [],
  at: AT,
  ...more,
});

/** Of an enquiry only this counts for who may see it. */
const enquiry = (id: string, fields: Partial<Enquiry>, nearPullIds: string[] = []): Enquiry =>
  ({
    id,
    combinationId: 'seen',
    pullIds: [],
    became: [],
    answer: { near: [{ pullIds: nearPullIds }] },
    ...fields,
  }) as unknown as Enquiry;

/** A trial that the customer may see over the first combination; the second is the shop's alone. */
const book: ExportedBook = {
  info: { id: 'b', name: 'Shop', invented: true, createdAt: AT, schemaVersion: 5 },
  engines: [{ id: 'e', name: 'Six', buildRevision: '1', notes: '', invented: true }],
  combinations: [combination('seen', ' shop BLOWER'), combination('private', 'Secret blower')],
  packages: [],
  setUps: [],
  sessions: [],
  pulls: [],
  files: [],
  trials: [
    {
      id: 't',
      question: 'Which pulley?',
      kind: 'survey',
      combinations: [{ key: 'A', combinationId: 'seen', shortName: '' }],
      pulls: [],
      correction: 'observed',
      averagesWindowRpm: null,
      remark: '',
      audience: { ...OPEN_AUDIENCE, who: 'customer' },
      createdAt: AT,
      invented: true,
    },
  ],
  cells: [],
  layouts: [],
  silenced: [],
  predictions: [],
  compressorMaps: [map('named', 'Shop blower'), map('other', 'Secret blower'), map('gone', 'Shop blower')],
  publications: [
    publication('told'),
    publication('private', { privateToo: true }),
    publication('of a private pull', { pullIds: ['secret'] }),
    publication('of another trial', { trialId: 'secret' }),
    publication('taken back'),
  ],
  enquiries: [
    enquiry('asked', {
      became: [
        { rungId: 'a', combinationId: 'seen', trialId: 't', at: AT },
        { rungId: 'b', combinationId: 'private', trialId: 'secret', at: AT },
      ],
    }),
    enquiry('of a private pull', { pullIds: ['secret'] }),
    enquiry('near a private pull', {}, ['secret']),
    enquiry('of a private combination', { combinationId: 'private' }),
    enquiry('taken back', {}),
  ],
  settings: {},
  withdrawn: [
    { kind: 'compressorMap', id: 'gone', at: AT },
    { kind: 'publication', id: 'taken back', at: AT },
    { kind: 'enquiry', id: 'taken back', at: AT },
  ],
  log: [],
};

const mapIds = ({ compressorMaps }: ExportedBook) => compressorMaps.map(({ id }) => id);

test('a compressor map goes with the combinations that name it, and no other map does', () => {
  expect(mapIds(seenBy(book, 'customer', '2026-03-15').contents)).toEqual(['named']);
});

test('nobody gets the map of a combination they do not see', () => {
  expect(mapIds(seenBy(book, 'everyone', '2026-03-15').contents)).toEqual([]);
});

test('the shop has all of them, withdrawn ones too', () => {
  expect(mapIds(seenBy(book, 'shop', '2026-03-15').contents)).toEqual(['named', 'other', 'gone']);
});

test('a publication goes with its trial, but not where it rests on a pull that stays, or held what is not for the reader', () => {
  const open = { ...book, trials: book.trials.map((one) => ({ ...one, audience: OPEN_AUDIENCE })) };
  const ids = (of: ExportedBook, reader: 'customer' | 'everyone') =>
    seenBy(of, reader, '2026-03-15').contents.publications.map(({ id }) => id);
  expect(ids(book, 'customer')).toEqual(['told', 'private']);
  expect(ids(book, 'everyone')).toEqual([]);
  expect(ids(open, 'everyone')).toEqual(['told']);
});

test('an enquiry goes with its combination, but not where a pull that it rests on or shows stays in the shop', () => {
  const { enquiries } = seenBy(book, 'customer', '2026-03-15').contents;
  expect(enquiries.map(({ id, became }) => [id, became.map(({ rungId }) => rungId)])).toEqual([
    ['asked', ['a']],
  ]);
  expect(seenBy(book, 'everyone', '2026-03-15').contents.enquiries).toEqual([]);
  expect(seenBy(book, 'shop', '2026-03-15').contents.enquiries).toHaveLength(5);
});
