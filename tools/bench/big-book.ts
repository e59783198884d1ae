import { randomUUID } from 'node:crypto';
import { readSheet } from '@pullbook/core/combination';
import { type Channel, OPEN_AUDIENCE, PLAIN_TREATMENT, type Pull } from '@pullbook/core/pull';
import { absolutePressure, temperature } from '@pullbook/core/quantity';
import type { Trial } from '@pullbook/core/trial';
import { openBook } from '@pullbook/store';
import { listInBackground } from '@pullbook/workshop';

const COMBINATIONS = 200;
const TRIALS = 300;
const NODES = 26;

/** Pulls of a combination one after another, and of a day: two combinations after each other. */
const REPEATS = 5;
const A_DAY = 2 * REPEATS;

const SUPERCHARGER = {
  type: 'centrifugal',
  wheelExitDiameter: '124 mm',
  stepUp: '3.6',
  ratedFlow: '0.36 kg/s',
  ratedPressureRatio: '1.6',
  ratedSpeed: '46000 rpm',
};
const DRIVE = { type: 'ribbed belt', crankPulleyDiameter: '165 mm', blowerPulleyDiameter: '84 mm' };

/**
 * A book of so many invented pulls in a new folder: step tests and summaries by a rule, of 200 combinations over 20
 * engines, every second one supercharged, five of each one after another, two combinations a day, in 300 trials. Everything is read for the list, as a
 * server has done some minutes after its start.
 */
export async function makeBigBook(folder: string, pulls: number): Promise<{ trialId: string }> {
  const book = await openBook(folder, { create: { name: 'Big', invented: true } });
  for (let index = 0; index < COMBINATIONS / 10; index += 1) {
    const engine = {
      id: `engine-${index}`,
      name: `Engine ${index}`,
      buildRevision: '1',
      notes: '',
      invented: true,
    };
    await book.addEngine(engine);
  }
  for (let index = 0; index < COMBINATIONS; index += 1) await book.addCombination(combinationOf(index));
  for (let from = 0; from < pulls; from += 500) {
    const lot = Array.from({ length: Math.min(500, pulls - from) }, (_, index) => pullOf(from + index));
    await book.addPulls(lot);
  }
  let trialId = '';
  for (let index = 0; index < TRIALS; index += 1) {
    trialId = randomUUID();
    await book.addTrial(trialOf(index, trialId, pulls));
  }
  await listInBackground(book);
  await book.close();
  return { trialId };
}

function combinationOf(index: number) {
  const boosted = isBoosted(index) ? { supercharger: SUPERCHARGER, drive: DRIVE } : {};
  const sheet = readSheet({
    schemaVersion: 1,
    name: `Combination ${index}`,
    shortBlock: { cylinders: '6', bore: '96 mm', stroke: '88 mm' },
    ...boosted,
  });
  if (!sheet.ok) throw new Error(sheet.remarks[0]!.message);
  return {
    id: `combination-${index}`,
    engineId: `engine-${Math.floor(index / 10)}`,
    name: sheet.value.name,
    sheet: sheet.value,
    revision: 1,
    madeFromId: null,
    packageIds: [],
    createdAt: '2026-03-14T10:42:00Z',
    invented: true,
  };
}

function pullOf(index: number): Pull {
  const speeds = Float64Array.from({ length: NODES }, (_, row) => 2000 + 180 * row);
  const combination = Math.floor(index / REPEATS) % COMBINATIONS;
  const level =
    (isBoosted(combination) ? 1.4 : 1) * (1 + (combination % 97) / 300) * (1 + 0.004 * Math.sin(7 * index));
  const torque = speeds.map((rpm) => level * (400 - ((rpm - 4200) / 300) ** 2));
  const date = Math.floor(index / A_DAY);
  const day = new Date(Date.UTC(2006, 0, 1 + date)).toISOString().slice(0, 10);
  const isSummary = index % 10 === 9;
  return {
    id: `pull-${index}`,
    name: `Run ${index}`,
    combinationId: index % 50 === 0 ? null : `combination-${combination}`,
    setUpId: null,
    sessionId: null,
    orderInSession: null,
    recordedAt: `${day}T${10 + (index % A_DAY)}:42:00+01:00`,
    cell: date % 3 === 0 ? 'North cell' : 'South cell',
    operator: ['day shift', 'night shift'][index % 2]!,
    form: isSummary ? 'summary' : 'curve',
    channels: isSummary
      ? []
      : [
          {
            meaning: 'engineSpeed',
            name: 'rpm',
            unit: 'r/min',
            kind: 'engineSpeed',
            values: speeds,
            origin: 'measured',
          },
          {
            meaning: 'torque',
            name: 'torque',
            unit: 'N·m',
            kind: 'torque',
            values: torque,
            origin: 'measured',
          },
          ...(isBoosted(combination) ? [boostOver(speeds)] : []),
        ],
    summary: isSummary
      ? { peakPower: 200_000 + index, peakPowerRpm: 6200, peakTorque: null, peakTorqueRpm: null }
      : null,
    weather: {
      pressure: absolutePressure(98_000 + 20 * (date % 50)),
      temperature: temperature(293 + (date % 12)),
      humidity: null,
      altitude: null,
    },
    carried: { standard: 'observed', factor: 1 },
    sweep: { momentOfInertia: null, inertiaCompensated: 'unknown' },
    tune: { sparkAdvance: `${24 + (combination % 9)}°` },
    places: {},
    notes: [{ at: `${day}T11:00:00Z`, text: `belt ${index % 13}, oil as before` }],
    events: [],
    outcome: index % 40 === 7 ? 'aborted' : 'completed',
    treatment: PLAIN_TREATMENT,
    audience: OPEN_AUDIENCE,
    origin: isSummary ? 'remembered' : 'measured',
    fileHash: null,
    invented: true,
  };
}

const isBoosted = (combination: number): boolean => combination % 2 === 1;

const boostOver = (speeds: Float64Array): Channel => ({
  meaning: 'boost',
  name: 'boost',
  unit: 'kPa',
  kind: 'gaugePressure',
  values: speeds.map((rpm) => 48_000 * (rpm / 6500) ** 2),
  origin: 'measured',
});

/** Two neighbouring combinations of one engine, with ten pulls each. */
function trialOf(index: number, id: string, pulls: number): Trial {
  const first = (index % 20) * 10 + 2 * (index % 5);
  const member = (key: string, combination: number) =>
    Array.from(
      { length: 2 * REPEATS },
      (_, round) => REPEATS * (combination + COMBINATIONS * Math.floor(round / REPEATS)) + (round % REPEATS),
    )
      .filter((pull) => pull < pulls && pull % 50 !== 0)
      .map((pull) => ({ pullId: `pull-${pull}`, key, role: 'counted' as const, reason: null }));
  return {
    id,
    question: `What does change ${index} add?`,
    kind: 'comparison',
    combinations: [
      { key: 'A', combinationId: `combination-${first}`, shortName: 'before' },
      { key: 'B', combinationId: `combination-${first + 1}`, shortName: 'after' },
    ],
    pulls: [...member('A', first), ...member('B', first + 1)],
    correction: 'observed',
    averagesWindowRpm: null,
    remark: '',
    audience: OPEN_AUDIENCE,
    createdAt: '2026-03-14T10:42:00Z',
    invented: true,
  };
}
