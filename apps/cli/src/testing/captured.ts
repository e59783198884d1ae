import { run } from '../main.ts';
import type { Terminal } from '../terminal.ts';

export interface Captured {
  code: number;
  out: string;
  err: string;
}

/** Runs a command line in this process and keeps what it says. */
export async function captured(argv: string[], more: Partial<Terminal> = {}): Promise<Captured> {
  let out = '';
  let err = '';
  const code = await run(argv, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    env: {},
    watched: false,
    colours: false,
    stopped: () => Promise.resolve(),
    interrupted: () => new AbortController().signal,
    ...more,
  });
  return { code, out, err };
}

/** Runs a command line with `--json`; standard output must be one JSON value and standard error empty. */
export async function capturedJson(argv: string[]) {
  const { code, out, err } = await captured([...argv, '--json']);
  if (err !== '') throw new Error(`Standard error is not empty: ${err}`);
  return { code, json: JSON.parse(out) };
}

/** An invented step test, N·m against r/min: a parabola scaled by a factor. */
export function stepTest(scale = 1, rows = 26): string {
  const line = (row: number): string => {
    const rpm = 2000 + 180 * row;
    return `${rpm},${(scale * (400 - ((rpm - 4200) / 300) ** 2)).toFixed(3)}`;
  };
  return `rpm,torque_Nm\n${Array.from({ length: rows }, (_, row) => line(row)).join('\n')}\n`;
}

/** A small combination sheet. */
export const sheet = (name: string, more = 'bore: 96 mm'): string =>
  `schemaVersion: 1\nname: ${name}\nshortBlock:\n  cylinders: 6\n  stroke: 88 mm\n  ${more}\n`;
