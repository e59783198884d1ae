import { createHash } from 'node:crypto';
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { parse as parseYaml } from 'yaml';
import { DEMO_SEED } from './demo-seed.ts';
import { demoScenario } from './scenario.ts';

const scenario = demoScenario();
const textOf = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
const hashOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

/** The table of a file by column title, read by a reader that knows nothing of Pullbook. */
function tableOf(ref: string): { titles: string[]; column: (title: string) => number[] } {
  const file = scenario.files.find((candidate) => candidate.pull.ref === ref)!;
  const text = textOf(file.bytes);
  const delimiter = text.includes(';') ? ';' : ',';
  const records: string[][] = parse(text, { bom: true, delimiter, relax_column_count: true });
  const header = records.findIndex((record) => record[0]?.startsWith('Time'));
  const titles = records[header]!;
  const rows = records.slice(header + 1).filter((record) => /^\d/.test(record[0]!));
  return {
    titles,
    column(title) {
      const index = titles.findIndex((candidate) => candidate.startsWith(title));
      return rows.map((row) => Number(row[index]!.replace(',', '.')));
    },
  };
}

/** Mean of a column in rows whose speed lies within 25 r/min of the one asked for, the sweep only. */
function near(ref: string, title: string, engineSpeedRpm: number): number {
  const table = tableOf(ref);
  const speed = table.column('Engine speed');
  const throttle = table.column('Throttle');
  const values = table.column(title);
  const kept = values.filter((_, row) => Math.abs(speed[row]! - engineSpeedRpm) <= 25 && throttle[row]! > 99);
  return kept.reduce((sum, value) => sum + value, 0) / kept.length;
}

describe('bytes', () => {
  test('the same seed gives the same bytes, another seed others', () => {
    const again = demoScenario(DEMO_SEED);
    const other = demoScenario(7);
    for (const [index, file] of scenario.files.entries()) {
      expect(hashOf(again.files[index]!.bytes)).toBe(hashOf(file.bytes));
      expect(hashOf(other.files[index]!.bytes)).not.toBe(hashOf(file.bytes));
    }
  });

  test('no two files are alike', () => {
    expect(new Set(scenario.files.map((file) => hashOf(file.bytes))).size).toBe(12);
    expect(new Set(scenario.files.map((file) => file.name)).size).toBe(12);
  });

  test('every file is a full table of numbers for an ordinary reader', () => {
    for (const { pull } of scenario.files) {
      const table = tableOf(pull.ref);
      for (const title of table.titles) {
        const values = table.column(title);
        expect(values.length).toBeGreaterThan(600);
        expect(values.every(Number.isFinite)).toBe(true);
      }
    }
  });

  test('layouts differ: comma and semicolon, decimal comma, N·m, a row of units', () => {
    const texts = scenario.files.map((file) => textOf(file.bytes));
    expect(texts.some((text) => text.includes('Torque [lb-ft],'))).toBe(true);
    expect(texts.some((text) => text.includes('Torque (N·m),'))).toBe(true);
    expect(texts.some((text) => /\n\d+,\d+;/.test(text))).toBe(true);
    expect(texts.some((text) => text.includes('\ns,rpm,lb-ft,'))).toBe(true);
  });
});

