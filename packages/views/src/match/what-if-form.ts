import { fuelNamed, NAMED_FUELS } from '@pullbook/core/fuel';
import {
  formatQuantity,
  type QuantityKind,
  type UnitSystem,
  unitFor,
  writeSaid,
} from '@pullbook/core/quantity';
import type { MatchBundle, MatchedCombination } from '../match-model.ts';
import type { ViewOptions } from '../model.ts';
import {
  combinationTried,
  isTried,
  USUAL_EFFECTIVENESS,
  WHAT_IF_FIGURES,
  type WhatIfFigure,
  type WhatIfText,
  whatIfFigure,
} from './what-if-text.ts';

/** A figure of a what-if as a field: typed, or a step less or more. */
export interface WhatIfField {
  name: WhatIfFigure;
  label: string;
  /** In the field, with the decimal mark shown; what stands as it is where nothing is typed. */
  value: string;
  /** Something else than what stands is tried. */
  isTried: boolean;
  /** What stands, in words; '' nothing stands. */
  stands: string;
  /** As `WhatIfText` has it, one step down and up; `null`: no further. */
  less: string | null;
  more: string | null;
  /** What is wrong with what was typed; '' nothing. */
  trouble: string;
}

/** Another fuel as a field: by its name or its parts. */
export interface WhatIfFuel {
  value: string;
  isTried: boolean;
  /** What it burns now. */
  stands: string;
  /** What is wrong with what was typed; '' nothing. */
  trouble: string;
  /** Names that are known. */
  names: string[];
}

/** The whole form, in the units shown. */
export interface WhatIfForm {
  /** Key of the combination it is tried on. */
  on: string;
  combinations: { key: string; name: string }[];
  /** Pulleys and step-up. */
  drive: WhatIfField[];
  cooler: { chosen: 'as it is' | 'none' | 'other'; stands: string; fields: WhatIfField[] };
  air: WhatIfField[];
  work: WhatIfField[];
  fuel: WhatIfFuel;
  breathing: WhatIfField[];
  isTried: boolean;
}

type Steps = Record<UnitSystem, { unit: string; step: number; decimals: number }>;

const PULLEY: Steps = {
  us: { unit: 'in', step: 0.05, decimals: 3 },
  si: { unit: 'mm', step: 1, decimals: 1 },
};
const DEGREES: Steps = {
  us: { unit: '°F', step: 5, decimals: 0 },
  si: { unit: '°C', step: 2, decimals: 1 },
};
const SHARE: Steps = {
  us: { unit: '%', step: 1, decimals: 1 },
  si: { unit: '%', step: 1, decimals: 1 },
};
const SPEED: Steps = {
  us: { unit: 'rpm', step: 250, decimals: 0 },
  si: { unit: 'rpm', step: 250, decimals: 0 },
};

/** In what unit a figure is shown in the form, and how far one press moves it. */
const STEPS: Record<WhatIfFigure, Steps> = {
  blowerPulleyDiameter: PULLEY,
  crankPulleyDiameter: PULLEY,
  stepUp: { us: { unit: '', step: 0.05, decimals: 3 }, si: { unit: '', step: 0.05, decimals: 3 } },
  coolerEffectiveness: { us: { ...SHARE.us, step: 5 }, si: { ...SHARE.si, step: 5 } },
  coolantTemperature: DEGREES,
  altitude: { us: { unit: 'ft', step: 500, decimals: 0 }, si: { unit: 'm', step: 100, decimals: 0 } },
  airPressure: { us: { unit: 'inHg', step: 0.1, decimals: 2 }, si: { unit: 'kPa', step: 0.5, decimals: 2 } },
  airTemperature: DEGREES,
  moreWork: SHARE,
  evaporationCooling: { us: { unit: '°F', step: 5, decimals: 0 }, si: { unit: 'K', step: 2, decimals: 1 } },
  moreAir: SHARE,
  moreAirFrom: SPEED,
  moreAirTo: SPEED,
};

/** The fields of a what-if with what stands, what is typed, and a step either way. */
export function whatIfForm(bundle: MatchBundle, text: WhatIfText, options: ViewOptions): WhatIfForm | null {
  const tried = combinationTried(text, bundle);
  if (tried === null) return null;
  const standing = standsOf(tried);
  const field = (name: WhatIfFigure) => fieldOf(name, text[name], standing[name], options);
  const chosen = text.cooler === 'none' || text.cooler === 'other' ? text.cooler : 'as it is';
  const { effectiveness } = tried.input.cooler ?? {};
  return {
    on: tried.key,
    combinations: bundle.combinations.map(({ key, name }) => ({ key, name })),
    drive: [field('blowerPulleyDiameter'), field('crankPulleyDiameter'), field('stepUp')],
    cooler: {
      chosen,
      stands:
        effectiveness === undefined
          ? 'no cooler'
          : `effectiveness ${written('coolerEffectiveness', effectiveness, options)}`,
      fields: chosen === 'other' ? [field('coolerEffectiveness'), field('coolantTemperature')] : [],
    },
    air: [field('airTemperature'), field('airPressure'), field('altitude')],
    work: [field('moreWork'), field('evaporationCooling')],
    fuel: fuelOf(text.fuel, tried),
    breathing: [field('moreAir'), field('moreAirFrom'), field('moreAirTo')],
    isTried: isTried(text),
  };
}

