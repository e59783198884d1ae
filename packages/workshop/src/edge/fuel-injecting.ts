import {
  cycleTime,
  deadTimeAt,
  type FuelRail,
  GASOLINE,
  type Injectors,
  injectorDuty,
  injectorNeeded,
  injectorSizeFor,
  pressureAcross,
  pumpNeeded,
  pumpPressure,
  USUAL_RATED_PRESSURE,
  USUAL_VOLTAGE,
  voltageFactor,
} from '@pullbook/core/fuel';
import { figureOf, percentFigure } from '@pullbook/core/quantity';
import { type Remark, remark, said } from '@pullbook/core/remark';
import { type Ends, each, endsOf, figureIn, PRACTICE } from './fuel-figures.ts';
import type { FuelQuestion } from './fuel-text.ts';
import { edgeNumber } from './number.ts';

const ratedDensity = GASOLINE.density;

/** Injectors that pass a fuel flow, kg/s: what each needs, or what those that are given would be open for. */
export function injectingOf(asked: FuelQuestion, fuelFlow: Ends) {
  const { fuel, injectors: count, injectorFlow, engineSpeedRpm, boost } = asked;
  const ratedPressure = asked.injectorPressure ?? USUAL_RATED_PRESSURE;
  const rail = railOf(asked);
  const across = rail === null ? null : pressureAcross(rail, boost ?? 0);
  const deadTime =
    asked.deadTime === null ? null : deadTimeAt(asked.deadTime, asked.voltage ?? USUAL_VOLTAGE);
  const lost = deadTime === null ? 0 : deadTime / cycleTime(engineSpeedRpm!);
  const needed =
    count === null || lost >= asked.duty
      ? null
      : each(fuelFlow, (one) => injectorNeeded({ fuelFlow: one, count, duty: asked.duty - lost }));
  const duty =
    injectorFlow === null || count === null
      ? { low: asked.duty, usual: asked.duty, high: asked.duty }
      : dutyOf({ ...injectorsOf(asked, ratedPressure), count, deadTime }, asked, fuelFlow, across!);
  const atRated = { fuel, across: across!, ratedPressure };
  const volumeOf = (flow: number) => flow / fuel.density;
  return {
    remarks: [...pressureRemarks(asked, ratedPressure), ...dutyRemarks(asked, duty, lost)],
    figures: {
      fuelPressureKpa: figureIn(rail?.pressure ?? null, 'kPa', 'pressureDifference'),
      fuelPressureOrigin: asked.fuelPressure === null ? `as injectors are told; ${PRACTICE}` : 'stated',
      fuelReference: asked.reference,
      pressureAcrossKpa: figureIn(across, 'kPa', 'pressureDifference'),
      engineSpeedRpm: edgeNumber(engineSpeedRpm),
      injectors: edgeNumber(count),
      ...endsOf(
        'injectorFlowNeededCcPerMin',
        needed === null ? null : each(needed, volumeOf),
        'cm³/min',
        'volumeFlow',
      ),
      injectorFlowNeededKgPerH: figureIn(needed?.usual ?? null, 'kg/h', 'massFlow'),
      injectorFlowNeededCcPerMinAtRatedPressure: figureIn(
        needed === null
          ? null
          : volumeOf(injectorSizeFor(needed.usual, { ...atRated, ratedDensity: fuel.density })),
        'cm³/min',
        'volumeFlow',
      ),
      injectorSizeCcPerMin: figureIn(
        needed === null ? null : injectorSizeFor(needed.usual, { ...atRated, ratedDensity }) / ratedDensity,
        'cm³/min',
        'volumeFlow',
      ),
      injectorSizeKgPerH: figureIn(
        needed === null ? null : injectorSizeFor(needed.usual, { ...atRated, ratedDensity }),
        'kg/h',
        'massFlow',
      ),
      ratedPressureKpa: figureIn(ratedPressure, 'kPa', 'pressureDifference'),
      ratedPressureOrigin: asked.injectorPressure === null ? `usual, 3 bar; ${PRACTICE}` : 'stated',
      ...endsOf('dutyPercent', duty, '%', 'ratio'),
      dutyOrigin:
        injectorFlow === null
          ? `the share reckoned with, ${asked.isDutyStated ? 'stated' : `usual; ${PRACTICE}`}`
          : 'computed: fuel flow over what they pass, and dead time',
      openTimeMs:
        engineSpeedRpm === null || count === null
          ? null
          : edgeNumber(duty.usual * cycleTime(engineSpeedRpm) * 1e3),
      deadTimeMs: figureIn(deadTime, 'ms', 'time'),
    },
  };
}

