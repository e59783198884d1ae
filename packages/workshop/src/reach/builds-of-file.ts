import type { Baseline, CompressorMap } from '@pullbook/core/airpath';
import { type CombinationSheet, isSupercharged } from '@pullbook/core/combination';
import { withFit } from '@pullbook/core/fit';
import type { CostClass, ReachBuild } from '@pullbook/core/reach';
import { accepted, type Remark, type Result, remarkAbout } from '@pullbook/core/remark';
import type { MatchFile } from '@pullbook/formats';
import { baselineOfFile, type FileAround, matchOfFile, writtenMap } from '../match/match-from-file.ts';
import { changeOfSupercharger, unitOf, withoutSupercharger, withSections } from './another-supercharger.ts';

interface AroundBuilds {
  around: FileAround;
  cost: CostClass;
  presentAlone: boolean;
}

/** What of a match file is matched. */
export interface BuildsOfFile {
  builds: ReachBuild[];
  baseline: Baseline;
  /** By build; `null`: its sheet says it, or the book has it. */
  maps: Record<string, CompressorMap | null>;
  remarks: Remark[];
}

/** The engine as the file has it, without a supercharger, and with those its `reach` section names. */
export async function buildsOfFile(
  file: MatchFile,
  sheet: CombinationSheet,
  { around, cost, presentAlone }: AroundBuilds,
): Promise<Result<BuildsOfFile>> {
  const isBlown = isSupercharged(sheet);
  const present = isBlown ? await matchOfFile(file, sheet, around) : null;
  if (present?.ok === false) return present;
  const found =
    present === null ? await baselineOfFile(file, sheet, around) : accepted(present.value.input.baseline);
  if (!found.ok) return found;
  const map = await ownMap(file.map, around);
  const first: ReachBuild = {
    id: 'present',
    name: unitOf(sheet) ?? 'as it is',
    isPresent: true,
    match: present && { input: present.value.input, spread: present.value.spread },
    fit: present?.value.fit ?? null,
    madeOf: present?.value.madeOf ?? null,
    sheet,
    change: null,
    assumptions: present?.value.assumptions ?? found.remarks,
  };
  const built: BuildsOfFile = { builds: [first], baseline: found.value, maps: { present: map }, remarks: [] };
  if (presentAlone) return accepted(built);
  if (isBlown) built.builds.push(withoutSupercharger(sheet, cost));
  for (const [place, other] of (file.reach?.superchargers ?? []).entries()) {
    const own = other.sections.cooler ?? sheet.sections.cooler;
    const as = withSections(sheet, {
      ...other.sections,
      ...(other.sections.drive === undefined && sheet.sections.drive ? { drive: sheet.sections.drive } : {}),
      ...(own === undefined ? {} : { cooler: own }),
    });
    // What the file states of the model is stated of the supercharger that is there, and so is what was fitted to its map.
    const made = await matchOfFile({ ...file, map: other.map, model: {}, fit: null }, as, around);
    if (!made.ok) return { ok: false, remarks: made.remarks.map((one) => remarkAbout(other.name, one)) };
    const fit = first.fit;
    const match = fit === null ? made.value : withFit(made.value, fit);
    const id = `supercharger ${place + 1}`;
    built.maps[id] = await ownMap(other.map, around);
    built.builds.push({
      id,
      name: other.name,
      isPresent: false,
      match: { input: match.input, spread: match.spread },
      fit,
      madeOf: made.value.madeOf,
      sheet: as,
      change: changeOfSupercharger(sheet, as, {
        name: other.name,
        cost,
        ground: made.value.input.compressor.map.form === 'points' ? 'scaled from your data' : 'rule of thumb',
        from: 'the file: its map and its sheet, on this engine',
      }),
      assumptions: made.value.assumptions,
    });
  }
  return accepted(built);
}

/** A map that the file has written or names; `null`: the sheet says it. It was read before, so it can be read. */
async function ownMap(map: MatchFile['map'], around: FileAround): Promise<CompressorMap | null> {
  const written = map === null ? null : await writtenMap(map, around);
  return written?.ok ? written.value : null;
}
