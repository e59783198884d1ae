import { inventedChannel, inventedTorque, REFERENCE_WEATHER } from '../pull/invented-pull.testing.ts';
import { absolutePressure } from '../quantity/index.ts';
import { remark } from '../remark/index.ts';
import { ofMatch } from './match-cases.testing.ts';
import type { Finding } from './model.ts';
import {
  ofComparison,
  ofPull,
  ofSession,
  ofSheet,
  power,
  SPEEDS,
  sheetOf,
  sweptPull,
  tablePull,
} from './rules.testing.ts';

/** What breaks a rule and what holds it, close by. */
export interface RuleCase {
  breaks: () => Finding[];
  holds: () => Finding[];
}

const PSI = 6894.757;
const weather = (changes: Partial<typeof REFERENCE_WEATHER>) => ({
  weather: { ...REFERENCE_WEATHER, ...changes },
});
const flat = (value: number) => () => value;
const boostTo = (psi: number) => (speed: number) => psi * PSI * (speed / 6500) ** 2;
const factorPull = (factor: number) => tablePull({}, { carried: { standard: 'sae-j1349', factor } });
const CENTRIFUGAL = {
  supercharger: {
    type: 'centrifugal',
    stepUp: '4',
    maximumImpellerSpeed: '60000 rpm',
    wheelExitDiameter: '120 mm',
  },
  drive: { crankPulleyDiameter: '190 mm', blowerPulleyDiameter: '95 mm' },
};
const observedPower = power(inventedTorque);
/** Fuel for a consumption in lb/(hp·h) of observed power; 1 lb/(hp·h) is 1.68966e-7 kg/J. */
const fuelFor = (poundPerHpHour: number) => (speed: number) =>
  poundPerHpHour * 1.68966e-7 * observedPower(speed);
const exhausts = (...kelvin: number[]) => {
  const pull = tablePull();
  const probes = kelvin.map((value, index) => ({
    ...inventedChannel('exhaustTemperature', SPEEDS.map(flat(value))),
    name: `EGT ${index + 1}`,
  }));
  return { ...pull, channels: [...pull.channels, ...probes] };
};
const dayPull = (name: string, changes: Parameters<typeof tablePull>[1] = {}, torqueShare = 1, more = {}) =>
  tablePull(
    { torque: (speed) => torqueShare * inventedTorque(speed), ...more },
    {
      id: name,
      name,
      combinationId: 'c',
      ...changes,
    },
  );
const card = (eventsCloses: string) => ({
  cam: {
    durationIntake: '276 deg',
    durationExhaust: '282 deg',
    durationLift: '0.15 mm',
    intakeOpens: '32 deg',
    intakeCloses: eventsCloses,
    exhaustOpens: '75 deg',
    exhaustCloses: '27 deg',
  },
});
const flowSheet = (points: string) => ({
  heads: { intakeValveDiameter: '51 mm', flowIntake: { testPressure: '28 inH2O', points } },
});
const standing = (psi: number) => {
  const pull = tablePull({ boost: boostTo(8) });
  const rows = 5;
  return {
    ...pull,
    channels: pull.channels.map((channel) => {
      const value = channel.meaning === 'boost' ? psi * PSI : 0;
      return {
        ...channel,
        values: Float64Array.from([...Array.from({ length: rows }, () => value), ...channel.values]),
      };
    }),
  };
};
const startingOil = (celsius: number) => tablePull({ oilTemperature: flat(273.15 + celsius) });
const pictured = (share: number) =>
  tablePull({ power: (speed) => share * observedPower(speed) }, { origin: 'read off a picture' });
const slipping = (share: number) =>
  ofPull(
    tablePull({ boost: boostTo(8), impellerSpeed: (speed) => speed * 8 * (1 - share) }),
    sheetOf(CENTRIFUGAL),
  );

