import type { PublicationKind } from '@pullbook/core/publication';
import { FORMATS } from './model.ts';

/** What this machine can make, the usual one first: without an encoder a clip is numbered pictures. */
export async function formatsHere(): Promise<Record<PublicationKind, string[]>> {
  const { findEncoder } = await import('@pullbook/publish');
  const films: readonly string[] = (await findEncoder())?.formats ?? [];
  return {
    still: [...FORMATS.still],
    clip: FORMATS.clip.filter((format) => format === 'png' || films.includes(format)),
    report: [...FORMATS.report],
    table: [...FORMATS.table],
    bundle: [...FORMATS.bundle],
  };
}
