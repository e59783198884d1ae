import { fuelFlowOfAir, injectorDuty, pressureAcross, pumpCapacity, speedInLine } from '../../fuel/index.ts';
import { figureOf, numberFigure, percentFigure, speedFigure } from '../../quantity/index.ts';
import { said } from '../../remark/index.ts';
import { boostInManifold, type EngineAtLimits, nodeOfHighest } from './engine-at-limits.ts';
import { above, below, isPassed, type LimitKind } from './limit-kind.ts';
import { onSheet } from './on-sheet.ts';

/** V17: share of the time that the injectors are open for the fuel that the air takes. */
export const injectorsLimit: LimitKind = {
  label: 'Injectors',
  ruleId: 'V17',
  bindsUsually: true,
  measure: (at) => {
    const { injectors, rail, fuel } = at.supply ?? NO_SUPPLY;
    if (injectors === null || rail === null || at.curve === null) return null;
    const duty = (node: number) =>
      injectorDuty({
        fuelFlow: fuelAt(at, node),
        injectors,
        fuel,
        across: pressureAcross(rail, boostInManifold(at, node)),
        engineSpeedRpm: at.curve!.engineSpeedRpm[node]!,
      });
    const node = nodeOfHighest(at.curve, duty);
    if (node === null) return null;
    const from = 'V17.duty';
    const rpm = at.curve.engineSpeedRpm[node]!;
    return below({ value: duty(node), threshold: at.limit(from), kind: 'ratio', rpm, from });
  },
  tell: (measured, at) => {
    const { injectors, rail, fuel } = at.supply!;
    const node = at.curve!.engineSpeedRpm.indexOf(measured.engineSpeedRpm!);
    const across = pressureAcross(rail!, boostInManifold(at, node));
    const open = Number.isFinite(measured.value)
      ? said`are open for ${percentFigure(measured.value)} of the time`
      : said`pass nothing`;
    const loses =
      rail!.reference === 'open air' && at.input !== null ? ', since the rail does not rise with boost' : '';
    return said`At ${speedFigure(measured.engineSpeedRpm!)} the engine takes ${figureOf(fuelAt(at, node), 'massFlow')} of ${fuel.name}: ${injectors!.count} injectors with ${figureOf(across, 'pressureDifference', { decimals: 0 })} across them${loses} ${open}; ${percentFigure(measured.threshold)} is the limit.${isPassed(measured) ? ' Past it the mixture goes lean under boost, which breaks pistons: larger injectors, or more fuel pressure.' : ''}`;
  },
  levelPassed: ({ value }, { limit }) => (value > limit('V17.dutyAlarm') ? 'alarm' : 'caution'),
  missing: ({ supply }) => {
    if (supply?.mixes === 'carburettor') return null;
    if (supply?.injectors == null)
      return `Injectors: their flow is not on the sheet (${onSheet('fuelSystem', 'injectorFlow')}; ${onSheet('fuelSystem', 'injectorFlowPressure')}).`;
    return supply.rail === null
      ? `Injectors: the fuel pressure is not on the sheet (${onSheet('fuelSystem', 'fuelPressure')}).`
      : null;
  },
};