/** What was typed with the decimal mark shown, as `WhatIfText` holds it: with a point and without groups. */
export function asWhatIfText(typed: string, { decimalMark }: Pick<ViewOptions, 'decimalMark'>): string {
  return decimalMark === ','
    ? typed.replaceAll('.', '').replace(',', '.').trim()
    : typed.replaceAll(',', '').trim();
}

function fuelOf(typed: string | undefined, { supply }: MatchedCombination): WhatIfFuel {
  const value = typed ?? '';
  const read = value.trim() === '' ? null : fuelNamed(value);
  return {
    value,
    isTried: read !== null,
    stands: supply.fuel.name,
    trouble: read === null || read.ok ? '' : (read.remarks[0]?.message ?? ''),
    names: NAMED_FUELS.map(({ fuel }) => fuel.name),
  };
}

/** Figures that stand, in the inside unit; `null`: none. */
function standsOf({ input }: MatchedCombination): Record<WhatIfFigure, number | null> {
  const { drive, cooler, air, charge, baseline } = input;
  return {
    blowerPulleyDiameter: drive.blowerPulleyDiameter,
    crankPulleyDiameter: drive.crankPulleyDiameter,
    stepUp: drive.stepUp,
    coolerEffectiveness: cooler?.effectiveness ?? USUAL_EFFECTIVENESS,
    coolantTemperature: cooler?.coolantTemperature ?? air.temperature,
    altitude: null,
    airPressure: air.pressure,
    airTemperature: air.temperature,
    moreWork: 0,
    evaporationCooling: charge.evaporationCooling,
    moreAir: 0,
    moreAirFrom: baseline.engineSpeedRpm[0] ?? null,
    moreAirTo: baseline.engineSpeedRpm.at(-1) ?? null,
  };
}

function fieldOf(
  name: WhatIfFigure,
  typed: string | undefined,
  stands: number | null,
  options: ViewOptions,
): WhatIfField {
  const isTyped = typed !== undefined && typed !== '';
  const read = isTyped ? whatIfFigure(name, typed) : null;
  const now = read === null ? stands : read.ok ? read.value : null;
  return {
    name,
    label: WHAT_IF_FIGURES[name].label,
    value: isTyped ? withMark(typed, options) : stands === null ? '' : written(name, stands, options),
    isTried: isTyped,
    stands: stands === null ? '' : written(name, stands, options),
    less: stepped(name, now ?? stands ?? 0, -1, options.units),
    more: stepped(name, now ?? stands ?? 0, 1, options.units),
    trouble:
      read === null || read.ok
        ? ''
        : read.remarks.map(({ message, parts }) => writeSaid(message, parts, options)).join(' '),
  };
}

const kindOf = (name: WhatIfFigure): QuantityKind => WHAT_IF_FIGURES[name].kind;

/** One step down or up from a value, as text with a point; `null` where that is not allowed any more. */
function stepped(name: WhatIfFigure, value: number, direction: -1 | 1, units: UnitSystem): string | null {
  const { unit: unitName, step } = STEPS[name][units];
  const unit = unitFor(unitName, kindOf(name))!;
  const text = written(name, value + direction * step * unit.factor, { units, decimalMark: '.' });
  return whatIfFigure(name, text).ok ? text : null;
}

/** A value as the form writes it, without digits that say nothing. */
function written(name: WhatIfFigure, value: number, { units, decimalMark }: ViewOptions): string {
  const { unit, decimals } = STEPS[name][units];
  const kind = kindOf(name);
  const { number, unit: printed } = formatQuantity(value, kind, {
    system: units,
    decimalMark: '.',
    unit: unitFor(unit, kind)!,
    decimals,
    thousands: false,
  });
  const short = number.includes('.') ? number.replace(/\.?0+$/, '') : number;
  return withMark(`${short} ${printed}`.trim().replace('−', '-'), { units, decimalMark });
}

const withMark = (text: string, { decimalMark }: ViewOptions): string =>
  decimalMark === ',' ? text.replace('.', ',') : text;