describe('the story in the figures', () => {
  const toHp = (lbFt: number, rpm: number) => (lbFt * rpm) / 5252.113;

  test('naturally aspirated: near 328 hp at 6,500 in ordinary air, its highest figure before the top', () => {
    const top = toHp(near('pull-1', 'Torque', 6500), 6500);
    expect(top).toBeGreaterThan(318);
    expect(top).toBeLessThan(332);
    expect(toHp(near('pull-1', 'Torque', 6250), 6250)).toBeGreaterThan(top);
  });

  test('supercharged: near 496 hp less what the day takes, still climbing, about 10.4 psi', () => {
    const top = toHp(near('pull-4', 'Torque', 6500), 6500);
    expect(top).toBeGreaterThan(475);
    expect(top).toBeLessThan(500);
    expect(toHp(near('pull-4', 'Torque', 6300), 6300)).toBeLessThan(top);
    expect(Math.abs(near('pull-4', 'Boost', 6500) - 10.4)).toBeLessThan(0.15);
  });

  test('the longer cam gives more at the top for about 1.1 psi less', () => {
    const gain = toHp(near('pull-8', 'Torque', 6500) - near('pull-4', 'Torque', 6500), 6500);
    expect(gain).toBeGreaterThan(28);
    expect(gain).toBeLessThan(52);
    expect(Math.abs(near('pull-8', 'Boost', 6500) - 9.3)).toBeLessThan(0.15);
  });

  test('lambda, temperatures and oil pressure stay where such engines are', () => {
    expect(near('pull-1', 'Lambda', 6000)).toBeCloseTo(0.87, 1);
    expect(near('pull-4', 'Lambda', 6000)).toBeCloseTo(0.79, 1);
    expect(near('pull-4', 'Oil temperature', 6000)).toBeGreaterThan(175);
    expect(near('pull-8', 'Oil temperature', 6000)).toBeGreaterThan(
      near('pull-4', 'Oil temperature', 6000) + 6,
    );
    expect(near('pull-4', 'Charge temperature', 6500)).toBeLessThan(130);
    expect(near('pull-4', 'Oil pressure', 6500)).toBeGreaterThan(65);
  });

  test('the rejected pull ends early and the loose plug shows once', () => {
    expect(Math.max(...tableOf('pull-6').column('Engine speed'))).toBeLessThan(5650);
    const torque = tableOf('pull-2').column('Torque');
    const jumps = torque.filter((value, row) => row > 150 && row < 700 && value > torque[row - 1]! * 1.1);
    expect(jumps).toHaveLength(1);
  });

  test('the smaller pulley gives about an eleventh more boost and a few per cent more power, still climbing', () => {
    const boost = near('pull-10', 'Boost', 6500);
    // Ideal head goes with speed squared (affinity laws of turbomachines): 5 % more speed would be 10.3 % more head, some
    // 12 % more boost at a pressure ratio of 1.8; the belt and the fuller engine take part of it away.
    const without = near('pull-4', 'Boost', 6500);
    expect(boost / without).toBeGreaterThan(1.07);
    expect(boost / without).toBeLessThan(1.12);
    const gain = near('pull-10', 'Torque', 6400) / near('pull-4', 'Torque', 6400) - 1;
    expect(gain).toBeGreaterThan(0.015);
    expect(gain).toBeLessThan(0.05);
    const charge =
      near('pull-10', 'Charge temperature', 6400) - near('pull-10', 'Inlet air temperature', 6400);
    const chargeBefore =
      near('pull-4', 'Charge temperature', 6400) - near('pull-4', 'Inlet air temperature', 6400);
    expect(charge).toBeGreaterThan(chargeBefore + 2);
    expect(near('pull-10', 'Fuel flow', 6400)).toBeGreaterThan(near('pull-4', 'Fuel flow', 6400) * 1.03);
  });

  test('the belt’s slip, the spark and the heat behind it stand nowhere', () => {
    const written = JSON.stringify([
      scenario.combinations,
      scenario.setUps,
      scenario.sessions,
      scenario.maps,
    ]);
    expect(written).not.toMatch(/slip: \{|retard|knock/);
    const pulls = scenario.files.filter(({ pull }) => pull.combinationRef === 'blown-smaller-pulley');
    expect(pulls).toHaveLength(3);
    for (const { pull } of pulls) {
      expect(JSON.stringify(pull.notes)).not.toMatch(/slip|retard|knock/);
      expect(pull.tune).toEqual(scenario.files.find(({ pull: one }) => one.ref === 'pull-4')!.pull.tune);
      expect(tableOf(pull.ref).titles.join()).not.toMatch(/Impeller|Discharge/);
    }
  });

  test('the impeller stays below its limit at the rev limit and what it may be overrun by, without slip', () => {
    for (const { sheetText } of scenario.combinations) {
      const sheet = parseYaml(sheetText);
      if (sheet.supercharger === undefined) continue;
      const number = ({ value }: { value: unknown }) => Number.parseFloat(String(value));
      const turns =
        (number(sheet.drive.crankPulleyDiameter) / number(sheet.drive.blowerPulleyDiameter)) *
        number(sheet.supercharger.stepUp);
      const engine = number(sheet.ignition.engineSpeedLimit) + number(sheet.ignition.overRevMargin);
      expect(engine * turns).toBeLessThan(number(sheet.supercharger.maximumImpellerSpeed));
    }
  });

  test('the map is one: pressure ratio falls right of its peak, no efficiency beyond one, and sheets name it', () => {
    const map = scenario.maps[0]!;
    for (const speed of new Set(map.points.map(({ speedRpm }) => speedRpm))) {
      const line = map.points.filter(({ speedRpm }) => speedRpm === speed);
      for (const [index, point] of line.entries()) {
        const next = line[index + 1];
        if (next === undefined) continue;
        expect(next.flow).toBeGreaterThan(point.flow);
        expect(next.pressureRatio).toBeLessThanOrEqual(point.pressureRatio);
      }
      expect(Math.max(...line.map(({ efficiency }) => efficiency!))).toBeLessThan(0.8);
    }
    const named = scenario.combinations.map(({ sheetText }) => parseYaml(sheetText).supercharger?.map?.value);
    expect(new Set(named.filter(Boolean))).toEqual(new Set([map.name]));
  });

  test('another seed tells the same story', () => {
    const other = demoScenario(99);
    expect(other.files.map((file) => file.name)).toEqual(scenario.files.map((file) => file.name));
    expect(other.trials).toEqual(scenario.trials);
  });
});

describe('what is tied together', () => {
  const combinationRefs = scenario.combinations.map((combination) => combination.ref);
  const pullRefs = [
    ...scenario.files.map((file) => file.pull.ref),
    ...scenario.summaries.map((item) => item.ref),
  ];

  test('every reference leads somewhere', () => {
    const setUps = new Map(scenario.setUps.map((setUp) => [setUp.ref, setUp]));
    for (const { pull } of scenario.files) {
      expect(setUps.get(pull.setUpRef)?.combinationRef).toBe(pull.combinationRef);
      expect(scenario.sessions.map((session) => session.ref)).toContain(pull.sessionRef);
    }
    for (const trial of scenario.trials) {
      const keys = trial.combinations.map((combination) => combination.key);
      for (const { combinationRef } of trial.combinations) expect(combinationRefs).toContain(combinationRef);
      for (const { pullRef, key } of trial.pulls) {
        expect(pullRefs).toContain(pullRef);
        const meant = trial.combinations[keys.indexOf(key)]!.combinationRef;
        expect(scenario.files.find((file) => file.pull.ref === pullRef)!.pull.combinationRef).toBe(meant);
      }
    }
    for (const combination of scenario.combinations) {
      expect(scenario.engines.map((engine) => engine.ref)).toContain(combination.engineRef);
      if (combination.madeFromRef) expect(combinationRefs).toContain(combination.madeFromRef);
    }
  });

  test('every prediction was made before the pulls of its combination, and a plan names its keys', () => {
    for (const { trialRef, key, at, low, value, high } of scenario.predictions) {
      const trial = scenario.trials.find((one) => one.ref === trialRef)!;
      expect(trial.combinations.map((one) => one.key)).toContain(key);
      const pulled = trial.pulls.filter((one) => one.key === key).map(({ pullRef }) => pullRef);
      for (const { pull } of scenario.files.filter((file) => pulled.includes(file.pull.ref)))
        expect(at.localeCompare(pull.recordedAt)).toBeLessThan(0);
      expect(low < value && value < high).toBe(true);
    }
    for (const { plan, combinations, pulls } of scenario.trials) {
      for (const { key } of plan?.pulls ?? []) expect(combinations.map((one) => one.key)).toContain(key);
      if (plan !== undefined) expect(plan.pulls.length).toBeGreaterThan(pulls.length);
    }
    for (const { pullRef } of scenario.silenced) expect(pullRefs).toContain(pullRef);
  });

  test('the baseline of the third question was never pulled', () => {
    const third = scenario.trials[2]!;
    expect(third.pulls.some((pull) => pull.key === 'A')).toBe(false);
    expect(
      scenario.files.some((file) => file.pull.combinationRef === third.combinations[0]!.combinationRef),
    ).toBe(false);
  });

  test('each sheet is YAML with its name, and a rejected pull has its reason', () => {
    for (const combination of scenario.combinations) {
      expect(parseYaml(combination.sheetText)).toMatchObject({ schemaVersion: 1, name: combination.name });
    }
    for (const pull of scenario.trials.flatMap((trial) => trial.pulls)) {
      expect(pull.role === 'rejected' ? pull.reason : 'a reason').toBeTruthy();
    }
  });
});
