/** Match files that ask for a power, parts lists, and some that must be refused. Called by `make-samples.ts`. */
import { FROM_A_RATING, FROM_A_TABLE } from './make-matches.ts';
import type { Sample } from './make-samples.ts';

const PARTS = `schemaVersion: 1
blowerPulleys:
  - { from: 74 mm, to: 90 mm, step: 1 mm, cost: 1, source: turned on our own lathe }
crankPulleys:
  - { diameter: 190 mm, cost: 1 }
  - { diameter: 200 mm, cost: 2, source: a supplier's list }
coolers:
  - { name: shop cooler with ice, by: ice water, effectiveness: 75 %, coolantTemperature: 4 °C, cost: 3 }
fuels:
  - { fuel: E85 usual 70 %, cost: 1 }
  - { fuel: "70 % ethanol, 30 % gasoline", cost: 2, source: mixed from drums }
injectors:
  - { flow: 65 lb/h, pressure: 3 bar, deadTime: 1 ms, cost: 2 }
pumps:
  - { name: 255 L/h pump, flow: 255 L/h, pressure: 3 bar, flowAbove: 205 L/h, pressureAbove: 5 bar, cost: 2 }
beltRibs:
  - { ribs: 8, cost: 1 }
breathing:
  - { name: ported heads, gain: 4 %, from: 4500 rpm, to: 6000 rpm, spread: 2 %, cost: 3, source: flow bench and a hope }
costs: { supercharger: 5 }
binding: { plugGap: no }
`;

const ASKED = `reach:
  power: 320 hp
  boostCap: 8 psi
  parts: parts.yaml
  superchargers:
    - name: Larger unit, rated only
      supercharger: { type: centrifugal, unit: larger unit, stepUp: "3.3", wheelExitDiameter: 118 mm, maximumImpellerSpeed: 52000 rpm, bypassAtFullThrottle: shut }
      drive: { type: ribbed belt, crankPulleyDiameter: 190 mm, blowerPulleyDiameter: 90 mm, beltRibs: 8 }
      map:
        rated: { flow: 0.32 kg/s, speed: 44000 rpm, pressureRatio: 1.6, efficiency: 76 %, reference: { pressure: 100 kPa, temperature: 25 °C } }
        wheelExitDiameter: 118 mm
        origin: data sheet
`;

export function reachSamples(): Sample[] {
  const sample = (name: string, about: string, text: string): Sample => ({
    path: `reach/${name}`,
    about,
    bytes: new TextEncoder().encode(text),
  });
  const withoutWhatIf = FROM_A_TABLE.replace(/whatIf:[\s\S]*$/, '');
  const alone = FROM_A_RATING.replace(/ {2}supercharger:[\s\S]*?(?=baseline:)/, '').replace(/map:[\s\S]*$/, '');
  return [
    sample('straight-six.yaml', 'a match that asks for 320 hp within 8 psi, another supercharger and a parts list beside it', `${withoutWhatIf}${ASKED}`),
    sample('naturally-aspirated.yaml', 'the engine without a supercharger that asks for 260 hp, and one that could be fitted', `${alone.replace(/name: .*/, 'name: Straight six, to be supercharged')}${ASKED.replace('320 hp', '260 hp').replace(/ {2}parts: .*\n/, '')}`),
    sample('out-of-reach.yaml', 'a target that no change of pulleys reaches, with the least that would help', `${withoutWhatIf}reach:\n  power: 420 hp\n  without: [fuel, cooler, supercharger, breathing]\n`),
    sample('parts.yaml', 'what a shop can buy, with its cost classes', PARTS),
    sample('invalid-unit.yaml', 'refused: a target without its unit', `${withoutWhatIf}reach:\n  power: 320\n`),
    sample('invalid-speed-and-window.yaml', 'refused: power at a speed and the average over a window', `${withoutWhatIf}reach:\n  power: 320 hp\n  at: 6000 rpm\n  window: { from: 3000 rpm, to: 6000 rpm }\n`),
    sample('invalid-below-now.yaml', 'refused: a target below what it makes now', `${withoutWhatIf}reach:\n  power: 200 hp\n`),
    sample('invalid-parts-fuel.yaml', 'refused: a parts list with a fuel that is not known', PARTS.replace('E85 usual 70 %', 'rocket juice')),
    sample('invalid-parts-injector.yaml', 'refused: a parts list with an injector of no pressure', PARTS.replace(', pressure: 3 bar, deadTime', ', deadTime')),
    sample('invalid-parts-misspelt.yaml', 'refused: a parts list with a list that is misspelt', PARTS.replace('beltRibs', 'beltRips')),
  ];
}
