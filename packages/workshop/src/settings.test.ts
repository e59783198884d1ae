import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { FIRST_SETTINGS } from './edge/setting-readers.ts';
import { importFile } from './import-file.ts';
import { markFromBytes } from './mark.ts';
import { pullPageOf } from './pull-pages.ts';
import { changeSettings, settingsOf, settingsReport } from './settings.ts';
import { stepTestFile, temporaryBook } from './testing/temporary-book.ts';

let place: Awaited<ReturnType<typeof temporaryBook>>;
beforeEach(async () => {
  place = await temporaryBook();
});
afterEach(() => place.remove());

const said = async (change: Record<string, unknown>) => {
  const result = await changeSettings(place.book, change);
  return result.ok ? 'kept' : result.remarks.map(({ message }) => message).join('\n');
};

describe('settings of the shop', () => {
  test('a new book has the program’s own; what is kept is found again, typed or as text', async () => {
    expect(await settingsOf(place.book)).toEqual(FIRST_SETTINGS);
    expect(await said({ units: 'SI', decimalMark: 'comma', binWidthRpm: '200 rpm' })).toBe('kept');
    expect(await said({ correction: 'iso-1585', letterKeys: 'off', cell: '  Cell   1 ' })).toBe('kept');
    expect(await settingsOf(place.book)).toMatchObject({
      units: 'si',
      decimalMark: ',',
      binWidthRpm: 200,
      correction: 'iso-1585',
      letterKeys: false,
      cell: 'Cell 1',
    });
    expect(await said({ shopContact: ' 12 Dairy Road ' })).toBe('kept');
    expect((await settingsOf(place.book)).shopContact).toBe('12 Dairy Road');
    expect(await said({ shopContact: 'x'.repeat(161) })).toContain('at most 160 letters');
    expect(await said({ binWidthRpm: 'adapted', cell: 'none', units: 'us' })).toBe('kept');
    expect(await settingsOf(place.book)).toMatchObject({ binWidthRpm: null, cell: null, units: 'us' });
  });

  test('what cannot be is refused in words, and then nothing of the change is kept', async () => {
    expect(await said({ units: 'si', binWidthRpm: '5 rpm' })).toBe(
      'Setting binWidthRpm: "5 rpm" cannot stand there. Accepted: 10 to 1000 rpm with the unit, or adapted.',
    );
    expect((await settingsOf(place.book)).units).toBe('us');
    expect(await said({ correction: 'sae' })).toContain('Accepted: observed, sae-j1349');
    expect(await said({ unit: 'si' })).toContain('There is no setting "unit". Nearest: units.');
    expect(await said({ backupFolder: 'next door' })).toContain('a whole path');
    expect(await said({ theme: 'toString' })).toContain('system, light, dark');
    expect(await said({})).toContain('No setting was named');
  });

  test('what another version kept and this one cannot read stands as the program’s own', async () => {
    await place.book.changeSettings({ units: 'furlongs', mark: { base64: 7 } });
    expect(await settingsOf(place.book)).toMatchObject({ units: 'us', mark: null });
  });

  test('width and cell of the shop work on a pull, and are named', async () => {
    await changeSettings(place.book, { cell: 'Cell 1', correction: 'observed' });
    const imported = await importFile(place.book, { name: 'step.csv', bytes: stepTestFile() });
    if (!imported.ok) throw new Error(imported.remarks[0]?.message);
    expect(imported.value.remarks.map(({ code }) => code)).toContain('cell-of-shop');
    const [{ id } = { id: '' }] = imported.value.pulls;
    expect((await place.book.pull(id))!.cell).toBe('Cell 1');
    const page = await pullPageOf(place.book, id, { units: 'us', decimalMark: '.' });
    expect(page.ok && page.value.basis).toContain('observed');
  });
});

describe('a mark', () => {
  const svg = (inside: string, root = 'viewBox="0 0 300 100"') =>
    new TextEncoder().encode(`<svg xmlns="http://www.w3.org/2000/svg" ${root}>${inside}</svg>`);
  const refusal = (bytes: Uint8Array) => {
    const read = markFromBytes(bytes);
    return read.ok ? 'taken' : read.remarks[0]!.message;
  };

  test('a plain drawing is taken with its proportions, and its bytes leave only on demand', async () => {
    const bytes = svg('<defs><linearGradient id="a"/></defs><path fill="url(#a)" d="M0 0h9"/>');
    expect(markFromBytes(bytes)).toMatchObject({ ok: true, value: { width: 300, height: 100 } });
    expect(await said({ mark: { base64: Buffer.from(bytes).toString('base64') } })).toBe('kept');
    expect((await settingsReport(place.book)).mark).toEqual({
      mediaType: 'image/svg+xml',
      width: 300,
      height: 100,
      byteLength: bytes.byteLength,
    });
  });

  test.each([
    ['<script>1</script>', '<script>'],
    ['<svg:script xmlns:svg="x"/>', '<script>'],
    ['<path onload="1"/>', 'onload'],
    ['<g><foreignObject/></g>', '<foreignObject>'],
    ['<image href="https://elsewhere.example/x.png"/>', 'https://elsewhere.example/x.png'],
    ['<use xlink:href="other.svg#a"/>', 'other.svg#a'],
    ['<path style="fill:url(//elsewhere.example)"/>', 'elsewhere.example'],
    ['<style>@import "a.css"</style>', 'imports'],
    ['<style>@\\69mport "a.css"</style>', 'imports'],
    ['<path fill="java&#x73;cript:1"/>', 'runs'],
    ['<animate attributeName="href"/>', '<animate>'],
  ])('%s is refused by name', (inside, named) => {
    expect(refusal(svg(inside))).toContain(named);
  });

  test('entities, other bytes, no size and too much are refused', () => {
    expect(refusal(new TextEncoder().encode('<!DOCTYPE svg><svg viewBox="0 0 1 1"/>'))).toContain('entities');
    expect(refusal(new Uint8Array([0xff, 0xd8, 0xff]))).toContain('neither PNG nor SVG');
    expect(refusal(svg('', 'width="50%" height="50%"'))).toContain('without a size');
    expect(refusal(svg('', 'viewBox="0 0 2000 10"'))).toContain('10 times');
    expect(refusal(new Uint8Array(300_001))).toContain('Allowed: 300 kB');
    expect(refusal(new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]))).toContain('cut off');
  });
});
