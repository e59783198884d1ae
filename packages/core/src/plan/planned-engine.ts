import { type CombinationSheet, isSupercharged } from '../combination/index.ts';

/** What a card of limits and cautions has to know of the engine that is to be pulled. */
export interface PlannedEngine {
  isBoosted: boolean;
  isSupercharged: boolean;
  hasNitrous: boolean;
  /** By the name of the fuel and its share of ethanol. */
  fuel: 'gasoline' | 'ethanol' | 'methanol' | 'unknown';
  isBlowThrough: boolean;
  isRoots: boolean;
  hasBelt: boolean;
  /** r/min; `null`: not on the sheet */
  maximumImpellerSpeed: number | null;
  /** Highest boost pulled so far with it, Pa gauge; `null`: none yet. */
  highestBoost: number | null;
  /** Highest engine speed of the pulls so far, r/min; `null`: none yet. */
  highestSpeedRpm: number | null;
}

const MOSTLY_ALCOHOL = 0.5;

/** What the sheet says of it; boost and speed come from its pulls. */
export function plannedEngine(
  sheet: CombinationSheet,
  pulled: Pick<PlannedEngine, 'highestBoost' | 'highestSpeedRpm'>,
): PlannedEngine {
  const { supercharger, drive, fuel, fuelSystem } = sheet.sections;
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
    fuel: fuelOf(fuel?.name?.text ?? '', fuel?.ethanolShare?.value ?? null),
    isBlowThrough: isBoosted && /carburettor/.test(fuelSystem?.type?.text.toLowerCase() ?? ''),
    isRoots: isBoosted && (kind === 'roots' || kind === 'screw'),
    hasBelt: isBoosted && !isTurbine && drive !== undefined,
    maximumImpellerSpeed: supercharger?.maximumImpellerSpeed?.value ?? null,
    ...pulled,
  };
}

function fuelOf(name: string, ethanolShare: number | null): PlannedEngine['fuel'] {
  if (/methanol/i.test(name)) return 'methanol';
  if (/ethanol|\be\d{2}\b/i.test(name) || (ethanolShare ?? 0) > MOSTLY_ALCOHOL) {
    return isPumpBlend(name, ethanolShare) ? 'gasoline' : 'ethanol';
  }
  return name === '' || name === 'unknown' ? 'unknown' : 'gasoline';
}

/** `E5`, `E10`: pump fuel with a little ethanol. */
const isPumpBlend = (name: string, ethanolShare: number | null): boolean =>
  (ethanolShare ?? 0) <= MOSTLY_ALCOHOL && /\be(5|10|15|20|25|30)\b/i.test(name);

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
    maximumImpellerSpeed: lowest(known((one) => one.maximumImpellerSpeed)),
    highestBoost: highest(known((one) => one.highestBoost)),
    highestSpeedRpm: highest(known((one) => one.highestSpeedRpm)),
  };
}
