import { type ReadAxis, type ReadPanel, readCurves } from './curves-of-svg.ts';
import type { ReadFile } from './read-files.ts';

/** Units by NIST SP 811, appendix B.8. */
export const PER_KW: Record<string, number> = { hp: 1 / 0.745_699_9, kW: 1 };
const PER_NM: Record<string, number> = { 'lb-ft': 1 / 1.355_818, N·m: 1 };
const PER_KPA: Record<string, number> = { psi: 1 / 6.894_757, kPa: 1 };

/** Paths are written to a tenth of a pixel, ticks to a hundredth. */
const OFF_PX = 0.1;
/** Between rows of a step test torque and power are straight lines both, which no torque over a speed can be. */
const OFF_BETWEEN_PX = 0.5;

/** Where a file says something else than its numbers, and how many values were held against one another. */
export interface Held {
  wrong: string[];
  held: { power: number; torque: number; gain: number; band: number; boost: number };
}

/** Which letter has which colour, in any picture of a set. */
export const lettersOf = (files: ReadFile[], mark: '.' | ','): Map<string, string> =>
  new Map(files.flatMap(({ svg }) => readCurves(svg, mark).panels.flatMap(({ letters }) => [...letters])));

/** Every curve of a picture, by its own axes, against what the command line says of it at each engine speed. */
export function heldCurves(file: ReadFile, letters: ReadonlyMap<string, string>, mark: '.' | ','): Held {
  const { x, panels } = readCurves(file.svg, mark);
  const result: Held = { wrong: [], held: { power: 0, torque: 0, gain: 0, band: 0, boost: 0 } };
  for (const panel of panels) {
    if (x.offPx > 0.02 || panel.y.offPx > 0.02) result.wrong.push(`${panel.title}: ticks off their axis`);
    const only = panel.title.startsWith('Gain, ') ? 'B' : null;
    for (const { colour, points } of meansOf(panel)) {
      const key = letters.get(colour) ?? only;
      if (key === null) result.wrong.push(`${panel.title}: whose curve is ${colour}?`);
      else holdCurve(result, file, { panel, x, key, points });
    }
    if (only !== null && panel.tints.length === 1) holdBand(result, file, panel, x);
  }
  return { ...result, wrong: result.wrong.map((one) => `${file.name}: ${one}`) };
}

interface Curve {
  panel: ReadPanel;
  x: ReadAxis;
  key: string;
  points: [number, number][];
}

function holdCurve({ wrong, held }: Held, { numbers }: ReadFile, { panel, x, key, points }: Curve): void {
  const what = panel.title.split(/[ ,]/u)[0]!.toLowerCase();
  if (what === 'boost') {
    const highest = numbers.combinations.find((one) => one.key === key)!.highestBoostKpa!;
    const top = Math.min(...points.map(([, px]) => px));
    if (Math.abs(top - panel.y.pxAt(highest * factorOf(panel, PER_KPA))) > OFF_PX)
      wrong.push(`highest boost of ${key}`);
    held.boost += 1;
  }
  if (what !== 'power' && what !== 'torque' && what !== 'gain') return;
  const { curve } = numbers.comparisons.find((one) => one.key === key) ?? numbers.comparisons[0]!;
  const column = what === 'gain' ? 'gainKw' : key === 'A' ? 'baselineKw' : 'changedKw';
  const factor = factorOf(panel, what === 'torque' ? PER_NM : PER_KW);
  for (const { engineSpeedRpm: rpm, [column]: kw } of curve) {
    const drawn = points.find(([px]) => Math.abs(px - x.pxAt(rpm)) < OFF_PX);
    if ((drawn === undefined) !== (kw === null))
      wrong.push(`${panel.title} of ${key} at ${rpm}: one is missing`);
    if (drawn === undefined || kw === null) continue;
    // Power = torque × 2π × revolutions a second.
    const value = what === 'torque' ? (1000 * kw) / ((2 * Math.PI * rpm) / 60) : kw;
    const off = Math.abs(drawn[1] - panel.y.pxAt(value * factor));
    if (off > (what === 'torque' ? OFF_BETWEEN_PX : OFF_PX))
      wrong.push(`${panel.title} of ${key} at ${rpm}: ${off} px off`);
    held[what] += 1;
  }
}

/** The tint of a gain: for each speed of its window, the ends of the band for all speeds at once. */
function holdBand({ wrong, held }: Held, { numbers }: ReadFile, panel: ReadPanel, x: ReadAxis): void {
  const factor = factorOf(panel, PER_KW);
  for (const { engineSpeedRpm, gainLowKw, gainHighKw } of numbers.comparisons[0]!.curve) {
    const edges = panel.tints[0]!.points.flatMap(([px, py]) =>
      Math.abs(px - x.pxAt(engineSpeedRpm)) < OFF_PX ? [py] : [],
    );
    if (edges.length < 2 || gainLowKw === null || gainHighKw === null) continue;
    const off = [
      Math.min(...edges) - panel.y.pxAt(gainHighKw * factor),
      Math.max(...edges) - panel.y.pxAt(gainLowKw * factor),
    ];
    if (off.some((one) => Math.abs(one) > OFF_PX)) wrong.push(`band at ${engineSpeedRpm}: ${off} px off`);
    held.band += 1;
  }
}

/** Thicker than the pulls behind them. */
function meansOf({ curves }: ReadPanel): ReadPanel['curves'] {
  const widest = Math.max(...curves.map(({ widthPx }) => widthPx));
  return curves.filter(({ widthPx }) => widthPx === widest);
}

function factorOf({ unit, title }: ReadPanel, factors: Record<string, number>): number {
  const factor = factors[unit.split(',')[0]!.trim()];
  if (factor === undefined) throw new Error(`${title} in ${unit}?`);
  return factor;
}
