import { type AirState, airState, standardAtmosphere } from '@pullbook/core/air';
import { type Fuel, fuelNamed } from '@pullbook/core/fuel';
import { absolutePressure, parseQuantity, type QuantityKind, temperature } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, refused, remark, remarkAbout } from '@pullbook/core/remark';
import type { MatchBundle, WhatIf } from '../match-model.ts';

/** What is tried, as a person writes it: text with units. It stands in an address like this; missing: as it is. */
export interface WhatIfText {
  /** Key of the combination it is tried on; missing: the last that is matched. */
  on?: string | undefined;
  blowerPulleyDiameter?: string | undefined;
  crankPulleyDiameter?: string | undefined;
  stepUp?: string | undefined;
  /** `none`; `other`: with the effectiveness and the coolant told here */
  cooler?: string | undefined;
  coolerEffectiveness?: string | undefined;
  coolantTemperature?: string | undefined;
  /** Height of land, with the standard atmosphere's pressure there; goes before `airPressure`. */
  altitude?: string | undefined;
  airPressure?: string | undefined;
  airTemperature?: string | undefined;
  /** `3 %` more work of each kilogram of air */
  moreWork?: string | undefined;
  /** `E85`, `gasoline 98`, `70 % ethanol, 30 % gasoline`: what it does by rule of thumb */
  fuel?: string | undefined;
  evaporationCooling?: string | undefined;
  /** `8 %` more air swallowed, between two engine speeds */
  moreAir?: string | undefined;
  moreAirFrom?: string | undefined;
  moreAirTo?: string | undefined;
}

export type WhatIfName = keyof WhatIfText;
/** Those that hold a figure. */
export type WhatIfFigure = Exclude<WhatIfName, 'on' | 'cooler' | 'fuel'>;

interface FigureWords {
  label: string;
  kind: QuantityKind;
  /** Inside unit; what lies beyond is a slip of the pen. */
  allowed: readonly [low: number, high: number];
  allowedWords: string;
}

/** What each figure is called, its kind, and between what it may lie. */
export const WHAT_IF_FIGURES: Record<WhatIfFigure, FigureWords> = {
  blowerPulleyDiameter: {
    label: 'Blower pulley',
    kind: 'length',
    allowed: [0.01, 2],
    allowedWords: '10 to 2000 mm',
  },
  crankPulleyDiameter: {
    label: 'Crank pulley',
    kind: 'length',
    allowed: [0.01, 2],
    allowedWords: '10 to 2000 mm',
  },
  stepUp: { label: 'Step-up', kind: 'ratio', allowed: [0.2, 30], allowedWords: '0.2 to 30' },
  coolerEffectiveness: {
    label: 'Cooler effectiveness',
    kind: 'ratio',
    allowed: [0, 1],
    allowedWords: '0 to 100 %',
  },
  coolantTemperature: {
    label: 'Coolant into it',
    kind: 'temperature',
    allowed: [243.15, 393.15],
    allowedWords: '-30 to 120 °C',
  },
  altitude: { label: 'Altitude', kind: 'length', allowed: [-500, 5000], allowedWords: '-500 to 5000 m' },
  airPressure: {
    label: 'Air pressure',
    kind: 'absolutePressure',
    allowed: [50_000, 110_000],
    allowedWords: '50 to 110 kPa',
  },
  airTemperature: {
    label: 'Air temperature',
    kind: 'temperature',
    allowed: [233.15, 333.15],
    allowedWords: '-40 to 60 °C',
  },
  moreWork: {
    label: 'Spark and mixture: more work of the air',
    kind: 'ratio',
    allowed: [-0.5, 0.5],
    allowedWords: '-50 to 50 %',
  },
  evaporationCooling: {
    label: 'Fuel cools the charge by',
    kind: 'temperatureDifference',
    allowed: [0, 150],
    allowedWords: '0 to 150 K',
  },
  moreAir: { label: 'More air swallowed', kind: 'ratio', allowed: [-0.5, 1], allowedWords: '-50 to 100 %' },
  moreAirFrom: { label: 'from', kind: 'engineSpeed', allowed: [0, 30_000], allowedWords: '0 to 30000 rpm' },
  moreAirTo: { label: 'to', kind: 'engineSpeed', allowed: [0, 30_000], allowedWords: '0 to 30000 rpm' },
};

/** Whether anything is tried: with which combination alone is nothing. */
export const isTried = ({ on: _, ...rest }: WhatIfText): boolean =>
  Object.values(rest).some((text) => text !== undefined && text.trim() !== '');

/** One figure of a what-if in its inside unit; a refusal names the field and what it may be. */
export function whatIfFigure(name: WhatIfFigure, text: string): Result<number> {
  const { label, kind, allowed, allowedWords } = WHAT_IF_FIGURES[name];
  const read = parseQuantity(text, kind, { decimalMark: 'either' });
  if (!read.ok) return { ok: false, remarks: read.remarks.map((one) => remarkAbout(label, one)) };
  if (read.value >= allowed[0] && read.value <= allowed[1]) return read;
  return refused(
    remark('refusal', 'what-if-out-of-range', `${label}: ${text} cannot be. Allowed: ${allowedWords}.`),
  );
}

/**
 * What is tried, from text; `null` where nothing is. Every field that cannot be read has its own remark.
 *
 * @example whatIfFromText({ blowerPulleyDiameter: '80 mm' }, bundle) // { key: 'B', blowerPulleyDiameter: 0.08 }
 */
