/**
 * Another engine than the demo's, made by equations of its own: a carburetted eight with a blower behind its filter. Nothing of
 * the program is used. It breathes, rubs, burns and blows by laws that are not those of the match: the stage's head and efficiency
 * over flow are parabolas, burnt gas counts for seven tenths of the textbook's share, the charge's heat goes in by the power 0.4, the spark is
 * taken back with engine speed, fuel cools nothing before the probe.
 */

const AIR = { pressure: 98_600, temperature: 295.15, cp: 1006, gasConstant: 287, kappa: 1.4 };
const ENGINE = { displacement: 5.74e-3, compressionRatio: 9.5, airFuel: 13, heat: 44e6, efficiency: 0.365 };
const WHEEL = { exit: 0.115, stepUp: 4.1, crank: 171.45, slip: 0.012 };
const RISE = (AIR.kappa - 1) / AIR.kappa;
const POUND = 0.45359237;

/** Pressure ratio and efficiency at corrected speed and flow (288.15 K, 101,325 Pa); `null`: past the end of the line. */
function stage(speedRpm: number, flow: number): { ratio: number; efficiency: number } | null {
  const tip = (Math.PI * WHEEL.exit * speedRpm) / 60;
  const mach = tip / Math.sqrt(AIR.kappa * AIR.gasConstant * 288.15);
  const density = 101_325 / (AIR.gasConstant * 288.15);
  const coefficient = flow / (density * tip * WHEEL.exit ** 2);
  const share = coefficient / (0.055 + 0.055 * mach);
  if (share >= 1) return null;
  const choking = share > 0.93 ? Math.max(0.2, 1 - 0.55 * ((share - 0.93) / 0.07) ** 2) : 1;
  const efficiency = 0.78 * (1 - 1.1 * (share - 0.62) ** 2 - 0.9 * Math.max(0, share - 0.8) ** 2) * choking;
  const head = (0.7 - 0.9 * coefficient) * tip ** 2 * efficiency;
  return { ratio: (1 + head / (AIR.cp * 288.15)) ** (1 / RISE), efficiency };
}

/** Its map as a maker prints it, in lb/min. */
export function printedMap(): string {
  const density = 101_325 / (AIR.gasConstant * 288.15);
  const rows = [25_000, 30_000, 35_000, 40_000, 45_000, 50_000].flatMap((speed) =>
    [0.42, 0.5, 0.58, 0.66, 0.74, 0.82, 0.9, 0.96].map((share) => {
      const tip = (Math.PI * WHEEL.exit * speed) / 60;
      const mach = tip / Math.sqrt(AIR.kappa * AIR.gasConstant * 288.15);
      const flow = share * (0.055 + 0.055 * mach) * density * tip * WHEEL.exit ** 2;
      const { ratio, efficiency } = stage(speed, flow)!;
      return `${((flow / POUND) * 60).toFixed(2)},${ratio.toFixed(3)},${speed},${(100 * efficiency).toFixed(1)}`;
    }),
  );
  return [
    '# name: Centrifugal no. 7',
    '# reference pressure: 29.92 inHg',
    '# reference temperature: 59 °F',
    '# wheel exit diameter: 115 mm',
    '# left end: surge',
    '# origin: data sheet',
    'flow [lb/min],pressure ratio,speed [rpm],efficiency [%]',
    ...rows,
    '',
  ].join('\n');
}

/** W, Pa above ambient in the manifold, K there. */
interface Running {
  power: number;
  boost: number;
  charge: number;
}

const filling = (rpm: number): number => 0.9 - 0.16 * ((rpm - 4700) / 2700) ** 2;
const cylinders = (rpm: number): number => (ENGINE.displacement * rpm) / 120;
const friction = (rpm: number): number => (60e3 + 13.3 * rpm + 0.0016 * rpm ** 2) * cylinders(rpm);
const burnt = (ratio: number): number =>
  1 + (0.7 * (1 - ratio)) / (AIR.kappa * (ENGINE.compressionRatio - 1));
const work = (air: number): number => (air / ENGINE.airFuel) * ENGINE.heat * ENGINE.efficiency;

function swallowed(rpm: number, pressure: number, charge: number, exhaust: number): number {
  const heat = (charge / AIR.temperature) ** 0.4;
  return (
    ((filling(rpm) * burnt(exhaust / pressure) * heat * pressure) / (AIR.gasConstant * charge)) *
    cylinders(rpm)
  );
}