/** The pump and what it works against, for a fuel flow. */
export function pumpingOf(asked: FuelQuestion, fuelFlow: Ends) {
  const rail = railOf(asked);
  const needed = each(fuelFlow, (one) => pumpNeeded(one, asked.fuel));
  const voltage = asked.voltage ?? USUAL_VOLTAGE;
  return {
    ...endsOf('pumpFlowNeededLPerH', needed, 'L/h', 'volumeFlow'),
    pumpPressureKpa: figureIn(
      rail === null ? null : pumpPressure(rail, asked.boost ?? 0),
      'kPa',
      'pressureDifference',
    ),
    pumpFlowNeededLPerHAt13V5: figureIn(
      needed.usual / voltageFactor(voltage, USUAL_VOLTAGE),
      'L/h',
      'volumeFlow',
    ),
    pumpOrigin: `fuel flow with 20 % margin, at rest and boost, 9 % less a volt; ${PRACTICE}`,
  };
}

/** Pressure as stated, else that at which the injectors are told; `null`: no injectors, and none stated. */
function railOf({ fuelPressure, injectorPressure, injectors, reference }: FuelQuestion): FuelRail | null {
  const pressure = fuelPressure ?? (injectors === null ? null : (injectorPressure ?? USUAL_RATED_PRESSURE));
  return pressure === null ? null : { pressure, reference };
}

const injectorsOf = (
  { injectorFlow }: FuelQuestion,
  ratedPressure: number,
): Pick<Injectors, 'flow' | 'ratedDensity' | 'ratedPressure'> => ({
  flow: injectorFlow!.kind === 'massFlow' ? injectorFlow!.value : injectorFlow!.value * ratedDensity,
  ratedDensity,
  ratedPressure,
});

/** Without a dead time it is the same at any engine speed. */
const dutyOf = (
  injectors: Injectors,
  { fuel, engineSpeedRpm }: FuelQuestion,
  fuelFlow: Ends,
  across: number,
): Ends =>
  each(fuelFlow, (one) =>
    injectorDuty({ fuelFlow: one, injectors, fuel, across, engineSpeedRpm: engineSpeedRpm ?? 1 }),
  );

function pressureRemarks(
  { injectorFlow, injectorPressure, fuelPressure, injectors }: FuelQuestion,
  ratedPressure: number,
): Remark[] {
  const taken = figureOf(ratedPressure, 'pressureDifference');
  return [
    ...(injectorFlow !== null && injectorPressure === null
      ? [
          remark(
            'caution',
            'injector-pressure-assumed',
            said`The pressure at which the injectors’ flow is told is not given; ${taken} is taken (${PRACTICE}). Give --injector-pressure.`,
          ),
        ]
      : []),
    ...(injectors !== null && fuelPressure === null
      ? [
          remark(
            'caution',
            'fuel-pressure-assumed',
            said`No fuel pressure is given; ${taken} is taken, at which the injectors’ flow is told (${PRACTICE}). Give --fuel-pressure.`,
          ),
        ]
      : []),
  ];
}

function dutyRemarks(asked: FuelQuestion, duty: Ends, lost: number): Remark[] {
  if (lost >= asked.duty)
    return [
      remark(
        'caution',
        'dead-time-takes-all',
        said`Dead time takes ${percentFigure(lost)} of the time at that voltage and engine speed, and nothing is left for fuel of ${percentFigure(asked.duty)}.`,
      ),
    ];
  if (asked.injectorFlow === null || duty.usual <= asked.duty) return [];
  return [
    remark(
      'caution',
      'injectors-too-small',
      said`These injectors would be open for ${percentFigure(duty.usual)} of the time; ${percentFigure(asked.duty)} is as far as they should go, and above 100 % the mixture goes lean. Larger injectors, more of them, or more fuel pressure.`,
    ),
  ];
}
