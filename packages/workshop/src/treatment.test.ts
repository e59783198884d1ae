import { defaultRecipe, PLAIN_TREATMENT } from '@pullbook/core/pull';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { amendPull } from './amend-pull.ts';
import { type PullDetailsText, pullDetailsFromText } from './edge/pull-details.ts';
import { importFile, previewImport } from './import-file.ts';
import { pullPageOf } from './pull-pages.ts';
import { viewsOf } from './pull-views.ts';
import { addSummaryPull } from './summary-pull.ts';
import { temporaryBook } from './testing/temporary-book.ts';

const NOW = '2026-03-14T10:00:00Z';
const US = { units: 'us', decimalMark: '.' } as const;

/** A sweep of 300 rpm a second from 3,000 to 6,000 rpm, 20 rows a second: a row every 15 rpm. */
const sweptFile = (scale = 1): Uint8Array => {
  const rows = Array.from({ length: 201 }, (_, row) => row / 20);
  const line = (time: number): string =>
    [time.toFixed(2), 3000 + 300 * time, scale * (300 + 5 * time), (0.9 - 0.01 * time).toFixed(4)].join(',');
  return new TextEncoder().encode(
    `Time (s),Speed (rpm),Torque (N·m),Lambda (λ)\n${rows.map(line).join('\n')}\n`,
  );
};

let made: Awaited<ReturnType<typeof temporaryBook>>;
beforeAll(async () => {
  made = await temporaryBook();
});
afterAll(() => made.remove());

const detailsOf = (text: PullDetailsText) => {
  const read = pullDetailsFromText(text, NOW);
  if (!read.ok) throw new Error(read.remarks[0]!.message);
  return read.value;
};
const put = (name: string, scale: number, text: PullDetailsText) =>
  importFile(made.book, { name, bytes: sweptFile(scale), details: detailsOf(text) });
const amend = (name: string, text: PullDetailsText) =>
  amendPull(made.book, name, detailsOf(text), 'read it better');
const stored = async (name: string) =>
  (await made.book.pull((await made.book.pullHeads()).find((one) => one.name === name)!.id))!;
const firstCode = (result: { remarks: { code: string }[] }) => result.remarks[0]?.code;

