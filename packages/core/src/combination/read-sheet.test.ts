import { describe, expect, test } from 'vitest';
import type { Result } from '../remark/index.ts';
import type { CombinationSheet } from './model.ts';
import { readSheet } from './read-sheet.ts';

const named = (sections: object) => readSheet({ schemaVersion: 1, name: 'six', ...sections });

function refusals(read: Result<CombinationSheet>): string[] {
  expect(read.ok).toBe(false);
  return read.remarks.filter(({ level }) => level === 'refusal').map(({ message }) => message);
}

describe('what a sheet accepts', () => {
  test('text with unit, value with origin, unknown; the text is kept as entered', () => {
    const read = named({
      shortBlock: {
        cylinders: 6,
        bore: '3,78 in',
        stroke: { value: '88 mm', origin: 'measured' },
        rodLength: 'unknown',
      },
    });
    expect(read.remarks).toEqual([]);
    const block = read.ok ? read.value.sections.shortBlock! : {};
    expect(block.cylinders).toEqual({ text: '6', value: 6, kind: 'count', origin: 'not stated' });
    expect(block.bore).toMatchObject({ text: '3,78 in', kind: 'length', origin: 'not stated' });
    expect(block.bore!.value).toBeCloseTo(3.78 * 0.0254, 12);
    expect(block.stroke).toEqual({ text: '88 mm', value: 0.088, kind: 'length', origin: 'measured' });
    expect(block.rodLength).toEqual({ text: 'unknown', value: null, kind: 'length', origin: 'not stated' });
  });

  test('a ratio as 9.6 and as 9.6:1', () => {
    for (const text of [9.6, '9.6', '9.6:1', '9,6 : 1']) {
      const read = named({ shortBlock: { compressionRatio: text } });
      expect(read.ok && read.value.sections.shortBlock!.compressionRatio!.value).toBe(9.6);
    }
  });

  test('injector flow as a mass flow and as a volume flow', () => {
    const kind = (text: string) => {
      const read = named({ fuelSystem: { injectorFlow: text } });
      return read.ok && read.value.sections.fuelSystem!.injectorFlow!.kind;
    };
    expect(kind('42 lb/h')).toBe('massFlow');
    expect(kind('440 cc/min')).toBe('volumeFlow');
  });

  test('a sheet without a bore, an empty field, an empty section', () => {
    const read = named({ shortBlock: { stroke: '88 mm', bore: null }, heads: null });
    expect(read.remarks).toEqual([]);
    expect(read.ok && read.value.sections.shortBlock!.bore!.text).toBe('unknown');
    expect(read.ok && read.value.sections.heads).toEqual({});
    expect(named({}).ok).toBe(true);
  });

  test('a field that is not known is kept as text with a note', () => {
    const read = named({ cam: { 'grinder’s card': 'seen' } });
    expect(read.ok && read.value.sections.cam!['grinder’s card']).toMatchObject({
      text: 'seen',
      kind: 'text',
    });
    expect(read.remarks).toMatchObject([{ level: 'note', code: 'field-not-known' }]);
  });

  test('sections and fields keep the order in which they were written', () => {
    const read = named({
      cam: { liftIntake: '11 mm', profile: 'road' },
      shortBlock: { stroke: '88 mm', bore: '96 mm' },
    });
    const sections = read.ok ? read.value.sections : {};
    expect(Object.keys(sections)).toEqual(['cam', 'shortBlock']);
    expect(Object.keys(sections.shortBlock!)).toEqual(['stroke', 'bore']);
  });

  test('an unusual value is kept with a caution, an assumed schema version with a note', () => {
    const read = readSheet({ name: 'small', shortBlock: { bore: '22 mm' } });
    expect(read.ok).toBe(true);
    expect(read.remarks).toMatchObject([
      { code: 'schema-version-assumed' },
      { level: 'caution', code: 'value-unusual' },
    ]);
  });

  test('a supercharger type it does not understand is kept with a note', () => {
    const read = named({ supercharger: { type: 'sliding vane' } });
    expect(read.remarks).toMatchObject([{ level: 'note', code: 'text-not-understood' }]);
    expect(named({ supercharger: { type: 'Centrifugal' } }).remarks).toEqual([]);
  });
});

describe('what a sheet refuses, naming field, value, what is allowed and an example', () => {
  test('a number without a unit', () => {
    const [message] = refusals(named({ shortBlock: { bore: 96 } }));
    expect(message).toMatch(/^shortBlock\.bore: 96 has no unit/);
    expect(message).toMatch(/"96 mm".*accepted: .*mm.*in/);
  });

  test('a unit of another kind', () => {
    const [message] = refusals(named({ shortBlock: { bore: '96 kPa' } }));
    expect(message).toMatch(/^shortBlock\.bore: "96 kPa" is not a length.*"96 mm"/);
  });

  test('an impossible value', () => {
    expect(refusals(named({ shortBlock: { bore: '96 m' } }))[0]).toMatch(
      /96 m cannot be; allowed is 10 to 1,000 mm/,
    );
    expect(refusals(named({ shortBlock: { cylinders: -6 } }))[0]).toMatch(/-6 cannot be; allowed is 1 to 48/);
  });

  test('a number that could be two', () => {
    expect(refusals(named({ shortBlock: { bore: '1,234 in' } }))[0]).toMatch(
      /^shortBlock\.bore: "1,234" could mean/,
    );
  });

  test('a count that is not whole', () => {
    expect(refusals(named({ shortBlock: { cylinders: 5.5 } }))[0]).toMatch(/"5.5" is not a whole number/);
  });

  test('no name, a newer schema, an unknown section, an unknown origin, a field given twice: all at once', () => {
    const messages = refusals(
      readSheet({
        schemaVersion: 2,
        bottomEnd: { bore: '96 mm' },
        shortBlock: {
          bore: { value: '96 mm', origin: 'guessed' },
          'rod length': '150 mm',
          rodLength: '152 mm',
        },
      }),
    );
    expect(messages).toHaveLength(5);
    expect(messages.join('\n')).toMatch(
      /2 is newer[\s\S]*no name[\s\S]*bottomEnd[\s\S]*"guessed"[\s\S]*given twice/,
    );
  });

  test.each([[null], [[]], ['bore 96'], [7]])('%j is not a sheet', (plain) => {
    expect(refusals(readSheet(plain))[0]).toMatch(/list of sections/);
  });

  test('a section that is one text, a value that is a list', () => {
    expect(refusals(named({ cam: 'road grind' }))[0]).toMatch(/^cam: holds "road grind".*one field a line/);
    expect(refusals(named({ shortBlock: { bore: ['96 mm', '97 mm'] } }))[0]).toMatch(
      /^shortBlock\.bore: cannot be read/,
    );
  });
});
