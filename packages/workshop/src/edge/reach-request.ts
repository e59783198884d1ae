import { type CorrectionId, correctionById } from '@pullbook/core/air';
import { parseNumber } from '@pullbook/core/quantity';
import { CHANGE_PARTS, type ChangePart, type EnquiryAsked, type ReachTarget } from '@pullbook/core/reach';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { editDistance, type WrittenReach } from '@pullbook/formats';
import { isUnknown, optionalQuantityFromText, quantityFromText } from './quantity-text.ts';

/** A target as a person asks for it: text with units. What is left out is not said. */
export interface ReachRequest {
  /** Only what is left in the supercharger: no power, though a file may ask for one. */
  leftAlone?: boolean | undefined;
  /** `520 hp` */
  power?: string | undefined;
  /** The highest power where nothing is said of a speed or a window. */
  what?: ReachTarget['what'] | undefined;
  /** `6000 rpm`: the power at this speed. */
  at?: string | null | undefined;
  /** `3000 rpm to 6500 rpm`: the average between. */
  window?: string | null | undefined;
  /** `10 psi`: boost that may not be passed. */
  boostCap?: string | null | undefined;
  /** Kinds of change that are left out: `fuel`, `breathing`. */
  without?: readonly string[] | undefined;
  /** `sae-j1349`; missing: the shop's own standard. */
  correction?: string | undefined;
  mostChanges?: number | undefined;
  draws?: number | undefined;
  seed?: number | undefined;
}

/** A request in inside units. */
export interface ReadRequest {
  /** `null`: no power was said. */
  target: ReachTarget | null;
  atRpm: number | null;
  windowRpm: [number, number] | null;
  boostCap: number | null;
  without: ChangePart[];
  /** `null`: not said. */
  correction: CorrectionId | null;
  mostChanges: number;
  draws: number;
  seed: number;
}

const USUAL_CHANGES = 2;
const USUAL_DRAWS = 500;
const USUAL_SEED = 1;

/**
 * What is asked for, in inside units; every fault at once, each with what is allowed. `behind`: what a file says of it, which stands
 * where nothing was said.
 */
export function readReachRequest(
  said: ReachRequest,
  behind: WrittenReach | null = null,
): Result<ReadRequest> {
  const remarks: Remark[] = [];
  const taken = <T>(read: Result<T>): T | null => {
    if (read.ok) return read.value;
    remarks.push(...read.remarks);
    return null;
  };
  const saidPower = isUnknown(said.power) ? null : taken(quantityFromText(said.power, 'power', 'Power'));
  const saidAt = taken(optionalQuantityFromText(said.at, 'engineSpeed', 'At'));
  const saidWindow = isUnknown(said.window) ? null : taken(windowFromText(said.window));
  const saidCap = taken(optionalQuantityFromText(said.boostCap, 'gaugePressure', 'Boost cap'));
  const without = (said.without ?? []).flatMap((one) => taken(partNamed(one)) ?? []);
  const correction = isUnknown(said.correction) ? null : taken(correctionNamed(said.correction));
  if (saidPower !== null && !(saidPower > 0)) remarks.push(notAboveZero(said.power ?? ''));
  if (saidCap !== null && !(saidCap > 0)) remarks.push(capNotAboveZero(said.boostCap ?? ''));
  if (saidAt !== null && saidWindow !== null) remarks.push(AT_AND_WINDOW);
  const hasPlace = saidAt !== null || saidWindow !== null;
  const atRpm = hasPlace ? saidAt : (behind?.atRpm ?? null);
  const windowRpm = hasPlace ? saidWindow : (behind?.windowRpm ?? null);
  const power = said.leftAlone ? null : (saidPower ?? behind?.power ?? null);
  const boostCap = saidCap ?? behind?.boostCap ?? null;
  const what = atRpm !== null ? 'power at a speed' : windowRpm !== null ? 'average power' : 'peak power';
  for (const [name, [low, high]] of Object.entries(COUNTS) as [keyof typeof COUNTS, [number, number]][]) {
    const count = said[name];
    if (count !== undefined && !(count >= low && count <= high))
      remarks.push(countImpossible(name, count, low, high));
  }
  if (said.what !== undefined && said.what !== what && remarks.length === 0)
    remarks.push(speedMissing(said.what));
  const [first, ...others] = remarks;
  if (first !== undefined) return refused(first, ...others);
  return accepted({
    target: power === null ? null : { what, power, atRpm, windowRpm, boostCap },
    atRpm,
    windowRpm,
    boostCap,
    without: [...new Set([...without, ...(behind?.without ?? [])])],
    correction: correction ?? behind?.correction ?? null,
    mostChanges: said.mostChanges ?? behind?.mostChanges ?? USUAL_CHANGES,
    draws: said.draws ?? behind?.draws ?? USUAL_DRAWS,
    seed: said.seed ?? behind?.seed ?? USUAL_SEED,
  });
}

