import { parseQuantity, type QuantityKind } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import type { OwnPrior } from '@pullbook/core/shop';

interface Allowed {
  kind: QuantityKind | 'count';
  /** Lowest and highest, inside unit. */
  range: readonly [low: number, high: number];
  words: string;
}

const SHARE: Allowed = { kind: 'ratio', range: [0, 0.2], words: '0 % to 20 %, such as "0.5 %"' };
const COUNT: Allowed = { kind: 'count', range: [1, 1000], words: 'a number from 1 to 1,000' };
const LENGTH: Allowed = { kind: 'engineSpeed', range: [10, 5000], words: '10 rpm to 5,000 rpm' };

/** What may be said of the scatter, each by its path. */
const FIGURES: Readonly<Record<string, Allowed>> = {
  'pull.injected': SHARE,
  'pull.carburetted': SHARE,
  'pull.supercharged': SHARE,
  setUp: SHARE,
  day: SHARE,
  cell: SHARE,
  within: SHARE,
  withinLengthRpm: LENGTH,
  driftPerHour: SHARE,
  'degreesOfFreedom.pull': COUNT,
  'degreesOfFreedom.setUp': COUNT,
  'degreesOfFreedom.day': COUNT,
  'degreesOfFreedom.cell': COUNT,
  'degreesOfFreedom.within': COUNT,
  'degreesOfFreedom.drift': COUNT,
};

/**
 * A shop's own guess of its scatter, as an object or its JSON text. Each figure as a share or with its unit; what is left
 * out, empty or `null` stands as built in. Every one that cannot stand is named.
 *
 * @example scatterPriorFrom({ pull: { injected: '0.3 %' } }) // { ok: true, value: { pull: { injected: 0.003 } } }
 */
export function scatterPriorFrom(given: unknown): Result<OwnPrior | null> {
  const object = typeof given === 'string' ? parsed(given) : given;
  if (!isObject(object)) return refused(unreadable(given));
  const own: Record<string, number | Record<string, number>> = {};
  const remarks: Remark[] = [];
  for (const [path, value] of leaves(object)) {
    if (value === null || value === '') continue;
    const allowed = FIGURES[path];
    const figure = allowed ? figureFrom(value, allowed) : null;
    if (figure === null) {
      remarks.push(allowed ? outOfRange(path, value, allowed) : unknownFigure(path));
      continue;
    }
    const [name, inner] = path.split('.') as [string, string?];
    if (inner === undefined) own[name] = figure;
    else own[name] = { ...(own[name] as Record<string, number> | undefined), [inner]: figure };
  }
  const [first, ...others] = remarks;
  if (first) return refused(first, ...others);
  return accepted(Object.keys(own).length === 0 ? null : (own as OwnPrior));
}

function figureFrom(value: unknown, { kind, range: [low, high] }: Allowed): number | null {
  const read =
    typeof value === 'number'
      ? value
      : typeof value !== 'string'
        ? Number.NaN
        : kind === 'count'
          ? Number(value.replace(',', '.'))
          : valueOr(parseQuantity(value, kind));
  return read >= low && read <= high ? read : null;
}

const valueOr = (read: Result<number>): number => (read.ok ? read.value : Number.NaN);

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function leaves(object: Record<string, unknown>, before = ''): [path: string, value: unknown][] {
  return Object.entries(object).flatMap(([name, value]) =>
    isObject(value) ? leaves(value, `${before}${name}.`) : [[`${before}${name}`, value] as [string, unknown]],
  );
}

const unreadable = (given: unknown): Remark =>
  remark(
    'refusal',
    'setting',
    `Setting scatterPrior: ${JSON.stringify(given) ?? 'nothing'} cannot stand there. Accepted: an object such as {"pull":{"injected":"0.3 %"},"setUp":"0.4 %"}, or none.`,
  );

const outOfRange = (path: string, value: unknown, { words }: Allowed): Remark =>
  remark(
    'refusal',
    'setting',
    `Setting scatterPrior, ${path}: ${JSON.stringify(value)} cannot stand there. Accepted: ${words}; empty for the built-in figure.`,
  );

const unknownFigure = (path: string): Remark =>
  remark(
    'refusal',
    'setting',
    `Setting scatterPrior: there is no figure "${path}". There are: ${Object.keys(FIGURES).join(', ')}.`,
  );