/** A case of each rule that is looked at here. */
export const RULE_CASES: Readonly<Record<string, RuleCase>> = {
  V01: {
    breaks: () => ofPull(tablePull({ power: (speed) => 1.05 * observedPower(speed) })),
    holds: () => ofPull(tablePull({ power: (speed) => 1.004 * observedPower(speed) })),
  },
  V02: {
    breaks: () => ofPull(tablePull({ power: (speed) => 1.355818 * observedPower(speed) })),
    holds: () => ofPull(tablePull({ power: (speed) => 1.3 * observedPower(speed) })),
  },
  V03: {
    breaks: () => {
      const pull = sweptPull();
      // A stretch in the middle of the sweep through which the brake lets the engine go at twice the rate.
      let extra = 0;
      const time = pull.channels.find(({ meaning }) => meaning === 'time')!.values;
      const speed = pull.channels.find(({ meaning }) => meaning === 'engineSpeed')!.values;
      const squeezed = time.map((value, row) => {
        if (row > 0 && speed[row]! > 4000 && speed[row]! < 4600 && value < 14)
          extra += (value - time[row - 1]!) / 2;
        return value - extra;
      });
      return ofPull({
        ...pull,
        channels: pull.channels.map((one) => (one.meaning === 'time' ? { ...one, values: squeezed } : one)),
      });
    },
    holds: () => ofPull(sweptPull()),
  },
  V04: { breaks: () => ofPull(factorPull(1.03)), holds: () => ofPull(factorPull(1.001)) },
  V05: {
    breaks: () => ofPull(tablePull({}, weather({ pressure: absolutePressure(80_000) }))),
    holds: () => ofPull(tablePull()),
  },
  V06: {
    breaks: () => ofPull(tablePull({}, weather({ pressure: absolutePressure(101_000), altitude: 800 }))),
    holds: () => ofPull(tablePull({}, weather({ pressure: absolutePressure(92_500), altitude: 800 }))),
  },
  V07: {
    breaks: () => ofPull(tablePull({}, weather({ humidity: { route: 'relativeHumidity', ratio: 1.2 } }))),
    holds: () => ofPull(tablePull({}, weather({ humidity: { route: 'relativeHumidity', ratio: 0.9 } }))),
  },
  V08: {
    breaks: () => ofPull(tablePull({ fuelFlow: fuelFor(0.3) })),
    holds: () => ofPull(tablePull({ fuelFlow: fuelFor(0.45) })),
  },
  V09: {
    breaks: () => ofPull(tablePull({ fuelFlow: flat(0.01), airFlow: flat(0.142), lambda: flat(0.85) })),
    holds: () => ofPull(tablePull({ fuelFlow: flat(0.01), airFlow: flat(0.126), lambda: flat(0.85) })),
  },
  V10: {
    breaks: () => ofPull(tablePull(), sheetOf({ shortBlock: { displacement: '2.2 L' } })),
    holds: () => ofPull(tablePull(), sheetOf({ shortBlock: { displacement: '3.8 L' } })),
  },
  V11: {
    breaks: () => ofPull(tablePull({ manifoldPressure: flat(90_000) }), sheetOf({ heads: { type: 'iron' } })),
    holds: () => ofPull(tablePull({ manifoldPressure: flat(96_000) }), sheetOf({ heads: { type: 'iron' } })),
  },
  V12: { breaks: () => ofPull(standing(1)), holds: () => ofPull(standing(0.2)) },
  V13: { breaks: () => slipping(0.06), holds: () => slipping(0.01) },
  V14: {
    breaks: () => ofPull(tablePull({ boost: boostTo(14), dischargeTemperature: flat(320) })),
    // From 298.15 K at a ratio near 2 an efficiency of 70 % is some 93 K.
    holds: () => ofPull(tablePull({ boost: flat(14 * PSI), dischargeTemperature: flat(298.15 + 92) })),
  },
  V15: {
    breaks: () => ofSheet({ cooler: { effectiveness: '98 %' } }),
    holds: () => ofSheet({ cooler: { effectiveness: '80 %' } }),
  },
  V16: {
    breaks: () =>
      ofComparison(
        [tablePull()],
        [tablePull({ torque: (speed) => 1.05 * inventedTorque(speed), boost: flat(10 * PSI) })],
      ),
    holds: () =>
      ofComparison(
        [tablePull()],
        [tablePull({ torque: (speed) => 1.5 * inventedTorque(speed), boost: flat(10 * PSI) })],
      ),
  },
  V17: {
    breaks: () => ofPull(tablePull({ fuelFlow: flat(0.031) }), injectors()),
    holds: () => ofPull(tablePull({ fuelFlow: flat(0.02) }), injectors()),
  },
  V18: {
    breaks: () => ofPull(tablePull({ fuelPressure: (speed) => 300e3 - 40e3 * ((speed - 2500) / 4000) })),
    holds: () => ofPull(tablePull({ fuelPressure: (speed) => 300e3 - 20e3 * ((speed - 2500) / 4000) })),
  },
  V20: {
    breaks: () => ofPull(tablePull({ impellerSpeed: (speed) => speed * 9.5 }), sheetOf(CENTRIFUGAL)),
    holds: () => ofPull(tablePull({ impellerSpeed: (speed) => speed * 8 }), sheetOf(CENTRIFUGAL)),
  },
  V21: {
    breaks: () => ofPull(tablePull(), sheetOf({ shortBlock: { stroke: '100 mm' } })),
    holds: () => ofPull(tablePull(), sheetOf({ shortBlock: { stroke: '88 mm' } })),
  },
  V22: {
    breaks: () =>
      ofPull(
        tablePull({ boost: boostTo(10) }),
        sheetOf({ shortBlock: { bore: '101.6 mm', topRingGap: '0.41 mm' } }),
      ),
    holds: () =>
      ofPull(
        tablePull({ boost: boostTo(10) }),
        sheetOf({ shortBlock: { bore: '101.6 mm', topRingGap: '0.71 mm' } }),
      ),
  },
  V23: { breaks: () => ofSheet(card('74 deg')), holds: () => ofSheet(card('64 deg')) },
  V24: {
    breaks: () => ofSheet(flowSheet('lift mm, flow L/s\n2, 24\n4, 48\n6, 70\n8, 60')),
    holds: () => ofSheet(flowSheet('lift mm, flow L/s\n2, 24\n4, 48\n6, 70\n8, 80')),
  },
  V25: {
    breaks: () => ofComparison([startingOil(90)], [startingOil(100)]),
    holds: () => ofComparison([startingOil(90)], [startingOil(93)]),
  },
  V26: {
    breaks: () =>
      ofComparison([tablePull()], [tablePull()], {
        remarks: [remark('caution', 'more-than-one-change', 'Two things changed at once in B.')],
      }),
    holds: () => ofComparison([tablePull()], [tablePull()]),
  },
  V28: {
    breaks: () => ofSession([dayPull('1', { orderInSession: 1 }), dayPull('2', { orderInSession: 2 }, 0.98)]),
    holds: () => ofSession([dayPull('1', { orderInSession: 1 }), dayPull('2', { orderInSession: 2 }, 0.995)]),
  },
  V29: {
    breaks: () => ofPull(tablePull({ torque: flat(400) })),
    holds: () => ofPull(tablePull({ torque: (speed) => 400 - 6e-5 * (speed - 4000) ** 2 })),
  },
  V30: {
    breaks: () => ofPull(tablePull({ torque: (speed) => 400 - 0.02 * (speed - 2500) })),
    holds: () => ofPull(tablePull({ torque: (speed) => 400 - 6e-5 * (speed - 4000) ** 2 })),
  },
  V31: {
    breaks: () =>
      ofPull(tablePull({ torque: (speed) => inventedTorque(speed) * (1 + 0.02 * Math.sin(speed / 60)) })),
    holds: () =>
      ofPull(tablePull({ torque: (speed) => inventedTorque(speed) * (1 + 0.004 * Math.sin(speed / 60)) })),
  },
  V32: { breaks: () => ofPull(exhausts(1000, 1010, 890)), holds: () => ofPull(exhausts(1000, 1010, 920)) },
  V33: {
    breaks: () => ofComparison([tablePull({ lambda: flat(0.86) })], [tablePull({ lambda: flat(0.9) })]),
    holds: () => ofComparison([tablePull({ lambda: flat(0.86) })], [tablePull({ lambda: flat(0.87) })]),
  },
  V34: {
    breaks: () =>
      ofPull(tablePull({ airFuelRatio: flat(12.2) }), sheetOf({ fuel: { ethanolShare: '85 %' } })),
    holds: () => ofPull(tablePull({ airFuelRatio: flat(8.2) }), sheetOf({ fuel: { ethanolShare: '85 %' } })),
  },
  V35: {
    breaks: () => ofComparison([tapped('plenum')], [tapped('before the throttle')]),
    holds: () => ofComparison([tapped('plenum')], [tapped('Plenum')]),
  },
  V36: { breaks: () => ofSheet({ ...chamber('9.2:1') }), holds: () => ofSheet({ ...chamber('9.0:1') }) },
  V37: {
    // 8 × π/4 × (101.6 mm)² × 88.4 mm is 5.733 L.
    breaks: () => ofSheet(block('5.80 L')),
    holds: () => ofSheet(block('5.7 L')),
  },
  V38: { breaks: () => ofPull(pictured(1.03)), holds: () => ofPull(pictured(1.005)) },
  V39: {
    breaks: () => ofPull(tablePull({ oilPressure: (speed) => (8 * PSI * speed) / 1000 })),
    holds: () => ofPull(tablePull({ oilPressure: (speed) => (11 * PSI * speed) / 1000 })),
  },
  V41: {
    // Some 42 kW at the crankshaft: eight ribs are known to hold 55 kW, six 34 kW.
    breaks: () => ofMatch({ drive: { ribs: 6 } }),
    holds: () => ofMatch({ drive: { ribs: 8 } }),
  },
  V42: {
    breaks: () => ofMatch({ swallowing: { scale: 0.75 } }),
    holds: () => ofMatch({ swallowing: { scale: 1.1 } }),
  },
  V43: {
    breaks: () => ofMatch({ compressor: { constantEfficiency: 0.3 } }),
    holds: () => ofMatch({ compressor: { constantEfficiency: 0.72 } }),
  },
  V44: {
    // 2.02 in at 15 psi: 48 lbf, 27 % of 178 and 23 % of 209.
    breaks: () => boosted(15, { heads: { intakeValveDiameter: '2.02 in', springSeatLoad: '178 lbf' } }),
    holds: () => boosted(15, { heads: { intakeValveDiameter: '2.02 in', springSeatLoad: '209 lbf' } }),
  },
  V45: {
    breaks: () => boosted(11, { heads: { headFasteners: 'production bolts' } }),
    holds: () => boosted(11, { heads: { headFasteners: 'studs', headGasket: 'multi-layer steel' } }),
  },
  V46: {
    // Some 330 hp at most: 83 hp from each of four cylinders, 55 hp of six.
    breaks: () => ofPull(tablePull(), sheetOf({ shortBlock: { cylinders: '4', crankshaft: 'cast iron' } })),
    holds: () => ofPull(tablePull(), sheetOf({ shortBlock: { cylinders: '6', crankshaft: 'cast iron' } })),
  },
  V50: {
    breaks: () => boosted(11, { shortBlock: { boostLimit: '10 psi' } }),
    holds: () => boosted(9, { shortBlock: { boostLimit: '10 psi' } }),
  },
  V40: {
    breaks: () => ofSession([at('1', 1, '10:20'), at('2', 2, '10:05')]),
    holds: () => ofSession([at('1', 1, '10:05'), at('2', 2, '10:20')]),
  },
};

