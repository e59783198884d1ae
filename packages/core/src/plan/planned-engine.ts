import { type CombinationSheet, isSupercharged, sheetNumber } from '../combination/index.ts';
import { fuelOfSheet, fuelSupplyOf, inductionOfSheet, isFuelTold } from '../fuel/index.ts';

/** What a card of limits and cautions has to know of the engine that is to be pulled. */
export interface PlannedEngine {
  isBoosted: boolean;
  isSupercharged: boolean;
  hasNitrous: boolean;
  /** What it is mostly, as far as the cautions go. */
  fuel: 'gasoline' | 'ethanol' | 'methanol' | 'unknown';
  isBlowThrough: boolean;
  isRoots: boolean;
  hasBelt: boolean;
  /** At rest, Pa, and whether it rises with boost; `null`: not on the sheet */
  fuelPressure: { atRest: number; followsBoost: boolean } | null;
  /** r/min; `null`: not on the sheet */
  maximumImpellerSpeed: number | null;
  /** Highest boost pulled so far with it, Pa gauge; `null`: none yet. */
  highestBoost: number | null;
  /** Upper end of the boost that was foretold of it, Pa gauge: a planned pulley is not stopped for doing what it is for; `null`: none was. */
  boostForetold: number | null;
  /** Highest engine speed of the pulls so far, r/min; `null`: none yet. */
  highestSpeedRpm: number | null;
}

/** Share of alcohol by volume above which a fuel is no pump blend any more. Common practice, no source. */
const PUMP_BLEND = 0.3;

/** What the sheet says of it; boost and speed come from its pulls. */
export function plannedEngine(
  sheet: CombinationSheet,
  pulled: Pick<PlannedEngine, 'highestBoost' | 'highestSpeedRpm'> & { boostForetold?: number | null },
): PlannedEngine {
  const { supercharger, drive, fuelSystem } = sheet.sections;
  const kind = supercharger?.type?.text.toLowerCase() ?? '';
  const isBoosted = isSupercharged(sheet);
  const isTurbine = kind === 'turbocharger';
  const words = Object.values(sheet.sections)
    .flatMap((section) => Object.values(section ?? {}).map(({ text }) => text.toLowerCase()))
    .join('\n');
  return {
    isBoosted,
    isSupercharged: isBoosted && !isTurbine,
    hasNitrous: /nitrous/.test(words),
    fuel: fuelOf(sheet),
    isBlowThrough: isBoosted && /carburettor/.test(fuelSystem?.type?.text.toLowerCase() ?? ''),
    isRoots: isBoosted && (kind === 'roots' || kind === 'screw'),
    hasBelt: isBoosted && !isTurbine && drive !== undefined,
    fuelPressure: fuelPressureOf(sheet),
    maximumImpellerSpeed: supercharger?.maximumImpellerSpeed?.value ?? null,
    boostForetold: null,
    ...pulled,
  };
}

/** Only where the sheet tells it: a figure to stop by is never one that was assumed. */
function fuelPressureOf(sheet: CombinationSheet): PlannedEngine['fuelPressure'] {
  const atRest = sheetNumber(sheet, 'fuelSystem', 'fuelPressure');
  const { rail } = fuelSupplyOf(sheet, { induction: inductionOfSheet(sheet) });
  return atRest === null || rail === null ? null : { atRest, followsBoost: rail.reference === 'manifold' };
}

function fuelOf(sheet: CombinationSheet): PlannedEngine['fuel'] {
  const name = sheet.sections.fuel?.name?.text ?? '';
  if (!isFuelTold(sheet)) return name === '' || name === 'unknown' ? 'unknown' : 'gasoline';
  const { parts } = fuelOfSheet(sheet).fuel;
  const holds = (alcohol: 'methanol' | 'ethanol') =>
    parts.some(({ substance, volumeShare }) => substance === alcohol && volumeShare > PUMP_BLEND);
  return holds('methanol') ? 'methanol' : holds('ethanol') ? 'ethanol' : 'gasoline';
}

const MOST_CAREFUL_FIRST: readonly PlannedEngine['fuel'][] = ['methanol', 'ethanol', 'gasoline', 'unknown'];

/** One card for all combinations of a plan: whatever one of them needs stands on it, and the tighter limit holds. */
export function togetherOnOneCard(engines: readonly PlannedEngine[]): PlannedEngine {
  const any = (is: (engine: PlannedEngine) => boolean) => engines.some(is);
  const known = (of: (engine: PlannedEngine) => number | null) =>
    engines.flatMap((engine) => {
      const value = of(engine);
      return value === null ? [] : [value];
    });
  const lowest = (values: number[]) => (values.length === 0 ? null : Math.min(...values));
  const highest = (values: number[]) => (values.length === 0 ? null : Math.max(...values));
  return {
    isBoosted: any((one) => one.isBoosted),
    isSupercharged: any((one) => one.isSupercharged),
    hasNitrous: any((one) => one.hasNitrous),
    fuel: MOST_CAREFUL_FIRST.find((fuel) => any((one) => one.fuel === fuel)) ?? 'unknown',
    isBlowThrough: any((one) => one.isBlowThrough),
    isRoots: any((one) => one.isRoots),
    hasBelt: any((one) => one.hasBelt),
    fuelPressure: sameOfAll(engines.map((one) => one.fuelPressure)),
    maximumImpellerSpeed: lowest(known((one) => one.maximumImpellerSpeed)),
    highestBoost: highest(known((one) => one.highestBoost)),
    boostForetold: highest(known((one) => one.boostForetold)),
    highestSpeedRpm: highest(known((one) => one.highestSpeedRpm)),
  };
}

/** `null` where one of them does not know it, or they differ: the card then says it in words. */
function sameOfAll(pressures: readonly PlannedEngine['fuelPressure'][]): PlannedEngine['fuelPressure'] {
  const [first] = pressures;
  const isSame = pressures.every(
    (one) => one?.atRest === first?.atRest && one?.followsBoost === first?.followsBoost,
  );
  return isSame ? (first ?? null) : null;
}
