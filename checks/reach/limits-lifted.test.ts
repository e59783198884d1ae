import type { WhatIsLeft } from '@pullbook/core/reach';
import { describe, expect, test } from 'vitest';
import { asked } from './ask.ts';
import { type InventedFile, inventedFile } from './invented-file.ts';

/** Limits that somebody else set are no limits here, so that the one that is moved is the one that binds. */
const NONE_BINDS = Object.fromEntries(
  [
    ...['tipSpeed', 'belt', 'surge', 'choke', 'injectors', 'pump', 'fuelLine', 'spark', 'fuelAndCompression'],
    ...['boost', 'pistonSpeed', 'cylinderPressure', 'rods', 'pistons', 'crankshaft', 'block', 'headClamping'],
    ...['ringGap', 'valveSpring', 'plugGap', 'cooler', 'impellerSpeed'],
  ].map((id) => [id, false]),
);

type Sections = Record<string, Record<string, string | number>>;

/** An invented engine whose drive alone is asked about. */
function fileWith(
  seed: number,
  { sections = {}, binds, parts = {} }: { sections?: Sections; binds: string[]; parts?: object },
): InventedFile {
  const file = inventedFile(seed);
  const combination = { ...file.combination };
  for (const [section, lines] of Object.entries(sections))
    combination[section] = { ...combination[section], ...lines };
  const binding = { ...NONE_BINDS, ...Object.fromEntries(binds.map((id) => [id, true])) };
  return {
    ...file,
    combination,
    reach: { without: ['supercharger', 'breathing'], parts: { ...parts, binding } },
  };
}

/** What is left in the supercharger of a file, by a search that was given no power. */
async function leftIn(file: InventedFile, boostCap?: string): Promise<WhatIsLeft> {
  const { answer } = await asked(JSON.stringify(file), {
    without: ['supercharger', 'cooler', 'fuel', 'breathing', 'speedLimit', 'stepUp'],
    mostChanges: 1,
    ...(boostCap === undefined ? {} : { boostCap }),
  });
  return answer.left[0]!;
}

describe('the smallest pulley by hand: crank pulley × step-up × (highest engine speed + over-rev) / limit of the impeller', () => {
  test.each([
    { seed: 3, crank: '165 mm', inMm: 165, stepUp: 3.6, limit: 6600, over: 200, most: 52_000 },
    { seed: 3, crank: '6.5 in', inMm: 165.1, stepUp: 3.45, limit: 7000, over: 350, most: 55_000 },
    { seed: 8, crank: '7.25 in', inMm: 184.15, stepUp: 3.25, limit: 7000, over: 0, most: 50_500 },
  ])(
    '$crank, $stepUp, $limit + $over r/min, $most r/min',
    async ({ seed, crank, inMm, stepUp, limit, over, most }) => {
      const byHand = (inMm * stepUp * (limit + over)) / most;
      const list = [-0.7, -0.2, 0.3, 0.8, 1.3].map((more) => ({
        diameter: `${(byHand + more).toFixed(3)} mm`,
        cost: 1,
      }));
      const file = fileWith(seed, {
        sections: {
          ignition: { engineSpeedLimit: `${limit} rpm`, overRevMargin: `${over} rpm` },
          drive: { crankPulleyDiameter: crank, blowerPulleyDiameter: `${(1.08 * byHand).toFixed(2)} mm` },
          supercharger: { stepUp: `${stepUp}`, maximumImpellerSpeed: `${most} rpm` },
        },
        binds: ['impellerSpeed'],
        parts: { blowerPulleys: list },
      });
      const left = await leftIn(file);
      expect(left.stoppedBy).toMatchObject({
        id: 'impellerSpeed',
        threshold: most,
        engineSpeedRpm: limit + over,
      });
      // A root is looked for: as near as a thousandth of a millimetre.
      expect(1000 * left.most.blowerPulleyDiameter!).toBeCloseTo(byHand, 2);
      // Of the list the next above that.
      expect(1000 * left.buyable!.blowerPulleyDiameter).toBeCloseTo(byHand + 0.3, 2);
    },
  );

  test('a toothed drive: no pulley of the list goes on it, and the ratio is the one worked by hand', async () => {
    const file = fileWith(5, {
      sections: {
        ignition: { engineSpeedLimit: '6500 rpm', overRevMargin: '150 rpm' },
        drive: { type: 'toothed belt', crankPulleyTeeth: 62, blowerPulleyTeeth: 33, beltRibs: 'unknown' },
        supercharger: { stepUp: '3.5', maximumImpellerSpeed: '48000 rpm' },
      },
      binds: ['impellerSpeed'],
    });
    const { answer } = await asked(JSON.stringify(file), { mostChanges: 1 });
    const [left] = answer.left;
    expect(left!.most.blowerPulleyDiameter).toBeNull();
    expect(left!.most.overallRatio / (48_000 / 6650)).toBeCloseTo(1, 4);
    expect(answer.rungs.flatMap(({ changes }) => changes).some(({ part }) => part === 'pulley')).toBe(false);
  });
});

