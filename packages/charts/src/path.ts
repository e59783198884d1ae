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
/** Written over by every path, since clearing new memory for each takes as long as writing it. */
let bytes = new Uint8Array(1 << 16);

/** Writes a number to a tenth from a place on; the place after it. */
function writeTenths(value: number, from: number): number {
  let at = from;
  let tenths = Math.round(value * 10) | 0;
  if (tenths < 0) {
    bytes[at++] = MINUS;
    tenths = -tenths;
  }
  let whole = (tenths / 10) | 0;
  const fraction = tenths - 10 * whole;
  const end = at + (whole < 10 ? 1 : whole < 100 ? 2 : whole < 1000 ? 3 : String(whole).length);
  for (let place = end - 1; place >= at; place -= 1) {
    const rest = (whole / 10) | 0;
    bytes[place] = ZERO + whole - 10 * rest;
    whole = rest;
  }
  at = end;
  if (fraction > 0) {
    bytes[at++] = POINT;
    bytes[at++] = ZERO + fraction;
  }
  return at;
}

function writePoint(command: number, x: number, y: number, from: number): number {
  bytes[from] = command;
  const between = writeTenths(x, from + 1);
  bytes[between] = COMMA;
  return writeTenths(y, between + 1);
}

/**
 * Straight from point to point, broken where there is none, to a tenth of a pixel; a point alone becomes a dash of the
 * length given. Written sign by sign into bytes: a raw recording has tens of thousands of points, and joining strings
 * for them takes ten times as long.
 */
export function linePath({ x, y }: Points, alonePx: number): string {
  const room = (x.length + 1) * 2 * MOST_SIGNS;
  if (bytes.length < room) bytes = new Uint8Array(room);
  const last = x.length - 1;
  let at = 0;
  let drawing = false;
  for (let index = 0; index <= last; index += 1) {
    const hereX = x[index]!;
    const hereY = y[index]!;
    const isPoint = Number.isFinite(hereY);
    const isAlone: boolean = isPoint && !drawing && (index === last || !Number.isFinite(y[index + 1]));
    if (isAlone) {
      at = writePoint(MOVE, hereX - alonePx / 2, hereY, at);
      at = writePoint(LINE, hereX + alonePx / 2, hereY, at);
    } else if (isPoint) at = writePoint(drawing ? LINE : MOVE, hereX, hereY, at);
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
  return make(Array.from(low.y)) ?? '';
}
