import { area } from 'd3-shape';
import type { Points } from './clip.ts';

const [MOVE, LINE, COMMA, POINT, MINUS, ZERO] = [...'ML,.-0'].map((sign) => sign.charCodeAt(0)) as [
  number,
  number,
  number,
  number,
  number,
  number,
];
/** Signs that a command and two coordinates below ten million pixels take at most. */
const MOST_SIGNS = 24;
const latin = new TextDecoder('latin1');

/**
 * Straight from point to point, broken where there is none, to a tenth of a pixel; a point alone becomes a dash of the
 * length given. Written sign by sign into bytes: a raw recording has tens of thousands of points, and joining strings
 * for them takes ten times as long.
 */
export function linePath({ x, y }: Points, alonePx: number): string {
  const bytes = new Uint8Array((x.length + 1) * 2 * MOST_SIGNS);
  let at = 0;
  const writeTenths = (value: number) => {
    let tenths = Math.round(value * 10) | 0;
    if (tenths < 0) {
      bytes[at++] = MINUS;
      tenths = -tenths;
    }
    let whole = (tenths / 10) | 0;
    let digits = 1;
    for (let bound = 10; whole >= bound; bound *= 10) digits += 1;
    for (let place = at + digits - 1; place >= at; place -= 1) {
      const rest = (whole / 10) | 0;
      bytes[place] = ZERO + whole - 10 * rest;
      whole = rest;
    }
    at += digits;
    if (tenths % 10 > 0) {
      bytes[at++] = POINT;
      bytes[at++] = ZERO + (tenths % 10);
    }
  };
  const write = (command: number, toX: number, toY: number) => {
    bytes[at++] = command;
    writeTenths(toX);
    bytes[at++] = COMMA;
    writeTenths(toY);
  };
  let drawing = false;
  for (let index = 0; index < x.length; index += 1) {
    const hereX = x[index] ?? Number.NaN;
    const hereY = y[index] ?? Number.NaN;
    const isPoint = Number.isFinite(hereY);
    const isAlone: boolean = isPoint && !drawing && !Number.isFinite(y[index + 1]);
    if (isAlone) {
      write(MOVE, hereX - alonePx / 2, hereY);
      write(LINE, hereX + alonePx / 2, hereY);
    } else if (isPoint) write(drawing ? LINE : MOVE, hereX, hereY);
    drawing = isPoint && !isAlone;
  }
  return latin.decode(bytes.subarray(0, at));
}

/** The tint between two edges that have the same x. */
export function bandPath(low: Points, high: Points): string {
  const make = area<number>()
    .defined((_, index) => Number.isFinite(low.y[index]) && Number.isFinite(high.y[index]))
    .x((_, index) => low.x[index] ?? 0)
    .y0((_, index) => low.y[index] ?? 0)
    .y1((_, index) => high.y[index] ?? 0)
    .digits(1);
  return make(low.y) ?? '';
}