export function alone(rpm: number): Running {
  const square = (rpm / 6000) ** 2;
  const air = swallowed(rpm, AIR.pressure - 1500 * square, AIR.temperature, AIR.pressure + 9000 * square);
  return { power: work(air) - friction(rpm), boost: 0, charge: AIR.temperature };
}

/** With the blower on a pulley of so many mm. */
export function blown(rpm: number, pulley: number): Running {
  const inlet = AIR.pressure - 1500;
  const speed = ((rpm * WHEEL.crank) / pulley) * WHEEL.stepUp * (1 - WHEEL.slip);
  const corrected = speed * Math.sqrt(288.15 / AIR.temperature);
  const at = (air: number) => {
    const point = stage(corrected, (air * Math.sqrt(AIR.temperature / 288.15) * 101_325) / inlet);
    if (point === null) return null;
    const hot = AIR.temperature * (1 + (point.ratio ** RISE - 1) / point.efficiency);
    const charge = hot - 0.68 * (hot - 289);
    const pressure = inlet * point.ratio - 5000 * (air / 0.4) ** 2;
    const taken = swallowed(rpm, pressure, charge, AIR.pressure + 9000 * (air / 0.28) ** 2);
    return { hot, charge, pressure, taken };
  };
  let [low, high] = [0.01, 1.2];
  for (let halving = 0; halving < 60; halving++) {
    const air = (low + high) / 2;
    const found = at(air);
    if (found === null || found.taken < air) high = air;
    else low = air;
  }
  const { hot, charge, pressure } = at(low)!;
  const drive = (low * AIR.cp * (hot - AIR.temperature)) / 0.97;
  const spark = 0.99 - 0.02 * Math.max(0, (rpm - 4500) / 1700);
  return { power: spark * work(low) - friction(rpm) - drive, boost: pressure - AIR.pressure, charge };
}

/** A log at 20 Hz as an American cell writes it; noise by a plain generator of its own, some 0.6 % of torque. */
export function logOf(at: (rpm: number) => Running, seed: number, isBlown: boolean): string {
  let state = seed * 7919 + 17;
  const uniform = () => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return state / 2_147_483_648;
  };
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  const day = 1 + 0.003 * normal();
  const fahrenheit = (kelvin: number) => (1.8 * kelvin - 459.67).toFixed(1);
  const psi = (pascal: number) => (pascal / 6894.757).toFixed(2);
  const rows: string[] = [];
  for (let row = 0; 2400 + 15 * row < 6250; row++) {
    const rpm = 2400 + 15 * row;
    const { power, boost, charge } = at(rpm);
    const torque = ((day * power) / ((rpm * Math.PI) / 30)) * (1 + 0.006 * normal());
    const cells = [(row / 20).toFixed(2), (rpm + 2 * normal()).toFixed(0), (torque / 1.3558179).toFixed(1)];
    if (isBlown) cells.push(psi(boost + 300 * normal()), fahrenheit(charge + normal()));
    rows.push(cells.join(','));
  }
  const heading = `Time (s),RPM,Torque (lb-ft)${isBlown ? ',Boost (psi),Charge Temp (F)' : ''}`;
  return `${heading}\n${rows.join('\n')}\n`;
}

const SHEET = `shortBlock:
  configuration: V
  cylinders: 8
  bore: 4.001 in
  stroke: 3.48 in
  compressionRatio: "9.5:1"
fuelSystem:
  type: blow-through carburettor
fuel:
  name: pump gasoline
`;

export const sheetAlone = `schemaVersion: 1\nname: Eight, no blower\n${SHEET}`;

/** What the tester knows of it: the cooler's figure is a guess, slip and losses are not on the sheet. */
export const sheetBlown = `schemaVersion: 1
name: Eight, 3.5 in pulley
${SHEET}supercharger:
  type: centrifugal
  unit: no. 7
  map: Centrifugal no. 7
  stepUp: "4.1"
  maximumImpellerSpeed: 58000 rpm
drive:
  type: ribbed belt
  crankPulleyDiameter: 6.75 in
  blowerPulleyDiameter: 3.5 in
cooler:
  type: air to water
  effectiveness: 70 %
  coolantTemperature: 60 °F
`;
