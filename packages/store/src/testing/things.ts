import type { CompressorMap } from '@pullbook/core/airpath';
import { type Combination, type Engine, type Package, readSheet } from '@pullbook/core/combination';
import type { TrialPlan } from '@pullbook/core/plan';
import type { Publication } from '@pullbook/core/publication';
import {
  type Channel,
  OPEN_AUDIENCE,
  type OriginalFile,
  PLAIN_TREATMENT,
  type Pull,
} from '@pullbook/core/pull';
import type { Prediction } from '@pullbook/core/shop';
import type { RunningOrder, Trial } from '@pullbook/core/trial';
import { hashOfBytes } from '../originals.ts';

export const AT = '2026-03-14T10:42:00+01:00';

export const engine: Engine = { id: 'engine', name: 'Six', buildRevision: '2', notes: '', invented: true };

export const kit: Package = {
  id: 'kit',
  name: 'Supercharger kit',
  covers: ['supercharger', 'drive'],
  invented: true,
};

export function combination(id: string, bore = '96 mm', madeFromId: string | null = null): Combination {
  const read = readSheet({
    schemaVersion: 1,
    name: `Combination ${id}`,
    shortBlock: { bore, stroke: '88 mm' },
  });
  if (!read.ok) throw new Error(read.remarks[0]!.message);
  return {
    id,
    engineId: engine.id,
    name: read.value.name,
    sheet: read.value,
    revision: 1,
    madeFromId,
    packageIds: madeFromId === null ? [] : [kit.id],
    createdAt: AT,
    invented: true,
  };
}

export function channel(meaning: Channel['meaning'], values: ArrayLike<number>): Channel {
  const kind = meaning === 'torque' ? 'torque' : 'engineSpeed';
  const unit = meaning === 'torque' ? 'N·m' : 'r/min';
  return {
    meaning,
    name: `${meaning} (°)`,
    unit,
    kind,
    values: Float64Array.from(values),
    origin: 'measured',
  };
}

export function pull(id: string, fields: Partial<Pull> = {}): Pull {
  return {
    id,
    name: `Pull ${id}`,
    combinationId: null,
    setUpId: null,
    sessionId: null,
    orderInSession: null,
    recordedAt: AT,
    cell: null,
    operator: null,
    form: 'curve',
    channels: [channel('engineSpeed', [2000, 2500, 3000]), channel('torque', [300.25, Number.NaN, 330])],
    summary: null,
    weather: null,
    carried: { standard: 'observed', factor: 1 },
    sweep: { momentOfInertia: null, inertiaCompensated: 'unknown' },
    tune: {},
    places: {},
    notes: [],
    events: [],
    outcome: 'completed',
    treatment: PLAIN_TREATMENT,
    audience: OPEN_AUDIENCE,
    origin: 'measured',
    fileHash: null,
    invented: true,
    ...fields,
  };
}

export function fileOf(text: string, name = 'pull.csv'): { file: OriginalFile; bytes: Uint8Array } {
  const bytes = new TextEncoder().encode(text);
  const file = { hash: hashOfBytes(bytes), name, byteLength: bytes.length, addedAt: AT, mapping: null };
  return { file, bytes };
}

export function trial(id: string, fields: Partial<Trial> = {}): Trial {
  return {
    id,
    question: 'What does the longer cam add at the same pulley?',
    kind: 'comparison',
    combinations: [],
    pulls: [],
    correction: 'sae-j1349',
    averagesWindowRpm: null,
    remark: '',
    audience: OPEN_AUDIENCE,
    createdAt: AT,
    invented: true,
    ...fields,
  };
}

export const planOf = (notes: string): TrialPlan => ({
  gainRatio: 0.02,
  odds: 0.8,
  pulls: [{ key: 'A' }, { key: 'B' }],
  looksAt: [2],
  stopCriteria: null,
  notes,
});

export const compressorMap = (id: string, fields: Partial<CompressorMap> = {}): CompressorMap => ({
  id,
  name: `Map ${id}`,
  form: 'points',
  reference: { pressure: 100_000, temperature: 298.15 },
  geometry: { wheelExitDiameter: 0.105, wheelInletDiameter: null, blades: 16, backsweep: 0.52 },
  points: [
    { flow: 0.2, pressureRatio: 1.4, speedRpm: 40_000, efficiency: 0.72 },
    { flow: 0.3, pressureRatio: 1.3, speedRpm: 40_000, efficiency: null },
  ],
  leftEnd: 'surge',
  origin: 'data sheet',
  notes: '',
  invented: true,
  createdAt: AT,
  ...fields,
});

export const prediction = (basis: string, trialId: string): Prediction => ({
  id: `prediction ${basis}`,
  trialId,
  key: 'B',
  what: 'meanGain',
  value: 0.02,
  low: 0.01,
  high: 0.03,
  basis,
  at: AT,
});

export const publication = (id: string, trialId: string, fields: Partial<Publication> = {}): Publication => ({
  id,
  trialId,
  question: 'What does the longer cam add at the same pulley?',
  sentence: 'B makes 3.0 % more.',
  kinds: ['still', 'report'],
  files: [{ name: 'answer.png', kind: 'still', bytes: 120_000, sha256: 'ab'.repeat(32) }],
  pullIds: [],
  correction: 'sae-j1349',
  figures: [
    {
      id: 'peakPower',
      key: 'B',
      kind: 'power',
      value: 370_123.456,
      low: 368_000,
      high: null,
      engineSpeedRpm: 6450,
      units: 'us',
    },
  ],
  privateToo: false,
  links: [],
  at: AT,
  ...fields,
});

export const orderOf = (title: string): RunningOrder => ({
  steps: [{ id: 'asked', isShown: true, title, seconds: 4 }],
  speed: 1.5,
});
