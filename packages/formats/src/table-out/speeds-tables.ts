import type { Comparison, Gain } from '@pullbook/core/compare';
import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import type { Trial } from '@pullbook/core/trial';
import type { OutColumn, OutTable } from './model.ts';
import { keyName, numberColumn, uniqueNames } from './out-columns.ts';
import { type OutUnit, outMeaning, outUnit, PER_CENT } from './out-unit.ts';
import type { TablesAsked } from './trial-tables.ts';

/** Speeds at which a table of few rows stands, r/min: as in the trade's tables. */
const STEP_RPM = 500;

interface Column extends OutColumn {
  at: (node: number) => number | null;
}

/**
 * Means of each combination and its gains over engine speed: at whole 500 r/min, then at all nodes. The band of a gain is the
 * 95 % one for that speed alone, and beside it the one for all speeds of the window at once.
 */
export function speedsTables(comparison: Comparison, trial: Trial, { system }: TablesAsked): OutTable[] {
  const speed = outMeaning('engineSpeed', system);
  const columns: Column[] = [
    {
      ...numberColumn('engineSpeed', speed.label, speed.unit),
      at: (node) => speed.unit.from(comparison.engineSpeedRpm[node]),
    },
    ...comparison.combinations.flatMap((one) => columnsOfCombination(one, trial, system)),
    ...comparison.gains.flatMap((gain) => columnsOfGain(gain, comparison, system)),
  ];
  const named = uniqueNames(columns);
  const table = (title: string, wanted: (rpm: number) => boolean): OutTable => ({
    title,
    columns: named.map(({ name, title: one, unit, qudt, kind }) => ({ name, title: one, unit, qudt, kind })),
    rows: [...comparison.engineSpeedRpm.keys()]
      .filter((node) => wanted(comparison.engineSpeedRpm[node]!))
      .map((node) => columns.map(({ at }) => at(node)))
      // A node that only the speed itself stands in says nothing.
      .filter((row) => row.some((cell, place) => place > 0 && cell !== null)),
  });
  return [table('Speeds', (rpm) => rpm % STEP_RPM === 0), table('All speeds', () => true)];
}

const FIRST: readonly ChannelMeaning[] = ['power', 'torque'];

function columnsOfCombination(
  { key, channels }: Comparison['combinations'][number],
  trial: Trial,
  system: TablesAsked['system'],
): Column[] {
  const { shortName } = trial.combinations.find((one) => one.key === key)!;
  const order = Object.keys(MEANINGS) as ChannelMeaning[];
  const others = order.filter((meaning) => !FIRST.includes(meaning) && meaning !== 'engineSpeed');
  return [...FIRST, ...others].flatMap((meaning) => {
    const mean = channels.get(meaning)?.mean;
    if (!mean?.some(Number.isFinite)) return [];
    const { label, unit } = outMeaning(meaning, system);
    const title = `${key} ${shortName}, ${label.toLowerCase()}`;
    return [column(`${keyName(key)}${capital(meaning)}`, title, unit, (node) => mean[node])];
  });
}

function columnsOfGain(gain: Gain, comparison: Comparison, system: TablesAsked['system']): Column[] {
  const { baselineKey, changedKey, band } = gain;
  const name = (what: string) => `${keyName(changedKey)}Less${capital(keyName(baselineKey))}${what}`;
  const title = (what: string) => `${changedKey} less ${baselineKey}, ${what}`;
  const [power, torque] = [outUnit('power', system), outUnit('torque', system)];
  const baseline = comparison.combinations
    .find(({ key }) => key === baselineKey)
    ?.channels.get('power')?.mean;
  const share = (node: number) => gain.power[node]! / (baseline?.[node] ?? Number.NaN);
  const of = (values: Float64Array) => (node: number) => values[node];
  return [
    column(name('Power'), title('power'), power, of(gain.power)),
    column(name('Power'), title('power'), PER_CENT, share),
    ...(band
      ? [
          column(name('PowerLow'), title('95 % at that speed, low'), power, of(band.pointwise.low)),
          column(name('PowerHigh'), title('95 % at that speed, high'), power, of(band.pointwise.high)),
          column(name('PowerAllLow'), title('95 % at all speeds, low'), power, of(band.simultaneous.low)),
          column(name('PowerAllHigh'), title('95 % at all speeds, high'), power, of(band.simultaneous.high)),
        ]
      : []),
    column(name('Torque'), title('torque'), torque, of(gain.torque)),
  ];
}

const column = (
  name: string,
  title: string,
  unit: OutUnit,
  inside: (node: number) => number | undefined,
): Column => ({ ...numberColumn(name, title, unit), at: (node) => unit.from(inside(node)) });

const capital = (word: string): string => word[0]!.toUpperCase() + word.slice(1);