/** The request as it is kept with its answer, so that it can be asked again; what a file said stands in SI. */
export function askedOf(said: ReachRequest, read: ReadRequest, correction: CorrectionId): EnquiryAsked {
  const text = (given: string | null | undefined, otherwise: string | null) =>
    isUnknown(given) ? otherwise : given.trim();
  const { target, atRpm, windowRpm, boostCap } = read;
  return {
    power: text(said.power, target === null ? '' : `${target.power / 1000} kW`)!,
    what: target?.what ?? 'peak power',
    at: text(said.at, atRpm === null ? null : `${atRpm} rpm`),
    window: text(said.window, windowRpm === null ? null : `${windowRpm[0]} rpm to ${windowRpm[1]} rpm`),
    boostCap: text(said.boostCap, boostCap === null ? null : `${boostCap / 1000} kPa`),
    without: read.without,
    correction,
  };
}

/** `3000rpm-6500rpm`, `3000-6500 rpm`, `3000 rpm to 6500 rpm` */
function windowFromText(text: string): Result<[number, number]> {
  const [, low = '', high = ''] =
    /^\s*([\d.,]+)\s*(?:rpm|r\/min)?\s*(?:-|–|\.\.|to)\s*([\d.,]+)\s*(?:rpm|r\/min)\s*$/iu.exec(text) ?? [];
  const [from, to] = [parseNumber(low, 'either'), parseNumber(high, 'either')];
  return from !== null && to !== null && from > 0 && from < to
    ? accepted([from, to])
    : refused(
        remark(
          'refusal',
          'window-not-read',
          `Window: "${text}" is not two engine speeds, the lower first. Write for example "3000 rpm to 6500 rpm".`,
        ),
      );
}

function partNamed(given: string): Result<ChangePart> {
  const plain = (one: string) => one.toLowerCase().replace(/[\s_-]/g, '');
  const found = CHANGE_PARTS.find((part) => plain(part) === plain(given));
  if (found !== undefined) return accepted(found);
  const [nearest] = CHANGE_PARTS.toSorted(
    (a, b) => editDistance(plain(a), plain(given)) - editDistance(plain(b), plain(given)),
  );
  return refused(
    remark(
      'refusal',
      'kind-of-change-not-known',
      `"${given}" is no kind of change. Did you mean ${nearest}? Known are ${CHANGE_PARTS.join(', ')}.`,
    ),
  );
}

function correctionNamed(given: string): Result<CorrectionId> {
  const found = correctionById(given.trim().toLowerCase());
  return found === null
    ? refused(
        remark(
          'refusal',
          'correction-not-known',
          `"${given}" is no standard of correction. Known are observed, sae-j1349, sae-j607, iso-1585, din-70020.`,
        ),
      )
    : accepted(found.id);
}

const notAboveZero = (text: string) =>
  remark(
    'refusal',
    'target-not-above-zero',
    `A target of ${text} is none: give a power above zero, such as 520 hp.`,
  );

const capNotAboveZero = (text: string) =>
  remark(
    'refusal',
    'boost-cap-not-above-zero',
    `A boost cap of ${text} leaves no boost. Give a pressure above zero, such as 10 psi, or ask of a combination without a supercharger.`,
  );

const AT_AND_WINDOW = remark(
  'refusal',
  'at-and-window',
  'Power at a speed and the average over a window are two targets. Keep one of the two, or neither for the highest power.',
);

/** As in a file. A band of fewer draws says nothing, and in practice a way of five changes is another engine. */
const COUNTS = { mostChanges: [1, 4], draws: [20, 20_000], seed: [0, 2 ** 31 - 1] } as const;

const COUNT_NAMES = { mostChanges: 'Changes of one way', draws: 'Draws', seed: 'Seed' } as const;

const countImpossible = (name: keyof typeof COUNTS, count: number, low: number, high: number) =>
  remark(
    'refusal',
    'count-impossible',
    `${COUNT_NAMES[name]}: ${count} cannot be; allowed is ${low} to ${high}.`,
  );

const speedMissing = (what: ReachTarget['what']) =>
  remark(
    'refusal',
    'target-speed-missing',
    what === 'peak power'
      ? 'The highest power is asked for and a speed or a window is given with it. Leave them out, or ask for the power there.'
      : `The ${what} is asked for, but not where. Give ${what === 'average power' ? 'a window, such as 3000 rpm to 6500 rpm' : 'an engine speed, such as 6000 rpm'}.`,
  );
