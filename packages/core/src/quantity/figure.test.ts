import { expect, test } from 'vitest';
import { joined, remark, remarkAbout, said, saidIn } from '../remark/index.ts';
import {
  type FigureStyle,
  figureOf,
  heightFigure,
  numberFigure,
  percentFigure,
  rangeOf,
  readsAlike,
  speedFigure,
  speedRange,
  withoutUnit,
  writeSaid,
} from './figure.ts';

const US_COMMA: FigureStyle = { units: 'us', decimalMark: ',' };
const SI: FigureStyle = { units: 'si', decimalMark: '.' };
const write = (one: { message: string; parts?: Parameters<typeof writeSaid>[1] }, style: FigureStyle) =>
  writeSaid(one.message, one.parts, style).replace(/[\u00a0\u202f]/g, ' ');
const of = (text: ReturnType<typeof said>) => remark('note', 'test', text);

test('one sentence, plain in SI with a point, and in the units and with the mark of a page', () => {
  // 10.1 N·m = 7.449 lbf·ft and 0.32 kg·m² = 7.594 lb·ft² (NIST SP 811, from memory).
  const one = of(
    said`The sweep hides ${figureOf(10.1, 'torque')} at ${figureOf(300, 'sweepRate')} and ${figureOf(0.32, 'momentOfInertia', { plain: '0.32 kg·m²' })}.`,
  );
  expect(one.message).toBe('The sweep hides 10.1 N·m at 300 rpm/s and 0.32 kg·m².');
  expect(write(one, US_COMMA)).toBe('The sweep hides 7,4 lb-ft at 300 rpm/s and 7,59 lb·ft².');
});

test('thousands never look like the decimal mark of the page', () => {
  const one = of(said`From ${speedRange(2000, 6500)}, at ${speedFigure(4000)}.`);
  expect(one.message).toBe('From 2,000-6,500 rpm, at 4,000 rpm.');
  expect(write(one, US_COMMA)).toBe('From 2 000-6 500 rpm, at 4 000 rpm.');
});

test('ranges, ratios, heights and bare numbers', () => {
  const range = rangeOf(283.15, 363.15, 'temperature', ' to ', { decimals: 0 });
  const one = of(joined([range, percentFigure(0.125, 1), heightFigure(210), numberFigure(1.0213, 4)], '; '));
  expect(one.message).toBe('10 to 90 °C; 12.5 %; 210 m; 1.0213');
  expect(write(one, US_COMMA)).toBe('50 to 194 °F; 12,5 %; 689 ft; 1,0213');
  expect(withoutUnit(figureOf(82_000, 'absolutePressure')).plain).toBe('82.00');
});

test('what reads the same in one system of units is one figure', () => {
  // 78.4 °C = 173.12 °F and 78.6 °C = 173.48 °F: both 173 °F, by the definition of the scale.
  const at = (celsius: number) => figureOf(celsius + 273.15, 'temperature', { decimals: 0 });
  expect([at(78.4).plain, at(78.6).plain]).toEqual(['78 °C', '79 °C']);
  expect(readsAlike(at(78.4), at(78.6))).toBe(true);
  expect(readsAlike(at(78.4), at(79.6))).toBe(false);
});

test('a remark about a field and one inside another keep their figures', () => {
  const inner = of(said`it is ${figureOf(100_000, 'power')}.`);
  expect(write(remarkAbout('Power', inner), US_COMMA)).toBe('Power: it is 134,1 hp.');
  expect(write(of(said`Left out: ${saidIn(inner)}`), SI)).toBe('Left out: it is 100.0 kW.');
  expect(write(remarkAbout('Name', remark('note', 'test', 'too short')), US_COMMA)).toBe('Name: too short');
});

test('data only: it goes between threads and stays what it was', () => {
  const one = of(said`It is ${figureOf(100_000, 'power')}.`);
  expect(structuredClone(one)).toEqual(one);
  expect(remark('note', 'test', said`No figure at ${'all'}.`)).toEqual(
    remark('note', 'test', 'No figure at all.'),
  );
});

test('what is no number says so in every style', () => {
  const one = of(said`It is ${figureOf(Number.NaN, 'temperature', { plain: 'no number' })}.`);
  expect(write(one, US_COMMA)).toBe(one.message);
});
