import { randomUUID } from 'node:crypto';
import { type CompressorMap, fitMap } from '@pullbook/core/airpath';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import { mapToCsv, readMapText } from '@pullbook/formats';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import { type MapCard, type MapPage, type MapPageInput, mapCard, mapPage } from '@pullbook/views/match';
import { amendmentWithoutReason } from './amendment-reason.ts';
import { type MapReport, mapReport } from './edge/map-report.ts';
import { findNamed } from './find-named.ts';
import { onLatest } from './on-latest.ts';
import { rememberedNow } from './remembered.ts';

/**
 * Puts a compressor map from open CSV into the book, as long as it can be read and a match can ask it. `name`: in place of
 * the one in the file.
 */
export async function addMapFromText(
  book: Book,
  text: string,
  { name, fileName = 'map.csv' }: { name?: string | undefined; fileName?: string | undefined } = {},
): Promise<Result<MapReport>> {
  const read = readMapText(text, fileName);
  if (!read.ok) return read;
  const map: CompressorMap = {
    ...read.value,
    name: name?.trim() || read.value.name,
    id: randomUUID(),
    createdAt: new Date().toISOString(),
  };
  const taken = await nameTaken(book, map);
  if (taken) return refused(taken);
  const fitted = fitMap(map);
  if (!fitted.ok) return fitted;
  await book.addCompressorMap(map);
  return accepted(mapReport(map, fitted), read.remarks);
}

/** All maps of the book, the one added last first, each with how well it fits its own points. */
export async function mapRows(book: Book): Promise<MapReport[]> {
  return (await book.compressorMaps()).reverse().map((map) => mapReport(map, fittedMapOf(book, map)));
}

/** The same as the page of maps shows them, each with its picture. */
export async function mapCardsOf(book: Book, options: ViewOptions): Promise<MapCard[]> {
  return (await book.compressorMaps()).reverse().map((map) => mapCard(inView(book, map), options));
}

/** A map with what became of its fit. */
function inView(book: Book, map: CompressorMap): MapPageInput {
  const fitted = fittedMapOf(book, map);
  return { map, fitted: fitted.ok ? fitted.value : null, remarks: fitted.remarks };
}

/** The map a person means by its id, the beginning of it, or its name. */
export async function findMap(book: Book, given: string): Promise<Result<CompressorMap>> {
  const found = await findNamed(book, ['compressorMap'], given, 'compressor map');
  return found.ok ? accepted((await book.compressorMap(found.value.id))!) : found;
}

/** One map as it leaves the program. */
export async function mapReportOf(book: Book, given: string): Promise<Result<MapReport>> {
  const found = await findMap(book, given);
  return found.ok ? accepted(mapReport(found.value, fittedMapOf(book, found.value))) : found;
}

/** One map as the page shows it. `stamp`: what a change made from it gives back. */
export async function mapPageOf(
  book: Book,
  given: string,
  options: ViewOptions,
): Promise<Result<MapPage & { id: string; stamp: string }>> {
  const found = await findMap(book, given);
  if (!found.ok) return found;
  const { id } = found.value;
  const stamp = await book.stamp(`compressorMap ${id}`);
  const map = (await book.compressorMap(id)) ?? found.value;
  return accepted({ ...mapPage(inView(book, map), options), id, stamp });
}

/** The map as open CSV, to be read by any program and by this one again. */
export async function mapAsCsv(book: Book, given: string): Promise<Result<{ name: string; text: string }>> {
  const found = await findMap(book, given);
  return found.ok ? accepted({ name: found.value.name, text: mapToCsv(found.value) }) : found;
}

/** Another name or other notes of a map. Its points stay: another measurement is another map. */
export async function changeMap(
  book: Book,
  given: string,
  change: { name?: string | undefined; notes?: string | undefined },
  reason: string,
  stamp?: string,
): Promise<Result<{ id: string; name: string }>> {
  if (reason.trim() === '') return amendmentWithoutReason();
  const found = await findMap(book, given);
  if (!found.ok) return found;
  return onLatest(book, `compressorMap ${found.value.id}`, stamp, async (latest) => {
    const map = (await book.compressorMap(found.value.id)) ?? found.value;
    const changed = {
      ...map,
      name: change.name?.trim() || map.name,
      notes: change.notes?.trim() ?? map.notes,
    };
    const taken = await nameTaken(book, changed);
    if (taken) return refused(taken);
    await book.changeCompressorMap(changed, reason.trim(), latest);
    return accepted({ id: changed.id, name: changed.name });
  });
}

/** A map made ready to be asked, once for what it is. */
export const fittedMapOf = (book: Book, map: CompressorMap): ReturnType<typeof fitMap> =>
  rememberedNow(book, JSON.stringify(['fitted map', map]), () => fitMap(map));

/** Sheets name their map, so a name means one. */
async function nameTaken(book: Book, { id, name }: CompressorMap) {
  const wanted = name.trim().toLowerCase();
  const same = (await book.compressorMaps()).find(
    (one) => one.id !== id && one.name.trim().toLowerCase() === wanted,
  );
  if (wanted !== '' && !same) return null;
  return remark(
    'refusal',
    'map-name',
    same
      ? `The book has a compressor map "${same.name}" already. Give this one a name of its own: sheets name their map by it.`
      : 'A compressor map needs a name, such as "shop blower no. 2". Write it in the file as "name", or give it with --name.',
  );
}
