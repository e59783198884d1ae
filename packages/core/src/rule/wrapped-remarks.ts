import type { QuantityKind } from '../quantity/index.ts';
import type { Figure, Remark } from '../remark/index.ts';
import { RULES } from './catalogue.ts';
import type { Finding } from './model.ts';
import type { Speaker } from './speaker.ts';

interface Wrapping {
  input: string;
  /** Missing: that of the first figure. */
  kind?: QuantityKind;
  /** Value and threshold from the figures of the remark's sentence, in their order. */
  read: (figures: readonly number[]) => readonly [value: number, threshold: number];
}

const first = (limit: number) => (figures: readonly number[]) => [figures[0] ?? Number.NaN, limit] as const;
const second = (figures: readonly number[]) => [figures[0] ?? Number.NaN, figures[1] ?? Number.NaN] as const;

/** How the figures of a remark become value and threshold; a code that is not here has none. */
const WRAPPINGS: Readonly<Record<string, Wrapping>> = {
  'power-is-not-torque-times-speed': { input: 'Power over torque × speed', kind: 'ratio', read: first(1) },
  'unit-mix': { input: 'Power over torque × speed', kind: 'ratio', read: first(1) },
  'factor-is-not-the-weathers': { input: 'Correction factor', kind: 'ratio', read: second },
  'barometer-looks-reduced': { input: 'Barometer and altitude', kind: 'absolutePressure', read: barometer },
  'barometer-off-altitude': { input: 'Barometer and altitude', kind: 'absolutePressure', read: barometer },
  'outside-validity': {
    input: 'Weather and correction',
    read: ([value = Number.NaN, low = Number.NaN, high = Number.NaN]) => [value, value < low ? low : high],
  },
  supersaturated: { input: 'Humidity', kind: 'ratio', read: first(1) },
  'vapour-above-barometer': { input: 'Humidity', kind: 'absolutePressure', read: second },
  'flow-beyond-curtain': {
    input: 'Flow sheet',
    kind: 'ratio',
    read: (figures) => [figures[1] ?? Number.NaN, figures[2] ?? Number.NaN],
  },
  'compression-ratio-disagrees': { input: 'Compression ratio', kind: 'ratio', read: second },
  'displacement-disagrees': { input: 'Displacement', kind: 'volume', read: second },
  'cam-card-disagrees': { input: 'Cam card', kind: 'angle', read: second },
};

/** What it reads, and what is usual there. */
function barometer(figures: readonly number[]): readonly [number, number] {
  return [figures[0] ?? Number.NaN, figures[2] ?? Number.NaN];
}

const INPUTS: Readonly<Record<string, string>> = {
  'uneven-sweep': 'Engine speed over time',
  'power-still-climbing': 'Power at the end of the pull',
  'torque-still-climbing': 'Torque at the end of the pull',
  'torque-falls-from-the-start': 'Torque at the start of the pull',
  'no-clearance-volume': 'Chamber, gasket, deck and dish volumes',
  'more-than-one-change': 'What differs on the sheets',
  'nothing-changed-on-the-sheet': 'What differs on the sheets',
  'boost-tap-moved': 'Boost tap',
};

const RULE_OF_CODE = new Map(RULES.flatMap(({ id, wraps }) => wraps.map((code) => [code, id] as const)));

/** The rule that stands in the place of a remark of that code; `null`: none does. */
export const ruleOfRemark = (code: string): string | null => RULE_OF_CODE.get(code) ?? null;

/** Remarks that say what a rule says, as findings; the others are left to whoever shows remarks. */
export function findingsOfRemarks(remarks: readonly Remark[], speaker: Speaker): Finding[] {
  const said = new Map<string, Remark>();
  for (const one of remarks) if (ruleOfRemark(one.code) !== null) said.set(`${one.code} ${one.message}`, one);
  return [...said.values()].map((one) => findingOf(one, speaker));
}

/** Remarks that are not among the findings already: what is left to say beside them. */
export function remarksBeside<Said extends Pick<Remark, 'code'>>(
  remarks: readonly Said[],
  findings: readonly Pick<Finding, 'ruleId'>[],
): Said[] {
  const said = new Set<string | null>(findings.map(({ ruleId }) => ruleId));
  // The axes of a picture explain power off torque × speed.
  if (said.has('V38')) said.add('V01');
  return remarks.filter(({ code }) => !said.has(ruleOfRemark(code)));
}

/** The finding that stands in the place of one remark; of a rule other than the usual where a check knows better. */
export function findingOf(one: Remark, speaker: Speaker, ruleId = ruleOfRemark(one.code)): Finding {
  if (ruleId === null) throw new Error(`no rule stands for the remark ${one.code}`);
  const wrapping = WRAPPINGS[one.code];
  if (wrapping === undefined) return speaker.wrap(ruleId, one, { input: INPUTS[one.code] ?? one.code });
  const figures = (one.parts ?? []).filter((part): part is Figure => typeof part !== 'string');
  const [value, threshold] = wrapping.read(figures.map((figure) => figure.value));
  const kind = wrapping.kind ?? (figures[0]?.kind as QuantityKind | undefined) ?? 'ratio';
  return speaker.wrap(ruleId, one, { input: wrapping.input, kind, value, threshold });
}
