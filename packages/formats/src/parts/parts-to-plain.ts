import type { CostClass, PartsList, ReachBreathing, ReachCooler } from '@pullbook/core/reach';
import { stringify } from 'yaml';

/** A parts list as it is written: text with units. JSON and YAML write it as it is. */
export type PlainParts = Record<string, unknown>;

/** The plain form of a parts list; `readPlainParts` reads the same list back. */
export function partsToPlain(list: PartsList): PlainParts {
  const about = ({ cost, from }: { cost: CostClass; from: { source: string } }) => ({
    cost,
    source: from.source,
  });
  return {
    schemaVersion: 1,
    blowerPulleys: list.blowerPulleys.map((one) => ({ diameter: millimetres(one.diameter), ...about(one) })),
    crankPulleys: list.crankPulleys.map((one) => ({ diameter: millimetres(one.diameter), ...about(one) })),
    stepUps: list.stepUps.map((one) => ({ ratio: number(one.ratio), ...about(one) })),
    coolers: list.coolers.map((one) => ({ ...plainCooler(one), ...about(one) })),
    fuels: list.fuels.map((one) => ({ fuel: one.id, ...about(one) })),
    injectors: list.injectors.map((one) => ({
      name: one.name,
      flow: `${number((one.injectors.flow * 3600) / POUND)} lb/h`,
      pressure: bar(one.injectors.ratedPressure),
      density: `${number(one.injectors.ratedDensity)} kg/m3`,
      ...(one.injectors.deadTime === null ? {} : { deadTime: `${number(1000 * one.injectors.deadTime)} ms` }),
      ...about(one),
    })),
    pumps: list.pumps.map(({ pump, ...one }) => ({
      name: pump.name,
      flow: litres(pump.points[0]!.flow),
      pressure: bar(pump.points[0]!.pressure),
      ...(pump.points[1] === undefined
        ? {}
        : { flowAbove: litres(pump.points[1].flow), pressureAbove: bar(pump.points[1].pressure) }),
      ratedVoltage: `${number(pump.ratedVoltage)} V`,
      voltage: `${number(pump.voltage)} V`,
      ...about(one),
    })),
    beltRibs: list.beltRibs.map((one) => ({ ribs: one.ribs, ...about(one) })),
    breathing: list.breathing.map((one) => ({
      ...plainBreathing(one),
      cost: one.cost,
      source: one.from.text,
    })),
    costs: list.costs,
    binding: list.binding,
  };
}

/** A parts list as YAML, one thing a line; `readPartsText` reads the same list back. */
export function partsToYaml(list: PartsList): string {
  const lines = Object.entries(partsToPlain(list)).flatMap(([name, value]) => {
    if (!Array.isArray(value)) return [`${name}: ${inOneLine(value)}`];
    return value.length === 0
      ? [`${name}: []`]
      : [`${name}:`, ...value.map((one) => `  - ${inOneLine(one)}`)];
  });
  return `${lines.join('\n')}\n`;
}

const inOneLine = (value: unknown): string =>
  stringify(value, { collectionStyle: 'flow', lineWidth: 0 }).trim();

const POUND = 0.453_592_37;

/** Twelve digits: a size that was entered in whole millimetres is written so again. */
const number = (value: number): number => Number(value.toPrecision(12));
const millimetres = (metres: number): string => `${number(1000 * metres)} mm`;
const bar = (pascal: number): string => `${number(pascal / 1e5)} bar`;
const litres = (flow: number): string => `${number(3.6e6 * flow)} L/h`;

function plainCooler({ name, cooler }: ReachCooler) {
  if (cooler === null) return { name, by: 'none' };
  const { by, effectiveness, loss, coolantTemperature } = cooler;
  return {
    name,
    by,
    effectiveness: `${number(100 * effectiveness)} %`,
    ...(coolantTemperature === null ? {} : { coolantTemperature: `${number(coolantTemperature)} K` }),
    ...(loss.pressureDifference === 0
      ? {}
      : {
          pressureLoss: `${number(loss.pressureDifference / 1000)} kPa`,
          pressureLossFlow: `${number(loss.atFlow)} kg/s`,
        }),
  };
}

function plainBreathing({ name, engineSpeedRpm, factor, spread, ground }: ReachBreathing) {
  const gain = Math.max(...factor) > 1 ? Math.max(...factor) - 1 : Math.min(...factor) - 1;
  const isAll = engineSpeedRpm.length === 2;
  return {
    name,
    gain: `${number(100 * gain)} %`,
    ...(isAll ? {} : { from: `${number(engineSpeedRpm[1]!)} rpm`, to: `${number(engineSpeedRpm[2]!)} rpm` }),
    spread: `${number(100 * spread)} %`,
    ground,
  };
}