describe('a pull keeps how it is read', () => {
  test('from the import on, and its figures are read so', async () => {
    const report = await put('a.csv', 1, {
      treatment: { lagsS: { lambda: 0.5 }, windowRpm: [4000, 5000], binWidthRpm: 100 },
      events: [{ engineSpeed: '4500 rpm', text: 'a pop' }],
    });
    expect(report.ok && report.value.pulls[0]).toMatchObject({
      treatment: { lagsS: { lambda: 0.5 }, windowRpm: [4000, 5000], binWidthRpm: 100, addInertia: false },
      windowRpm: [4005, 4995],
      peakPowerRpm: 4995,
    });
    expect((await stored('a')).events).toEqual([{ engineSpeedRpm: 4500, text: 'a pop' }]);
    const page = await pullPageOf(made.book, 'a', US);
    expect(page.ok && page.value.treatment).toEqual({
      lagsS: { lambda: 0.5 },
      windowRpm: [4000, 5000],
      binWidthRpm: 100,
      addInertia: false,
    });
  });

  test('an amendment adds to it, takes away from it, is logged, and every view is made anew', async () => {
    const peakOf = async () => {
      const [view] = await viewsOf(made.book, [await stored('a')], defaultRecipe('observed'));
      return view!.peakPower!.atRpm;
    };
    expect(await peakOf()).toBe(4995);
    const before = await stored('a');
    expect((await amend('a', { treatment: { lagsS: { torque: 0.1, lambda: 0 } } })).ok).toBe(true);
    expect((await stored('a')).treatment.lags).toEqual({ torque: 0.1 });
    await amend('a', {
      treatment: { lagsS: { torque: 0 }, windowRpm: null, binWidthRpm: null },
      events: [{ text: 'belt dusty' }],
    });
    const after = await stored('a');
    expect(after.treatment).toEqual(PLAIN_TREATMENT);
    expect(after.events).toHaveLength(2);
    expect(after.channels).toEqual(before.channels);
    expect(await peakOf()).toBeGreaterThan(5900);
    expect((await made.book.log()).at(-1)).toMatchObject({
      act: 'pull amended',
      reason: 'read it better',
      before: { treatment: { lags: { torque: 0.1 }, windowRpm: [4000, 5000] } },
      after: { treatment: PLAIN_TREATMENT },
    });
  });

  test('a lag needs its channel; a refused amendment leaves nothing behind', async () => {
    const setUps = await made.book.setUps();
    const wrong = await amend('a', { setUp: 'second', treatment: { lagsS: { oilPressure: 0.2 } } });
    expect(firstCode(wrong)).toBe('lag-of-no-channel');
    expect(wrong.remarks[0]!.message).toMatch(
      /no channel of oil pressure.*It has: engineSpeed, torque, lambda/,
    );
    expect(await made.book.setUps()).toEqual(setUps);
    const imported = await put('b.csv', 1.1, { treatment: { lagsS: { oilPressure: 0.2 } } });
    expect(imported.ok && imported.value.remarks.map((one) => one.code)).toContain('lag-without-channel');
  });

  test('inertia is only added where it is known and not inside already', async () => {
    expect(firstCode(await amend('a', { treatment: { addInertia: true } }))).toBe('inertia-not-known');
    const half = await amend('a', { momentOfInertia: '0.4 kg·m²', treatment: { addInertia: true } });
    expect(half.remarks[0]!.message).toMatch(/whether the figures have the inertia torque already/);
    const inside = { momentOfInertia: '0.4 kg·m²', inertiaCompensated: 'yes' } as const;
    expect(firstCode(await amend('a', { ...inside, treatment: { addInertia: true } }))).toBe('inertia-twice');
    const preview = await previewImport(null, {
      name: 'c.csv',
      bytes: sweptFile(1.2),
      details: detailsOf({ treatment: { addInertia: true } }),
    });
    expect(firstCode(preview)).toBe('inertia-not-known');

    // What is known of the sweep comes piece by piece, and each leaves the other standing.
    await amend('a', { momentOfInertia: '0.4 kg·m²' });
    const asRead = (await viewsOf(made.book, [await stored('a')], defaultRecipe('observed')))[0]!;
    expect((await amend('a', { inertiaCompensated: 'no', treatment: { addInertia: true } })).ok).toBe(true);
    expect((await stored('a')).sweep).toEqual({ momentOfInertia: 0.4, inertiaCompensated: 'no' });
    const added = (await viewsOf(made.book, [await stored('a')], defaultRecipe('observed')))[0]!;
    const torqueAt4500 = (view: typeof added) =>
      view.curve!.channels.get('torque')![view.curve!.engineSpeedRpm.indexOf(4500)]!;
    // T = I · 2π/60 · dn/dt = 0.4 · 2π/60 · 300 = 12.566 N·m, by hand.
    expect(torqueAt4500(added) - torqueAt4500(asRead)).toBeCloseTo(12.566, 2);
  });

  test('a remembered peak takes events and no treatment', async () => {
    const summary = { peakPower: '300 hp' };
    const treatment = await addSummaryPull(made.book, {
      summary,
      origin: 'remembered',
      details: detailsOf({ treatment: { windowRpm: [3000, 4000] } }),
    });
    expect(firstCode(treatment)).toBe('treatment-of-a-summary');
    const plain = await addSummaryPull(made.book, {
      summary,
      origin: 'remembered',
      details: detailsOf({ name: 'Peak', events: [{ text: 'it rained' }] }),
    });
    expect(plain.ok).toBe(true);
    expect(firstCode(await amend('Peak', { treatment: { binWidthRpm: 100 } }))).toBe(
      'treatment-of-a-summary',
    );
    const page = await pullPageOf(made.book, 'Peak', US);
    expect(page.ok && page.value).toMatchObject({ channelMeanings: [], events: ['it rained'] });
  });
});
