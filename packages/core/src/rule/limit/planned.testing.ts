import { MATCH_FIGURES, type MatchCurve, type MatchFigure, type MatchInput } from '../../airpath/index.ts';
import { plainInput } from '../../airpath/match/match-input.testing.ts';
import { readSheet } from '../../combination/index.ts';
import { type Fuel, type FuelSupply, fuelNamed } from '../../fuel/index.ts';
import type { LimitFinding, LimitId, RuleThresholds } from '../model.ts';
import type { LimitsAt } from './engine-at-limits.ts';
import { limitFindings } from './limit-findings.ts';
import { readLimits } from './read-limits.ts';

type Changes<Of> = Partial<{ [Part in keyof Of]: Partial<Of[Part]> }>;

/** A planned engine of a test; what is not given is plain. */
export interface PlannedTest {
  sheet?: Record<string, Record<string, unknown>>;
  /** At 3000, 5000 and 6500 r/min; one number: at all three. */
  figures?: Partial<Record<MatchFigure, number | [number, number, number]>>;
  /** Of the plain match; `null`: without supercharger. */
  input?: Changes<MatchInput> | null;
  supply?: Partial<FuelSupply>;
  boostCap?: number;
  highestEngineSpeedRpm?: number;
}

const SPEEDS = [3000, 5000, 6500];

export function fuelOfTest(name: string): Fuel {
  const fuel = fuelNamed(name);
  if (!fuel.ok) throw new Error(fuel.remarks[0]?.message);
  return fuel.value;
}

/** An engine with the figures that a test is about; those that are not given are not known. */
export function planned({
  sheet,
  figures,
  input,
  supply,
  boostCap,
  highestEngineSpeedRpm,
}: PlannedTest): LimitsAt {
  const read = readSheet({ schemaVersion: 1, name: 'Planned', ...sheet });
  if (!read.ok) throw new Error(read.remarks.map(({ message }) => message).join('\n'));
  return {
    sheet: read.value,
    input: input === null ? null : changed(plainInput(), input ?? {}),
    curve: curveOf(figures ?? {}),
    supply: {
      fuel: fuelOfTest('gasoline'),
      lambda: 0.8,
      injectors: null,
      rail: null,
      pump: null,
      lineDiameter: null,
      mixes: 'port',
      assumptions: [],
      ...supply,
    },
    boostCap: boostCap ?? null,
    highestEngineSpeedRpm: highestEngineSpeedRpm ?? 6800,
  };
}

/** One limit of it in words; `null`: it could not be looked at. */
export function limitOf(
  id: LimitId,
  test: PlannedTest,
  thresholds: RuleThresholds = {},
): LimitFinding | null {
  const at = planned(test);
  return limitFindings(readLimits(at, thresholds, {}, [id]), at, thresholds)[0] ?? null;
}

function changed(plain: MatchInput, changes: Changes<MatchInput>): MatchInput {
  const parts = Object.entries(changes).map(([part, change]) => {
    const before = plain[part as keyof MatchInput];
    return [
      part,
      change === null || before === null ? change : { ...(before as object), ...(change as object) },
    ];
  });
  return { ...plain, ...Object.fromEntries(parts) };
}

function curveOf(figures: NonNullable<PlannedTest['figures']>): MatchCurve {
  const column = (figure: MatchFigure) => {
    const given = figures[figure];
    if (given === undefined) return SPEEDS.map(() => Number.NaN);
    return typeof given === 'number' ? SPEEDS.map(() => given) : given;
  };
  return {
    engineSpeedRpm: SPEEDS,
    figures: Object.fromEntries(
      MATCH_FIGURES.map((figure) => [figure, Float64Array.from(column(figure))]),
    ) as MatchCurve['figures'],
    state: SPEEDS.map(() => 'on the map'),
  };
}
