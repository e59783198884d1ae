/** Invented compressor maps, one blower in several usual units, and some that must be refused. Called by `make-samples.ts`. */
import type { Sample } from './make-samples.ts';

const WHEEL = 0.105;
const SPEEDS = [30_000, 36_000, 42_000, 48_000, 54_000];
const SHARES_OF_CHOKE = [0.5, 0.58, 0.66, 0.74, 0.82, 0.9, 0.95];
const LB = 0.45359237;
const FOOT = 0.3048;
/** kg/m³ of dry air at 100 kPa and 298.15 K, with 287.05 J/(kg·K). */
const DENSITY = 100_000 / (287.05 * 298.15);

interface InventedPoint {
  flow: number;
  ratio: number;
  speed: number;
  efficiency: number;
}

const tipSpeed = (speed: number): number => (Math.PI * WHEEL * speed) / 60;

/** A head that falls from its peak to choke, an efficiency that is best between, made up for this file. */
function inventedMap(): InventedPoint[] {
  return SPEEDS.flatMap((speed) => {
    const choke = 0.4 * (speed / 54_000) ** 1.08;
    return SHARES_OF_CHOKE.map((share) => {
      const head = 0.57 * (1 - 0.9 * Math.max(0, (share - 0.55) / 0.5) ** 2.4 - 0.3 * Math.max(0, 0.55 - share));
      const ratio = (1 + (head * tipSpeed(speed) ** 2) / (1005 * 298.15)) ** 3.5;
      const efficiency = 0.77 - 1.4 * (share - 0.68) ** 2 - 0.02 * ((speed - 40_000) / 14_000) ** 2;
      return {
        flow: Number((share * choke).toFixed(4)),
        ratio: Number(ratio.toFixed(3)),
        speed,
        efficiency: Number(efficiency.toFixed(3)),
      };
    });
  });
}

export function mapSamples(): Sample[] {
  const map = inventedMap();
  const sample = (name: string, about: string, lines: readonly string[]): Sample => ({
    path: `maps/${name}`,
    about,
    bytes: new TextEncoder().encode(lines.map((line) => `${line}\n`).join('')),
  });
  const reference = ['# reference pressure: 100 kPa', '# reference temperature: 25 °C'];
  const about = [
    '# name: Shop blower no. 2',
    ...reference,
    '# wheel exit diameter: 105 mm',
    '# wheel inlet diameter: 70 mm',
    '# blades: 16',
    '# backsweep: 30 deg',
    '# left end: surge',
    '# origin: assumed',
    '# invented: yes',
    '# notes: made up for a sample; no blower is like it',
  ];
  const heading = 'flow [kg/s],pressure ratio,speed [rpm],efficiency';
  const rows = map.map(({ flow, ratio, speed, efficiency }) => [flow, ratio, speed, efficiency].join(','));
  const comma = (value: number | string): string => String(value).replace('.', ',');
  return [
    sample('shop-blower.csv', 'a compressor map: five speed lines, kg/s, shares of 1', [...about, heading, ...rows]),
    sample('us-units.csv', 'the same in lb/min, thousands of r/min and per cent, its header as two columns', [
      'Name,Shop blower no. 2,,',
      'Reference pressure,14.504 psi,,',
      'Reference temperature,77 °F,,',
      'Corrected flow (lb/min),Pressure ratio,Speed (krpm),Efficiency (%)',
      ...map.map(({ flow, ratio, speed, efficiency }) =>
        [((flow * 60) / LB).toFixed(3), ratio, speed / 1000, (100 * efficiency).toFixed(1)].join(','),
      ),
    ]),
    sample('tip-speed.csv', 'the same over tip speed in m/s, semicolon and decimal comma', [
      ...reference,
      '# wheel exit diameter: 105 mm',
      'Tip speed [m/s];Flow [g/s];Pressure ratio [-];Efficiency [%]',
      ...map.map(({ flow, ratio, speed, efficiency }) =>
        [tipSpeed(speed).toFixed(2), (1000 * flow).toFixed(1), ratio, (100 * efficiency).toFixed(1)].map(comma).join(';'),
      ),
    ]),
    sample('volume-flow.csv', 'the same in cfm at the reference, over per cent of a design speed, without efficiencies', [
      ...reference,
      '# design speed: 48000 rpm',
      'speed [%],flow [cfm],pressure ratio',
      ...map.map(({ flow, ratio, speed }) =>
        [speed / 480, ((flow / DENSITY / FOOT ** 3) * 60).toFixed(2), ratio].join(','),
      ),
    ]),
    sample('rated-point.csv', 'a blower of which only one rated point is known', [
      '# name: Blower with a rating only',
      '# form: rated',
      ...reference,
      '# origin: data sheet',
      '# invented: yes',
      heading,
      '0.24,1.5,48000,0.74',
    ]),
    sample('invalid-no-reference.csv', 'refused: flow and speed are corrected to an air that is not told', [heading, ...rows]),
    sample('invalid-mixed-efficiency.csv', 'refused: efficiencies in per cent and as shares in one column', [
      ...reference,
      heading,
      ...map.map(({ flow, ratio, speed, efficiency }, at) =>
        [flow, ratio, speed, at === 3 ? efficiency : (100 * efficiency).toFixed(1)].join(','),
      ),
    ]),
    sample('invalid-unit.csv', 'refused: a flow in a unit that is not known', [
      ...reference,
      heading.replace('kg/s', 'buckets/s'),
      ...rows,
    ]),
    sample('invalid-design-speed.csv', 'refused: speed in per cent of a speed that is not told', [
      ...reference,
      'flow [kg/s],pressure ratio,speed [%]',
      ...map.map(({ flow, ratio, speed }) => [flow, ratio, speed / 480].join(',')),
    ]),
    sample('invalid-cell.csv', 'refused: a word where a number is due', [
      ...reference,
      heading,
      ...rows.map((row, at) => (at === 5 ? row.replace(/^[^,]*/, 'much') : row)),
    ]),
  ];
}
