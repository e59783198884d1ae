/** A match file as plain data, of an engine that is made up from a seed. */
export interface InventedFile {
  schemaVersion: 1;
  name: string;
  combination: Record<string, Record<string, string | number>>;
  baseline: { table: string; weather: Record<string, string>; fuel: string };
  map: unknown;
  weather: Record<string, string>;
  bands: 'none';
  reach?: Record<string, unknown>;
}

/** Numbers from 0 to 1 by a seed: mulberry32, a public routine of T. Ettinger, from memory. */
export function fromSeed(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const FUEL = 'gasoline 98';
const FIRST_RPM = 2000;
const STEP_RPM = 500;

/**
 * An engine with a rated supercharger by laws of its own: volumetric efficiency a parabola over speed, friction a line, work in proportion to air. Limits stand so
 * far off that something can be gained before they bind, and not without end.
 */
export function inventedFile(seed: number): InventedFile {
  const next = fromSeed(seed);
  const within = (low: number, high: number, digits: number) =>
    Number((low + (high - low) * next()).toFixed(digits));
  const cylinders = [4, 6, 8][Math.floor(next() * 3)]!;
  const [bore, stroke] = [within(84, 102, 1), within(76, 94, 1)];
  const displacement = (cylinders * Math.PI * bore ** 2 * stroke) / 4e9;
  const last = [6000, 6500, 7000][Math.floor(next() * 3)]!;
  const revLimit = last + [0, 200, 500][Math.floor(next() * 3)]!;
  const [best, at, fall] = [within(0.84, 1, 3), within(3800, 5000, 0), within(0.1, 0.2, 3)];
  const work = within(0.92, 1.02, 3);
  const rows: number[][] = [];
  for (let rpm = FIRST_RPM; rpm <= last; rpm += STEP_RPM) {
    const filling = best - fall * ((rpm - at) / 2500) ** 2;
    const air = (filling * 1.16 * displacement * rpm) / 120;
    const friction = (displacement * 1e5 * (0.9 + rpm / 5000) * rpm) / 120 / 1000;
    rows.push([rpm, air * work * 1000 - friction, air, friction]);
  }
  const mostAir = Math.max(...rows.map(([, , air]) => air!));
  const [crank, blower, stepUp] = [within(150, 190, 0), within(80, 96, 0), within(3.2, 4, 2)];
  const fastest = (crank / blower) * stepUp * revLimit;
  const wheel = within(0.95, 1.15, 3) * 6_000 * (60 / (Math.PI * fastest)) * 1000 * 0.055;
  const rated = { flow: mostAir * within(1.5, 1.9, 2), speed: fastest * within(0.9, 1.05, 3) };
  const injectorFlow = ((mostAir * 1.55) / 11.5 / cylinders / 0.8) * 1000;
  const coolers = [null, 'air to air', 'air to water'] as const;
  const cooler = coolers[Math.floor(next() * 3)]!;
  return {
    schemaVersion: 1,
    name: `Invented engine ${seed}`,
    combination: {
      shortBlock: {
        cylinders,
        bore: `${bore} mm`,
        stroke: `${stroke} mm`,
        compressionRatio: `${within(8.5, 9.8, 1)}:1`,
      },
      fuelSystem: {
        type: 'port injection',
        injectors: cylinders,
        injectorFlow: `${injectorFlow.toFixed(2)} g/s`,
        injectorFlowPressure: '3 bar',
        injectorDeadTime: `${within(0.6, 1.1, 2)} ms`,
        railPressure: '3 bar',
        railReference: 'manifold',
      },
      fuel: { name: FUEL, ...(next() < 0.5 ? { lambda: `${within(0.78, 0.88, 2)}` } : {}) },
      ignition: { engineSpeedLimit: `${revLimit} rpm` },
      supercharger: {
        type: 'centrifugal',
        wheelExitDiameter: `${wheel.toFixed(1)} mm`,
        stepUp: `${stepUp}`,
        maximumImpellerSpeed: `${Math.round(fastest * within(1.06, 1.3, 3))} rpm`,
        bypassAtFullThrottle: 'shut',
      },
      drive: {
        type: 'ribbed belt',
        crankPulleyDiameter: `${crank} mm`,
        blowerPulleyDiameter: `${blower} mm`,
        beltRibs: 8,
        slip: '1 %',
      },
      ...(cooler === null
        ? {}
        : {
            cooler: {
              type: cooler,
              effectiveness: `${within(60, 75, 0)} %`,
              pressureLoss: `${within(3, 6, 1)} kPa`,
              pressureLossFlow: `${(1.4 * mostAir).toFixed(3)} kg/s`,
            },
          }),
    },
    baseline: {
      table: [
        'engine speed [rpm], brake power [kW], air flow [kg/s], friction power [kW]',
        ...rows.map(([rpm, ...figures]) => [rpm, ...figures.map((one) => one!.toFixed(5))].join(', ')),
      ].join('\n'),
      weather: { pressure: '99 kPa', temperature: '24 °C', relativeHumidity: '40 %' },
      fuel: FUEL,
    },
    map: {
      name: 'Invented unit',
      rated: {
        flow: `${rated.flow.toFixed(4)} kg/s`,
        pressureRatio: within(1.6, 1.9, 2),
        speed: `${Math.round(rated.speed)} rpm`,
        efficiency: within(0.72, 0.78, 3),
        reference: { pressure: '100 kPa', temperature: '25 °C' },
      },
      wheelExitDiameter: `${wheel.toFixed(1)} mm`,
      origin: 'assumed',
    },
    weather: {
      pressure: `${within(94, 101, 1)} kPa`,
      temperature: `${within(8, 34, 0)} °C`,
      relativeHumidity: `${within(20, 70, 0)} %`,
    },
    bands: 'none',
  };
}
