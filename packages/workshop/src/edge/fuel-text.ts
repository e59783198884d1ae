import { type Fuel, type FuelRail, fuelNamed, GASOLINE, type Induction } from '@pullbook/core/fuel';
import type { QuantityKind } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import {
  countOf,
  flowOf,
  type InjectorFlow,
  inductionOf,
  inRange,
  referenceOf,
  shareOf,
} from './fuel-fields.ts';

/** What fuel a power or an air flow takes, as text with units. */
export interface FuelText {
  /** `500hp`; one of power and air flow. */
  power?: string | undefined;
  /** `0.45 kg/s` */
  airFlow?: string | undefined;
  /** `E85`, `70 % ethanol, 30 % gasoline`; missing: gasoline */
  fuel?: string | undefined;
  /** `boosted`: with a centrifugal supercharger; missing: naturally aspirated */
  induction?: string | undefined;
  injectors?: string | undefined;
  /** Of one, as told: `42 lb/h`, `440 cc/min` */
  injectorFlow?: string | undefined;
  /** At which that is told: `3bar` */
  injectorPressure?: string | undefined;
  fuelPressure?: string | undefined;
  /** `manifold`, `open-air` */
  reference?: string | undefined;
  boost?: string | undefined;
  engineSpeed?: string | undefined;
  lambda?: string | undefined;
  consumption?: string | undefined;
  voltage?: string | undefined;
  deadTime?: string | undefined;
  /** `85%`: most of the time for which the injectors may be open. */
  duty?: string | undefined;
}

/** The same in inside units; `null`: not told. */
export interface FuelQuestion {
  power: number | null;
  airFlow: number | null;
  fuel: Fuel;
  induction: Induction;
  injectors: number | null;
  injectorFlow: InjectorFlow | null;
  injectorPressure: number | null;
  fuelPressure: number | null;
  reference: FuelRail['reference'];
  /** Pa, gauge */
  boost: number | null;
  engineSpeedRpm: number | null;
  lambda: number | null;
  consumption: number | null;
  voltage: number | null;
  deadTime: number | null;
  duty: number;
  isDutyStated: boolean;
}

/** Reads a question about fuel. Every field that cannot be read or contradicts another has its own remark. */
export function fuelQuestionFrom(text: FuelText): Result<FuelQuestion> {
  const remarks: Remark[] = [];
  const take = <T>(read: Result<T>, otherwise: T): T => {
    remarks.push(...read.remarks);
    return read.ok ? read.value : otherwise;
  };
  const number = (
    field: keyof FuelText,
    kind: QuantityKind,
    label: string,
    within: readonly [low: number, high: number, words: string],
  ) => take(inRange(text[field], kind, label, within), null);
  const injectorFlow = take(flowOf(text.injectorFlow), null);
  const question: FuelQuestion = {
    power: number('power', 'power', 'Power', [1e2, 2e7, '0.1 to 20,000 kW']),
    airFlow: number('airFlow', 'massFlow', 'Air flow', [1e-4, 50, '0.1 g/s to 50 kg/s']),
    fuel: take(fuelNamed(text.fuel ?? 'gasoline'), GASOLINE),
    induction: take(inductionOf(text.induction), 'naturally aspirated'),
    injectors: take(countOf(text.injectors), null),
    injectorFlow,
    injectorPressure: number(
      'injectorPressure',
      'pressureDifference',
      'Pressure of the injectors’ flow',
      POSITIVE_PRESSURE,
    ),
    fuelPressure: number('fuelPressure', 'pressureDifference', 'Fuel pressure', POSITIVE_PRESSURE),
    reference: take(referenceOf(text.reference), 'manifold'),
    boost: number('boost', 'gaugePressure', 'Boost', [0, 1e6, '0 to 10 bar']),
    engineSpeedRpm: number('engineSpeed', 'engineSpeed', 'Engine speed', [100, 50_000, '100 to 50,000 rpm']),
    lambda: number('lambda', 'ratio', 'Lambda', [0.3, 3, '0.3 to 3']),
    consumption: number('consumption', 'specificConsumption', 'Specific consumption', [
      1e-8,
      1e-6,
      '36 to 3,600 g/(kW·h)',
    ]),
    voltage: number('voltage', 'voltage', 'Voltage', [6, 60, '6 to 60 V']),
    deadTime: number('deadTime', 'time', 'Dead time', [0, 0.02, '0 to 20 ms']),
    duty: take(shareOf(text.duty), 1),
    isDutyStated: text.duty !== undefined,
  };
  remarks.push(...contradictions(text, question));
  const wrong = remarks.filter(({ level }) => level === 'refusal');
  if (wrong.length > 0) return refused(...(wrong as [Remark, ...Remark[]]));
  const isBoostMissing = text.boost === undefined && question.induction !== 'naturally aspirated';
  return accepted(question, isBoostMissing ? [...remarks, BOOST_MISSING] : remarks);
}

const BOOST_MISSING = remark(
  'note',
  'boost-missing',
  'No boost is given, so none is in what the pump works against, nor taken from what is across injectors whose pressure is held above open air. Give it, such as --boost 10psi.',
);

const POSITIVE_PRESSURE = [1e3, 5e7, '0.01 to 500 bar'] as const;

const refusal = (code: string, message: string): Remark => remark('refusal', code, message);

/** What is wrong of the fields together. A field that could not be read has had its word. */
function contradictions(text: FuelText, question: FuelQuestion): Remark[] {
  const found: Remark[] = [];
  const isGiven = (field: keyof FuelText) => text[field] !== undefined;
  if (isGiven('power') === isGiven('airFlow'))
    found.push(
      refusal(
        'power-or-air',
        isGiven('power')
          ? 'Power and air flow are both given, and each says how much fuel it takes. Give one of them.'
          : 'Give what the fuel is for: --power 500hp, or --air-flow 0.45kg/s.',
      ),
    );
  if (isGiven('injectorFlow') && !isGiven('injectorPressure') && !isGiven('fuelPressure'))
    found.push(
      refusal(
        'injector-without-pressure',
        `An injector’s flow of ${text.injectorFlow} says nothing without a pressure. Give the pressure at which it is told, such as --injector-pressure 3bar, and the pressure it will have, such as --fuel-pressure 4bar.`,
      ),
    );
  if (isGiven('injectorFlow') && !isGiven('injectors'))
    found.push(
      refusal(
        'injectors-missing',
        'How many injectors share the fuel? Give their number, such as --injectors 8.',
      ),
    );
  if (isGiven('deadTime') && !isGiven('engineSpeed'))
    found.push(
      refusal(
        'dead-time-without-speed',
        'What dead time takes of the time goes with engine speed. Give the highest, such as --engine-speed 6500rpm.',
      ),
    );
  const { fuelPressure, injectorPressure, reference, boost, induction } = question;
  if (boost !== null && boost > 0 && induction === 'naturally aspirated')
    found.push(
      refusal(
        'boost-without-supercharger',
        `A naturally aspirated engine has no boost, and ${text.boost} is given. Say what makes it, such as --induction boosted, or leave --boost out.`,
      ),
    );
  const pressure = fuelPressure ?? injectorPressure;
  if (reference === 'open air' && pressure !== null && boost !== null && boost >= pressure)
    found.push(
      refusal(
        'nothing-across',
        `Held above open air, a fuel pressure of ${text.fuelPressure ?? text.injectorPressure} leaves nothing across the injectors under ${text.boost} of boost. Give more pressure, or a regulator that follows boost (--reference manifold).`,
      ),
    );
  return found;
}
