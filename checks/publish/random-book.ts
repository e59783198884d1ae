import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { capturedJson } from '../../apps/cli/src/testing/captured.ts';

/** Names as people give them: short, long, in several scripts, with what a file or a drawing might trip over. */
const NAMES = [
  'base cam',
  '12° longer cam',
  'Nockenwelle mit 12° mehr, größere Düsen',
  'распредвал «спорт»',
  '長いカム',
  'كامة أطول',
  '<b>&"cam"</b>',
  `a ${'very '.repeat(38)}long name`.slice(0, 199),
  'x'.repeat(120),
  '凸輪軸 профіль भ्रमण שמן 🏁',
];

interface Side {
  share: number;
  tilt: number;
  hump: number;
  pulls: number;
  isBoosted: boolean;
}

/** Torque of one combination over the baseline's: nothing at all, a share, a tilt, a hump. */
const change: fc.Arbitrary<Side> = fc.record({
  share: fc.constantFrom(0, 0, 0.002, 0.03, -0.02, 0.25),
  tilt: fc.constantFrom(0, 0, 0.04, -0.05),
  hump: fc.constantFrom(0, 0, 0.06),
  pulls: fc.constantFrom(1, 2, 3),
  isBoosted: fc.boolean(),
});

export const randomTrial = fc.record({
  name: fc.integer({ min: 0, max: NAMES.length - 1 }),
  torqueNm: fc.integer({ min: 40, max: 1400 }),
  peakRpm: fc.integer({ min: 2200, max: 6400 }),
  fromRpm: fc.constantFrom(1500, 2050, 3000),
  toRpm: fc.constantFrom(5200, 6500, 8750),
  stepRpm: fc.constantFrom(50, 100, 250),
  /** Of a row, as a share. */
  noise: fc.constantFrom(0, 0.001, 0.01),
  isSurvey: fc.constantFrom(false, false, false, true),
  changes: fc.array(change, { minLength: 1, maxLength: 7 }),
});
type RandomTrial = typeof randomTrial extends fc.Arbitrary<infer Trial> ? Trial : never;

/** Puts trials of invented engines into a book, by the command line alone; their ids. */
export async function addTrials(folder: string, trials: readonly RandomTrial[]): Promise<string[]> {
  await mkdir(folder, { recursive: true });
  const ids: string[] = [];
  for (const [index, trial] of trials.entries()) ids.push(await addTrial(folder, trial, index));
  return ids;
}

async function addTrial(folder: string, trial: RandomTrial, index: number): Promise<string> {
  const book = ['--book', join(folder, 'book')];
  const unchanged: Side = { share: 0, tilt: 0, hump: 0, pulls: 2, isBoosted: trial.changes[0]!.isBoosted };
  const ids: string[] = [];
  for (const [place, side] of [unchanged, ...trial.changes].entries()) {
    const name = `${NAMES[(trial.name + place) % NAMES.length]!} ${place === 0 ? '' : place}`.trim();
    const sheet = join(folder, 'sheet.yaml');
    await writeFile(sheet, sheetOf(name, side.isBoosted));
    const { json: own } = await ran(['combination', 'add', sheet, '--engine', `Engine ${index}`, ...book]);
    ids.push(own.id);
    const files: string[] = [];
    for (let pull = 0; pull < side.pulls; pull += 1) {
      files.push(join(folder, `run ${index}-${place}-${pull}.csv`));
      await writeFile(files.at(-1)!, pullFile(trial, side, `${index}-${place}-${pull}`));
    }
    const air = ['--pressure', '98.2kPa', '--temperature', '30C', '--humidity', '45%'];
    await ran(['import', ...files, '--combination', own.id, '--corrected', 'observed', ...air, ...book]);
  }
  const question = `Random engine ${index}?`;
  const sides = ids.flatMap((id) => ['--combination', id]);
  const survey = trial.isSurvey ? ['--survey'] : [];
  const { json } = await ran(['trial', 'start', question, ...sides, ...survey, ...book]);
  return json.id;
}

async function ran(argv: string[]) {
  const { code, json } = await capturedJson(argv);
  if (code !== 0) throw new Error(`${argv.join(' ')}: ${JSON.stringify(json.error)}`);
  return { code, json };
}

/** What a file is told apart by stands in a column of its own, so that curves may lie on one another to the last sign. */
function pullFile(trial: RandomTrial, side: Side, run: string): string {
  const { torqueNm, peakRpm, fromRpm, toRpm, stepRpm, noise } = trial;
  const scatter = fc.sample(fc.double({ min: -1, max: 1, noNaN: true }), {
    seed: hashOf(run),
    numRuns: 200,
  });
  const rows: string[] = [];
  for (let rpm = fromRpm; rpm <= toRpm; rpm += stepRpm) {
    const x = (rpm - peakRpm) / 4500;
    const changed = 1 + side.share + side.tilt * x + side.hump * Math.exp(-((x / 0.15) ** 2));
    const torque = torqueNm * (1 - x * x) * changed * (1 + noise * scatter[rows.length % 200]!);
    const boost = side.isBoosted ? (80 * (rpm / toRpm) ** 2 * (1 - side.share)).toFixed(2) : '';
    rows.push(`${rpm},${Math.max(1, torque).toFixed(3)},${boost},${run}`);
  }
  return `rpm,torque_Nm,boost_kPa,run\n${rows.join('\n')}\n`;
}

const sheetOf = (name: string, isBoosted: boolean): string =>
  [
    'schemaVersion: 1',
    `name: ${JSON.stringify(name)}`,
    'shortBlock:\n  cylinders: 6\n  bore: 96 mm\n  stroke: 88 mm',
    'fuel:\n  name: gasoline',
    ...(isBoosted ? ['supercharger:\n  type: centrifugal'] : []),
  ].join('\n');

/** A seed from words: FNV-1a. */
function hashOf(words: string): number {
  let hash = 0x811c9dc5;
  for (const sign of words) hash = Math.imul(hash ^ sign.codePointAt(0)!, 0x01000193);
  return hash | 0;
}
