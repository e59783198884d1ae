import type { LimitId } from '../model.ts';
import { fuelOfTest, type PlannedTest } from './planned.testing.ts';

/** What passes a limit and what keeps within it, close by, each worked by hand from the figures beside it. */
export interface LimitCase {
  passes: PlannedTest;
  keeps: PlannedTest;
  /** Threshold, inside unit, where it is not one of the catalogue: of the sheet. */
  threshold?: number;
}

const PSI = 6894.757;
const HP = 745.69987;
const POUND_AN_HOUR = 0.45359237 / 3600;

const V8 = { cylinders: '8', bore: '101.6 mm', stroke: '88.4 mm', compressionRatio: '9.5' };
const block = (lines: Record<string, string>) => ({ shortBlock: { ...V8, ...lines } });
const boost = (psi: number) => ({ figures: { boost: psi * PSI } });
const drive = (lines: NonNullable<NonNullable<PlannedTest['input']>['drive']>): PlannedTest => ({
  input: { drive: lines },
});
/** Air that takes so many pounds of gasoline an hour at lambda 0.8. */
const airFor = (poundsAnHour: number) =>
  poundsAnHour * POUND_AN_HOUR * 0.8 * fuelOfTest('gasoline').stoichiometricAirFuelRatio;
const injectors = (poundsAnHour: number) => ({
  count: 8,
  flow: poundsAnHour * POUND_AN_HOUR,
  ratedDensity: fuelOfTest('gasoline').density,
  ratedPressure: 3e5,
  deadTime: null,
});
const manifold = 99_000;
const rail = { pressure: 3e5, reference: 'manifold' } as const;
const pump = (litresAnHour: number) => ({
  name: 'pump of a test',
  ratedVoltage: 13.5,
  voltage: 13.5,
  points: [{ pressure: 3e5, flow: litresAnHour / 3.6e6 }],
});
const charge = (octane: number, kelvin: number, bar: number, ratio = '9.5'): PlannedTest => ({
  sheet: block({ compressionRatio: ratio }),
  figures: { manifoldPressure: bar * 1e5, manifoldTemperature: kelvin, airFlow: 0.5, brakeTorque: 600 },
  supply: { fuel: { ...fuelOfTest('gasoline'), researchOctane: octane, motorOctane: octane - 10 } },
});

