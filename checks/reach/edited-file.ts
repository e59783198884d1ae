/** What of a match file is edited: plain data as YAML reads it. */
export interface PlainFile {
  combination: Record<string, Record<string, unknown>>;
  baseline: { table: string };
  map?: unknown;
  model?: unknown;
  overSpeed?: string;
  reach?: unknown;
  [name: string]: unknown;
}

/** A change as `pullbook reach --json` tells it. */
export interface ToldChange {
  /** `drive.blowerPulleyDiameter` and the line's new text; `null`: it goes. */
  edits: Record<string, string | null>;
  clears: string[];
}

/** A gain in air that somebody states: a share over these speeds, held beyond as it is there, or none beyond. */
export interface StatedGain {
  /** Factor at an engine speed, r/min. */
  at: (rpm: number) => number;
}

/**
 * The file of a rung as somebody with a text editor would make it: sections that a change clears are taken out, its lines are written in, and a stated gain
 * becomes a table of factors. Uses nothing of the search.
 *
 * @param map of a supercharger that comes in place of the one there; missing: the file's
 */
export function editedFile(
  file: PlainFile,
  changes: readonly ToldChange[],
  { gains = [], map }: { gains?: readonly StatedGain[]; map?: unknown } = {},
): PlainFile {
  const combination = structuredClone(file.combination);
  for (const { clears, edits } of changes) {
    for (const section of clears) delete combination[section];
    for (const [place, text] of Object.entries(edits)) {
      const [section = '', field = ''] = place.split('.');
      combination[section] ??= {};
      if (text === null) delete combination[section][field];
      else combination[section][field] = text;
    }
  }
  const { reach: _, whatIf: __, ...rest } = file;
  return {
    ...rest,
    combination,
    ...(map === undefined ? {} : { map, model: {} }),
    ...(gains.length === 0 ? {} : { overSpeed: tableOf(gains, speedsOf(file.baseline.table)) }),
  };
}

const speedsOf = (table: string): number[] =>
  table
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => Number(line.split(',')[0]));

const tableOf = (gains: readonly StatedGain[], speeds: readonly number[]): string =>
  [
    'engine speed [rpm], air',
    ...speeds.map((rpm) => `${rpm}, ${gains.reduce((product, { at }) => product * at(rpm), 1)}`),
  ].join('\n');