describe('lifting the limit that binds changes the answer, and lowering it the other way', () => {
  test.each([
    [
      'impellerSpeed',
      'supercharger',
      'maximumImpellerSpeed',
      (by: number) => `${Math.round(50_000 * by)} rpm`,
    ],
    ['injectors', 'fuelSystem', 'injectorFlow', (by: number) => `${(6.3 * by).toFixed(3)} g/s`],
  ] as const)('%s on the sheet', async (id, section, field, at) => {
    const found: WhatIsLeft[] = [];
    for (const by of [0.92, 1, 1.08])
      found.push(await leftIn(fileWith(7, { sections: { [section]: { [field]: at(by) } }, binds: [id] })));
    expect(found.map(({ stoppedBy }) => stoppedBy?.id)).toEqual([id, id, id]);
    const [lower, as, higher] = found.map(({ most }) => most.peakPower.value);
    expect(lower!).toBeLessThan(0.985 * as!);
    expect(higher!).toBeGreaterThan(1.015 * as!);
  });

  test('the boost cap of the question', async () => {
    const found: WhatIsLeft[] = [];
    for (const cap of ['5 psi', '7 psi', '9 psi']) found.push(await leftIn(fileWith(7, { binds: [] }), cap));
    expect(found.map(({ stoppedBy }) => stoppedBy?.id)).toEqual(['boostCap', 'boostCap', 'boostCap']);
    const boost = found.map(({ curve }) => Math.max(...curve.boost!.value) / 6894.757);
    for (const [place, cap] of [5, 7, 9].entries()) expect(boost[place]!).toBeCloseTo(cap, 1);
    const [low, middle, high] = found.map(({ most }) => most.peakPower.value);
    expect(low!).toBeLessThan(middle!);
    expect(middle!).toBeLessThan(high!);
  });

  test('a target that the impeller keeps out of reach is reached with a stronger one, and the remedy says how strong', {
    timeout: 120_000,
  }, async () => {
    const at = async (limit: number) => {
      const file = fileWith(7, {
        sections: { supercharger: { maximumImpellerSpeed: `${limit} rpm` } },
        binds: ['impellerSpeed'],
      });
      const left = await leftIn(file);
      return { file, left };
    };
    const { drive, supercharger, ignition } = inventedFile(7).combination;
    const [crank, blower, stepUp, rpm] = [
      drive!.crankPulleyDiameter,
      drive!.blowerPulleyDiameter,
      supercharger!.stepUp,
      ignition!.engineSpeedLimit,
    ].map((text) => Number.parseFloat(`${text}`));
    const most = Math.round(1.08 * (crank! / blower!) * stepUp! * (rpm! + 200));
    const { file, left } = await at(most);
    const power = `${(1.04 * left.most.peakPower.value) / 1000} kW`;
    const without = ['fuel', 'cooler', 'speedLimit', 'supercharger', 'breathing', 'stepUp'];
    const refused = await asked(JSON.stringify(file), { power, without, mostChanges: 1 });
    expect(refused.answer.feasible).toBe(false);
    const remedy = [refused.answer.leastRemedy!, ...refused.answer.remedies].find(
      ({ what }) => what === 'impellerSpeed',
    )!;
    const lifted = Math.ceil(most * (1 + remedy.share) + 50);
    const reached = await asked(JSON.stringify((await at(lifted)).file), { power, without, mostChanges: 1 });
    expect(reached.answer.feasible).toBe(true);
    const tooLittle = Math.floor(most * (1 + 0.6 * remedy.share));
    const still = await asked(JSON.stringify((await at(tooLittle)).file), { power, without, mostChanges: 1 });
    expect(still.answer.feasible).toBe(false);
  });
});
