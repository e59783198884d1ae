import { accepted, type Remark, type Result, remark } from '@pullbook/core/remark';
import { readWritten, type WrittenKind } from '../yaml/read-written.ts';
import { matchFileShape } from './file-shape.ts';
import { isRecord } from './group-shape.ts';
import type { MatchFile } from './model.ts';
import type { Reading } from './shape.ts';

const MATCH: WrittenKind = {
  called: 'a match file',
  ifEmpty: 'Write at least a combination with its supercharger and drive, a baseline, and a map.',
  exampleLine: 'blowerPulleyDiameter: 85 mm',
  mostCharacters: 2_000_000,
};

/** Draws and seed where bands are not spoken of. */
const USUAL_BANDS = { draws: 2000, seed: 1 };

/**
 * Reads a match file written as YAML or JSON: everything in it checked and brought to inside units, nothing computed but the
 * air. All faults come at once, each with its line and what is allowed. Files and things of the book that it names are
 * not looked up here.
 *
 * @example readMatchText('schemaVersion: 1\ncombination: Six with blower\nbaseline: { pull: Pull 3 }\nmap: Shop blower no. 2\n', 'six.yaml')
 */
export function readMatchText(text: string, fileName = 'The file'): Result<MatchFile> {
  const written = readWritten(text, fileName, MATCH);
  if (!written.ok) return written;
  const { plain, placeOf, blockLine } = written.value;
  const reading: Reading = { remarks: [], placeOf, blockLine };
  const name = nameIn(plain) ?? fileName.replace(/^.*[\\/]/, '').replace(/\.[^.]*$/, '');
  const read = matchFileShape(written.value, name).read(plain ?? {}, [], reading);
  const {
    combination,
    baseline,
    map = null,
    weather = null,
    model,
    bands,
    fit = null,
    whatIf = [],
    overSpeed = null,
    reach = null,
  } = read ?? {};
  const isRefused = reading.remarks.some(({ level }) => level === 'refusal');
  if (isRefused || combination === undefined || baseline === undefined)
    return { ok: false, remarks: refusalsFirst(notRead(reading.remarks, fileName)) };
  return accepted(
    {
      schemaVersion: 1,
      name,
      combination,
      baseline,
      map,
      air: weather,
      model: model?.model ?? {},
      frictionPower: model?.frictionPower ?? null,
      baselineCharge: model?.baselineCharge ?? {},
      bands: bands === null ? null : { ...USUAL_BANDS, ...bands },
      fit,
      whatIf: whatIf.map(({ weather: air, name: called, ...rest }, at) => ({
        ...rest,
        name: called ?? `What-if ${at + 1}`,
        ...(air === undefined ? {} : { air }),
      })),
      overSpeed,
      reach,
    },
    reading.remarks,
  );
}

function nameIn(plain: unknown): string | null {
  const name = isRecord(plain) ? plain.name : undefined;
  return typeof name === 'string' && name.trim() !== '' ? name.trim() : null;
}

/** A combination or baseline said to be unknown leaves nothing to match, and no other word would be said of it. */
function notRead(remarks: readonly Remark[], fileName: string): Remark[] {
  if (remarks.some(({ level }) => level === 'refusal')) return [...remarks];
  const message = `${fileName}: combination and baseline must both be known. Write the sections of a sheet under "combination:", and a pull or a table under "baseline:".`;
  return [remark('refusal', 'match-missing', message), ...remarks];
}

function refusalsFirst(remarks: readonly Remark[]): Remark[] {
  const isRefusal = ({ level }: Remark) => level === 'refusal';
  return [...remarks.filter(isRefusal), ...remarks.filter((item) => !isRefusal(item))];
}
