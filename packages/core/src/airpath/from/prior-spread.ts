import type {
  AirBasis,
  Baseline,
  FittedMap,
  MatchInput,
  SpreadGroup,
  SpreadPart,
  StatedModel,
} from '../model.ts';
import { USUAL_COOLER } from './from-sheet-cooler.ts';
import { USUAL_SLIP } from './from-sheet-drive.ts';
import { bendsOver } from './prior-bends.ts';

/** One standard deviation, share, of a baseline's air by what it rests on; one bias common to all speeds. */
const SPREAD_OF_AIR: Record<AirBasis, number> = {
  given: 0.03,
  'air flow': 0.02,
  'fuel and mixture': 0.03,
  'torque and efficiency': 0.08,
};

/** Of a baseline's power on another day; of a scaled one (common practice, no source). */
const SPREAD_OF_POWER: Record<Baseline['origin'], number> = { measured: 0.01, given: 0.01, scaled: 0.03 };

/** One standard deviation, share, of a baseline's power. */
export const powerSpreadOf = ({ origin }: Baseline): number => SPREAD_OF_POWER[origin];

/** What textbook terms leave open when they carry a naturally aspirated engine to boost (common practice, no source). */
const SPREAD_OF_MODEL = { swallowing: 0.02, chargeHeat: 0.1, work: 0.04 };

/** One supercharger on an engine against the one of its series that was mapped on a bench (common practice, no source). */
const SPREAD_OF_UNIT = { head: 0.04, flow: 0.04 };

/** One standard deviation, share of head and of flow: what the map leaves open and what one unit differs by. */
export const headSpread = ({ spread }: FittedMap): number => Math.hypot(spread.head, SPREAD_OF_UNIT.head);
export const flowSpread = ({ spread }: FittedMap): number => Math.hypot(spread.flow, SPREAD_OF_UNIT.flow);

/**
 * Names a baseline in the key of what is drawn with it: matches on one baseline share its errors. By its figures and not by its pulls' ids, for draws go by
 * the key, and the same pulls in another book must give the same bands.
 */
export const keyOfBaseline = ({ origin, pullIds, mark }: Baseline): string =>
  `baseline ${origin} ${mark ?? [...pullIds].sort().join('+')}`.trim();

export const keyOfMap = ({ compressor: { map } }: MatchInput): string =>
  `map ${map.mark ?? map.mapId ?? map.name}`;

/** Coolers that do the same are the same. */
export const keyOfCooler = ({ cooler }: MatchInput): string =>
  cooler === null ? 'no cooler' : `cooler by ${cooler.by}, ${cooler.effectiveness}`;

const keyOfDrive = ({ drive }: MatchInput): string => `drive by ${drive.kind}`;

/** Of the engine on this baseline: how it takes boost. */
const keyOfEngine = ({ baseline }: MatchInput): string => `engine of ${keyOfBaseline(baseline)}`;

/**
 * What of a match is uncertain before anything was fitted, by part. Combinations that share a baseline, a map, a cooler or a
 * kind of drive share its draws, so that a difference of two matches carries only what they do not share.
 */
export function priorSpread(
  input: MatchInput,
  {
    stated,
    isEffectivenessKnown,
    isSlipKnown,
  }: { stated: StatedModel; isEffectivenessKnown: boolean; isSlipKnown: boolean },
): SpreadGroup[] {
  const { baseline, compressor, cooler, drive } = input;
  const usual: Record<SpreadPart, number> = {
    baselineAir: SPREAD_OF_AIR[baseline.airBasis],
    baselinePower: powerSpreadOf(baseline),
    head: headSpread(compressor.map),
    mapFlow: flowSpread(compressor.map),
    efficiency: compressor.constantEfficiency === null ? compressor.map.spread.efficiency : 0,
    cooler: cooler === null ? 0 : isEffectivenessKnown ? KNOWN_EFFECTIVENESS : USUAL_COOLER[cooler.by].spread,
    slip: isSlipKnown ? USUAL_SLIP[drive.kind].spread / 2 : USUAL_SLIP[drive.kind].spread,
    ...SPREAD_OF_MODEL,
  };
  const groups: [key: string, parts: SpreadPart[]][] = [
    [keyOfBaseline(baseline), ['baselineAir', 'baselinePower']],
    [keyOfMap(input), ['head', 'mapFlow', 'efficiency']],
    [keyOfCooler(input), ['cooler']],
    [keyOfDrive(input), ['slip']],
    [keyOfEngine(input), ['swallowing', 'chargeHeat', 'work']],
  ];
  const isOpen = (part: SpreadPart): boolean => stated.spread?.[part] === undefined;
  const alike = groups.flatMap(([key, all]) => {
    const open = all
      .map((part) => ({ part, deviation: stated.spread?.[part] ?? usual[part] }))
      .filter(({ deviation }) => deviation > 0);
    return open.length === 0 ? [] : [independent(key, open)];
  });
  // Whoever states a part's spread has stated all of it.
  return [
    ...alike,
    ...bendsOver(input, keyOfMap(input), (['head'] as const).filter(isOpen)),
    ...bendsOver(input, keyOfEngine(input), (['swallowing', 'work'] as const).filter(isOpen)),
  ];
}

/** Of an effectiveness that somebody measured (common practice, no source). */
const KNOWN_EFFECTIVENESS = 0.03;

const independent = (key: string, open: { part: SpreadPart; deviation: number }[]): SpreadGroup => ({
  key,
  parts: open.map(({ part }) => part),
  factor: open.map(({ deviation }, line) => open.map((_, column) => (column === line ? deviation : 0))),
});
