import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { longFile } from './sweep-file.ts';

const PEERS = ['udsv', 'papaparse', 'csv-parse'];
const STAGES = ['ours, to numbers', 'ours, to pulls', 'ours, to views'];
const child = fileURLToPath(new URL('./reading-child.ts', import.meta.url));

export interface ReadingTimes {
  /** Median of each stage, ms. */
  stages: { what: string; milliseconds: number }[];
  /** Medians of the peers splitting the same bytes into strings, ms. */
  peers: { name: string; milliseconds: number }[];
}

/** Times the reading of 1,000,000 rows of 20 columns beside what others take to split it only; all in turn, `runs` times. */
export function timeReading(folder: string, runs: number): ReadingTimes {
  const path = join(folder, 'long.csv');
  writeFileSync(path, longFile(1_000_000));
  const times = new Map<string, number[]>();
  // In turn, so that a machine that slows down slows all.
  for (let run = 0; run < runs; run++)
    for (const contender of [...PEERS, ...STAGES]) {
      const ended = spawnSync(process.execPath, [
        '--max-old-space-size=8192',
        '--import',
        'tsx',
        child,
        contender,
        path,
      ]);
      if (ended.status !== 0) throw new Error(`${contender}: ${ended.stderr}`);
      const { milliseconds } = JSON.parse(String(ended.stdout)) as { milliseconds: number };
      times.set(contender, [...(times.get(contender) ?? []), milliseconds]);
    }
  const median = (name: string) => times.get(name)!.toSorted((a, b) => a - b)[runs >> 1]!;
  return {
    stages: STAGES.map((what) => ({ what, milliseconds: median(what) })),
    peers: PEERS.map((name) => ({ name, milliseconds: median(name) })),
  };
}