export function whatIfFromText(text: WhatIfText, bundle: MatchBundle): Result<WhatIf | null> {
  const tried = combinationTried(text, bundle);
  if (tried === null || !isTried(text)) return accepted(null);
  const refusals: Remark[] = [];
  const figure = (name: WhatIfFigure): number | undefined => {
    const typed = text[name];
    if (typed === undefined || typed.trim() === '') return undefined;
    const read = whatIfFigure(name, typed);
    if (read.ok) return read.value;
    refusals.push(...read.remarks);
    return undefined;
  };
  const { input } = tried;
  const figures = Object.fromEntries(
    Object.keys(WHAT_IF_FIGURES).map((name) => [name, figure(name as WhatIfFigure)]),
  ) as Record<WhatIfFigure, number | undefined>;
  const cooler = coolerFrom(text.cooler, figures, input.cooler, refusals);
  const air = airFrom(figures, input.air, refusals);
  const breathing = breathingFrom(figures, input.baseline.engineSpeedRpm, refusals);
  const fuel = fuelFrom(text.fuel, refusals);
  refusals.push(...pulleyTrouble(figures, input.drive));
  const [first, ...more] = refusals;
  if (first !== undefined) return refused(first, ...more);
  const { blowerPulleyDiameter, crankPulleyDiameter, stepUp, moreWork, evaporationCooling } = figures;
  return accepted({
    key: tried.key,
    ...(blowerPulleyDiameter === undefined ? {} : { blowerPulleyDiameter }),
    ...(crankPulleyDiameter === undefined ? {} : { crankPulleyDiameter }),
    ...(stepUp === undefined ? {} : { stepUp }),
    ...(cooler === undefined ? {} : { cooler }),
    ...(air === undefined ? {} : { air }),
    ...(moreWork === undefined ? {} : { workFactor: 1 + moreWork }),
    ...(evaporationCooling === undefined ? {} : { evaporationCooling }),
    ...(breathing === undefined ? {} : { breathing }),
    ...(fuel === undefined ? {} : { fuel }),
  });
}

/** The combination a what-if is tried on; `null` where none is matched. */
export const combinationTried = ({ on }: WhatIfText, { combinations }: MatchBundle) =>
  combinations.find(({ key }) => key === on) ?? combinations.at(-1) ?? null;

type Figures = Record<WhatIfFigure, number | undefined>;

/** A pulley in place of one of unknown size changes the ratio only where the other one is known. */
function pulleyTrouble(
  tried: Figures,
  drive: MatchBundle['combinations'][number]['input']['drive'],
): Remark[] {
  const pulleys = ['blowerPulleyDiameter', 'crankPulleyDiameter'] as const;
  const isKnown = (name: (typeof pulleys)[number]) => tried[name] !== undefined || drive[name] !== null;
  const isBlind = pulleys.some((name) => tried[name] !== undefined && drive[name] === null);
  if (!isBlind || pulleys.every(isKnown)) return [];
  return [
    remark(
      'refusal',
      'what-if-one-pulley',
      'The pulleys are not on the sheet, so one alone says nothing of the ratio. Give both, or write them on the sheet.',
    ),
  ];
}

function coolerFrom(
  kind: string | undefined,
  { coolerEffectiveness, coolantTemperature }: Figures,
  now: MatchBundle['combinations'][number]['input']['cooler'],
  refusals: Remark[],
): WhatIf['cooler'] {
  if (kind === undefined || kind === '') return undefined;
  if (kind === 'none') return 'none';
  if (kind !== 'other') {
    refusals.push(
      remark('refusal', 'what-if-cooler', `"${kind}" is no cooler that can be tried. Allowed: none, other.`),
    );
    return undefined;
  }
  return {
    effectiveness: coolerEffectiveness ?? now?.effectiveness ?? USUAL_EFFECTIVENESS,
    coolantTemperature: coolantTemperature ?? now?.coolantTemperature ?? null,
  };
}

/** An air-to-air cooler that is not known (common practice, no source): where a cooler is tried and none is fitted. */
export const USUAL_EFFECTIVENESS = 0.7;

function fuelFrom(text: string | undefined, refusals: Remark[]): Fuel | undefined {
  if (text === undefined || text.trim() === '') return undefined;
  const fuel = fuelNamed(text);
  if (fuel.ok) return fuel.value;
  refusals.push(...fuel.remarks.map((one) => remarkAbout('Fuel', one)));
  return undefined;
}

function airFrom(
  { altitude, airPressure, airTemperature }: Figures,
  now: AirState,
  refusals: Remark[],
): AirState | undefined {
  if (altitude === undefined && airPressure === undefined && airTemperature === undefined) return undefined;
  const state = airState({
    pressure: absolutePressure(
      altitude === undefined ? (airPressure ?? now.pressure) : standardAtmosphere(altitude).pressure,
    ),
    temperature: temperature(airTemperature ?? now.temperature),
    humidity: { route: 'relativeHumidity', ratio: now.relativeHumidity },
    altitude: null,
  });
  if (state.ok) return state.value;
  refusals.push(...state.remarks);
  return undefined;
}

function breathingFrom(
  { moreAir, moreAirFrom, moreAirTo }: Figures,
  engineSpeeds: readonly number[],
  refusals: Remark[],
): WhatIf['breathing'] {
  if (moreAir === undefined) return undefined;
  const fromRpm = moreAirFrom ?? engineSpeeds[0] ?? 0;
  const toRpm = moreAirTo ?? engineSpeeds.at(-1) ?? 0;
  if (fromRpm < toRpm) return { fromRpm, toRpm, share: moreAir };
  refusals.push(
    remark(
      'refusal',
      'what-if-speeds',
      `More air is asked for from ${fromRpm} to ${toRpm} r/min. The first speed must be the lower one.`,
    ),
  );
  return undefined;
}