/** V19: what the pump gives at the pressure it works against and the voltage it gets, over what the engine takes. */
export const pumpLimit: LimitKind = {
  label: 'Fuel pump',
  ruleId: 'V19',
  bindsUsually: true,
  measure: (at) => {
    const worst = worstOfPump(at);
    if (worst === null) return null;
    const from = 'V19.margin';
    const threshold = at.limit(from);
    return above({ value: worst.given / worst.taken, threshold, kind: 'ratio', rpm: worst.rpm, from });
  },
  tell: (measured, at) => {
    const { given, taken, pressure } = worstOfPump(at)!;
    const litres = (flow: number) =>
      figureOf(flow, 'volumeFlow', { units: { us: 'L/h', si: 'L/h' }, decimals: 0 });
    const voltage = figureOf(at.supply!.pump!.voltage, 'voltage');
    return said`At ${speedFigure(measured.engineSpeedRpm!)} the pump gives ${litres(given)} against ${figureOf(pressure, 'gaugePressure', { decimals: 0 })} at ${voltage}, ${numberFigure(measured.value, 2)} times the ${litres(taken)} that the engine takes; at least ${numberFigure(measured.threshold, 2)} is asked for.${isPassed(measured) ? ' Fuel pressure falls under boost and the mixture goes lean: a larger pump, a second one, or more voltage at the pump.' : ''}`;
  },
  missing: ({ supply }) =>
    supply?.pump == null
      ? `Fuel pump: what it gives at which pressure is not on the sheet (${onSheet('fuelSystem', 'pumpFlow')}; ${onSheet('fuelSystem', 'pumpFlowPressure')}).`
      : supply.rail === null
        ? `Fuel pump: the fuel pressure is not on the sheet (${onSheet('fuelSystem', 'fuelPressure')}).`
        : null,
};

/** V49: how fast the fuel goes through the feed line. */
export const fuelLineLimit: LimitKind = {
  label: 'Fuel line',
  ruleId: 'V49',
  bindsUsually: false,
  measure: (at) => {
    const diameter = at.supply?.lineDiameter ?? null;
    if (diameter === null || at.curve === null) return null;
    const node = nodeOfHighest(at.curve, (place) => fuelAt(at, place));
    if (node === null) return null;
    const value = speedInLine(fuelAt(at, node), at.supply!.fuel, diameter);
    const from = 'V49.fastest';
    const rpm = at.curve.engineSpeedRpm[node]!;
    return below({ value, threshold: at.limit(from), kind: 'speed', rpm, from });
  },
  tell: (measured, { supply }) => {
    const metresASecond = (speed: number) =>
      figureOf(speed, 'speed', { units: { us: 'ft/s', si: 'm/s' }, decimals: 2 });
    return said`Through the line of ${figureOf(supply!.lineDiameter!, 'length', { decimals: 1 })} the fuel goes at ${metresASecond(measured.value)} at ${speedFigure(measured.engineSpeedRpm!)}; up to ${metresASecond(measured.threshold)} is usual.${isPassed(measured) ? ' A wider line, or pressure is lost on the way.' : ''}`;
  },
  missing: ({ supply }) =>
    supply?.lineDiameter == null
      ? `Fuel line: its size is not on the sheet (${onSheet('fuelSystem', 'lineDiameter')}).`
      : null,
};

const NO_SUPPLY = { injectors: null, rail: null, fuel: null! };

/** kg/s of fuel that the engine takes at a node, by its air and mixture. */
const fuelAt = ({ curve, supply }: EngineAtLimits, node: number): number =>
  fuelFlowOfAir(curve!.figures.airFlow[node]!, supply!.lambda, supply!.fuel);

interface PumpAtWorst {
  /** m³/s */
  given: number;
  taken: number;
  /** Pa that it works against */
  pressure: number;
  rpm: number;
}

function worstOfPump(at: EngineAtLimits): PumpAtWorst | null {
  const { supply, curve } = at;
  if (supply == null || supply.pump === null || supply.rail === null || curve === null) return null;
  const { pump, rail, fuel } = supply;
  const against = (node: number) =>
    rail.pressure + (rail.reference === 'manifold' ? boostInManifold(at, node) : 0);
  const takenAt = (node: number) => fuelAt(at, node) / fuel.density;
  const node = nodeOfHighest(curve, (place) => -pumpCapacity(pump, against(place)) / takenAt(place));
  if (node === null) return null;
  const pressure = against(node);
  return {
    given: pumpCapacity(pump, pressure),
    taken: takenAt(node),
    pressure,
    rpm: curve.engineSpeedRpm[node]!,
  };
}