function boosted(psi: number, sections: Record<string, Record<string, string>>) {
  return ofPull(tablePull({ boost: boostTo(psi) }), sheetOf(sections));
}

function injectors() {
  // 8 × 0.00441 kg/s (35 lb/h) is 0.0353 kg/s when open.
  return sheetOf({ fuelSystem: { injectors: '8', injectorFlow: '35 lb/h', injectorFlowPressure: '3 bar' } });
}

function tapped(boostTap: string) {
  return tablePull({ boost: flat(10 * PSI) }, { places: { boostTap } });
}

/** Volumes that give a ratio of 9.0: 500 cm³ swept, 62.5 cm³ left. */
function chamber(compressionRatio: string) {
  const bore = 2 * Math.sqrt(500 / (Math.PI * 8));
  return {
    shortBlock: {
      compressionRatio,
      cylinders: '1',
      bore: `${bore * 10} mm`,
      stroke: '80 mm',
      gasketBore: `${bore * 10} mm`,
      gasketThickness: '0 mm',
      deckClearance: '0 mm',
      pistonDishVolume: '0 cm3',
    },
    heads: { chamberVolume: '62.5 cm3' },
  };
}

function block(displacement: string) {
  return { shortBlock: { displacement, cylinders: '8', bore: '101.6 mm', stroke: '88.4 mm' } };
}

function at(name: string, orderInSession: number, time: string) {
  return dayPull(name, { orderInSession, recordedAt: `2026-03-10T${time}:00+01:00` });
}