export const LIMIT_CASES: Readonly<Record<LimitId, LimitCase>> = {
  // (6800 + 200) r/min x 2 x 3.5 is 49,000 r/min.
  impellerSpeed: {
    passes: drive({ maximumImpellerSpeedRpm: 48_900 }),
    keeps: drive({ maximumImpellerSpeedRpm: 49_100 }),
    threshold: 48_900,
  },
  // pi x 0.152 m x 61,600 / 60 is 490 m/s; at 59,500 it is 474 m/s.
  tipSpeed: {
    passes: drive({ stepUp: 4.4, maximumImpellerSpeedRpm: null }),
    keeps: drive({ stepUp: 4.25, maximumImpellerSpeedRpm: null }),
  },
  // Eight ribs are known to hold 75 hp at 6,500 r/min on 7.5 in: the same crank pulley here, next to the same wrap.
  belt: {
    passes: { figures: { drivePower: [10_000, 30_000, 58_000] }, ...drive({ crankPulleyDiameter: 0.1905 }) },
    keeps: { figures: { drivePower: [10_000, 30_000, 54_000] }, ...drive({ crankPulleyDiameter: 0.1905 }) },
  },
  surge: {
    passes: { figures: { surgeMargin: [-0.02, 0.2, 0.4], pressureRatio: [1.3, 1.5, 1.8] } },
    keeps: { figures: { surgeMargin: [-0.02, 0.01, 0.4], pressureRatio: [1.1, 1.5, 1.8] } },
  },
  choke: {
    passes: { figures: { chokeMargin: [0.5, 0.3, 0.04], pressureRatio: 1.5 } },
    keeps: { figures: { chokeMargin: [0.5, 0.3, 0.06], pressureRatio: 1.5 } },
  },
  // 420 lb/h through eight of 60 lb/h: 87.5 %; of 62 lb/h: 84.7 %.
  injectors: {
    passes: {
      figures: { airFlow: airFor(420), manifoldPressure: manifold },
      supply: { injectors: injectors(60), rail },
    },
    keeps: {
      figures: { airFlow: airFor(420), manifoldPressure: manifold },
      supply: { injectors: injectors(62), rail },
    },
  },
  // 420 lb/h of gasoline of about 745 kg/m³ is some 256 L/h; 1.15 times it some 294.
  pump: {
    passes: {
      figures: { airFlow: airFor(420), manifoldPressure: manifold },
      supply: { pump: pump(285), rail },
    },
    keeps: {
      figures: { airFlow: airFor(420), manifoldPressure: manifold },
      supply: { pump: pump(305), rail },
    },
  },
  // 256 L/h through 8.7 mm is 1.2 m/s, through 11.1 mm 0.73 m/s.
  fuelLine: {
    passes: { figures: { airFlow: airFor(420) }, supply: { lineDiameter: 8.7e-3 } },
    keeps: { figures: { airFlow: airFor(420) }, supply: { lineDiameter: 11.1e-3 } },
  },
  spark: { passes: charge(80, 420, 2.4, '11.5'), keeps: charge(100, 330, 1.55) },
  // Between 9.25:1 (7 psi) and 10.25:1 (5 psi) without a cooler: 6.5 psi at 9.5:1.
  fuelAndCompression: {
    passes: { sheet: block({}), ...boost(6.6) },
    keeps: { sheet: block({}), ...boost(6.4) },
    threshold: 6.5 * PSI,
  },
  boostCap: {
    passes: { ...boost(10.1), boostCap: 10 * PSI },
    keeps: { ...boost(9.9), boostCap: 10 * PSI },
    threshold: 10 * PSI,
  },
  boost: {
    passes: { sheet: block({ boostLimit: '10 psi' }), ...boost(10.1) },
    keeps: { sheet: block({ boostLimit: '10 psi' }), ...boost(9.9) },
    threshold: 10 * PSI,
  },
  // 2 x 0.0884 m x 6,900 / 60 is 20.33 m/s; 4,000 ft/min is 20.32.
  pistonSpeed: {
    passes: { sheet: block({}), highestEngineSpeedRpm: 6910 },
    keeps: { sheet: block({}), highestEngineSpeedRpm: 6880 },
  },
  cylinderPressure: { passes: charge(140, 330, 3.2), keeps: charge(140, 330, 1.8) },
  rods: {
    passes: { sheet: block({ rods: 'powdered metal' }), figures: { brakePower: 560 * HP } },
    keeps: { sheet: block({ rods: 'powdered metal' }), figures: { brakePower: 540 * HP } },
  },
  pistons: {
    passes: { sheet: block({ pistons: 'hypereutectic' }), figures: { brakePower: 510 * HP, boost: 0 } },
    keeps: { sheet: block({ pistons: 'hypereutectic' }), figures: { brakePower: 490 * HP, boost: 0 } },
  },
  crankshaft: {
    passes: { sheet: block({ crankshaft: 'nodular iron' }), figures: { brakePower: 610 * HP } },
    keeps: { sheet: block({ crankshaft: 'nodular iron' }), figures: { brakePower: 590 * HP } },
  },
  block: {
    passes: { sheet: block({ powerLimit: '450 kW' }), figures: { brakePower: 451e3 } },
    keeps: { sheet: block({ powerLimit: '450 kW' }), figures: { brakePower: 449e3 } },
    threshold: 450e3,
  },
  headClamping: {
    passes: { sheet: { heads: { headFasteners: 'production bolts' } }, ...boost(10.1) },
    keeps: { sheet: { heads: { headFasteners: 'production bolts' } }, ...boost(9.9) },
  },
  // 4.000 in x 0.005 is 0.508 mm.
  ringGap: {
    passes: { sheet: block({ topRingGap: '0.50 mm' }), ...boost(10) },
    keeps: { sheet: block({ topRingGap: '0.51 mm' }), ...boost(10) },
    threshold: 0.508e-3,
  },
  // A valve of 2.02 in at 15 psi is pushed with 48 lb: 25 % of 192.
  valveSpring: {
    passes: { sheet: { heads: { intakeValveDiameter: '2.02 in', springSeatLoad: '190 lbf' } }, ...boost(15) },
    keeps: { sheet: { heads: { intakeValveDiameter: '2.02 in', springSeatLoad: '194 lbf' } }, ...boost(15) },
  },
  plugGap: {
    passes: { sheet: { ignition: { plugGap: '0.032 in' } }, ...boost(13) },
    keeps: { sheet: { ignition: { plugGap: '0.030 in' } }, ...boost(13) },
  },
  // 140 °F is 333.15 K.
  cooler: {
    passes: cooled(335),
    keeps: cooled(331),
  },
};

function cooled(kelvin: number): PlannedTest {
  return {
    figures: { manifoldTemperature: kelvin },
    input: {
      cooler: {
        by: 'water',
        effectiveness: 0.7,
        coolantTemperature: 298,
        loss: { pressureDifference: 0, atFlow: 1, atDensity: 1 },
      },
    },
  };
}
