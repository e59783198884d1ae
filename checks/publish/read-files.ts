import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { capturedJson } from '../../apps/cli/src/testing/captured.ts';

/** What `show --json` and the block in a file say of a change, as far as it is held here. */
export interface Comparison {
  meanGainKw: number;
  changedPeak: { peakPowerKw: number | null };
  curve: {
    engineSpeedRpm: number;
    baselineKw: number | null;
    changedKw: number | null;
    gainKw: number | null;
    gainLowKw: number | null;
    gainHighKw: number | null;
  }[];
}

export interface ReadFile {
  name: string;
  /** As it stands on the disk; '' of another format. */
  svg: string;
  numbers: {
    combinations: { key: string; peakPowerKw: number | null; highestBoostKpa: number | null }[];
    comparisons: (Comparison & { key: string })[];
  };
  texts: string[];
}

/** What the command line answers of a trial. */
export async function shownOf(book: string, trial: string): Promise<Comparison[]> {
  const { code, json } = await capturedJson(['show', trial, '--book', book]);
  if (code !== 0) throw new Error(JSON.stringify(json));
  return json.comparisons ?? [];
}

/** Publishes, and reads every file back with `publish --numbers`. */
export async function publishedFiles(
  book: string,
  trial: string,
  out: string,
  ...more: string[]
): Promise<ReadFile[]> {
  const argv = ['publish', trial, '--draft', '--out', out, '--book', book, ...more];
  const { code, json } = await capturedJson(argv);
  if (code !== 0 || json.files.length === 0) throw new Error(JSON.stringify(json));
  const files: ReadFile[] = [];
  for (const { path } of json.files as { path: string }[]) {
    const told = await capturedJson(['publish', '--numbers', path]);
    if (told.code !== 0) throw new Error(JSON.stringify(told.json));
    const svg = path.endsWith('.svg') ? readFileSync(path, 'utf8') : '';
    files.push({ name: basename(path), svg, numbers: told.json.numbers, texts: told.json.texts });
  }
  return files;
}
