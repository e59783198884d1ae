import type { MatchCurve } from '../airpath/index.ts';
import { median } from '../numeric/index.ts';
import { figureOf, numberFigure, percentFigure, speedFigure } from '../quantity/index.ts';
import { type Said, said } from '../remark/index.ts';
import { figureAt } from './figure-at.ts';

/** Relative change of pressure ratio for a relative change of flow: within this a speed line is called flat. Our choice. */
const FLAT_WITHIN = 0.05;
/** Within these nothing is said to have moved: shares, Pa, K. Our choice: below what gauges and probes tell apart. */
const SAME_SHARE = 0.002;
const SAME_PRESSURE = 300;
const SAME_TEMPERATURE = 2;
/** Share of the change of boost that the flow must make to be told as its reason. Our choice. */
const LEAST_EXPLAINED = 1 / 3;

/** How a speed line runs where an engine works on it. */
export type SlopeWord = 'falls' | 'flat' | 'rises';

/** `slopeWord(-0.6)` is `falls`: 1 % more flow takes 0.6 % off the pressure ratio. */
export function slopeWord(slope: number): SlopeWord {
  if (slope < -FLAT_WITHIN) return 'falls';
  return slope > FLAT_WITHIN ? 'rises' : 'flat';
}

/**
 * How the speed line runs at the top of a match's speeds, where boost is highest and is looked at: the middle of the slopes of
 * its highest quarter of nodes. `null`: no match there.
 */
export function lineRunsAtTheTop({ figures: { slopeOfLine } }: MatchCurve): SlopeWord | null {
  const slope = median(slopeOfLine.slice(Math.floor(slopeOfLine.length * 0.75)).filter(Number.isFinite));
  return Number.isFinite(slope) ? slopeWord(slope) : null;
}

/**
 * Why boost is another in a second match at one engine speed: how far the point moved along the compressor's speed line, how the
 * line runs there, what the impeller's speed, the charge's warmth and the drive have to do with it. A few sentences, the most
 * telling first; empty where one of the two has no match there. Computed, never measured.
 *
 * @example whyBoostMoved(baseCam, longerCam, 6000)[0]?.text // 'At 6000 rpm 6.1 % more air goes through …'
 */
export function whyBoostMoved(from: MatchCurve, to: MatchCurve, engineSpeedRpm: number): Said[] {
  const [before, after] = [figureAt(from, engineSpeedRpm), figureAt(to, engineSpeedRpm)];
  const both = { before, after, engineSpeedRpm };
  if (
    ![before('boost'), after('boost'), before('pressureRatio'), after('pressureRatio')].every(Number.isFinite)
  )
    return [];
  const turned = after('impellerSpeedRpm') / before('impellerSpeedRpm') - 1;
  const first = Math.abs(turned) >= SAME_SHARE ? [faster(both, turned), alongLine(both)] : [atOneSpeed(both)];
  return [...first, ...charge(both), ...drive(both)];
}

interface Both {
  before: ReturnType<typeof figureAt>;
  after: ReturnType<typeof figureAt>;
  engineSpeedRpm: number;
}

function boostMoved({ before, after }: Both): Said {
  const rise = after('boost') - before('boost');
  const ends = said`(${figureOf(before('boost'), 'gaugePressure')} to ${figureOf(after('boost'), 'gaugePressure')})`;
  return Math.abs(rise) < SAME_PRESSURE
    ? said`boost stays ${ends}`
    : said`boost ${rise < 0 ? 'drops' : 'rises'} by ${figureOf(Math.abs(rise), 'gaugePressure')} ${ends}`;
}

/** Flow, the run of the line, and boost: the whole story where the impeller turns as fast. */
function atOneSpeed(both: Both): Said {
  const { flow, line, gives } = onTheLine(both);
  const at = said`At ${speedFigure(both.engineSpeedRpm)}`;
  if (flow === null) return said`${at} as much air goes through the compressor, and ${boostMoved(both)}.`;
  if (isExplained(both, gives)) return said`${at} ${flow}; ${line}, and ${boostMoved(both)}.`;
  return said`${at} ${flow}; ${line}, yet ${boostMoved(both)}: not the flow but the air outside, the charge or a loss of pressure did that.`;
}

/** What the line gives for the flow points the way boost went, and is a good part of it. */
function isExplained({ before, after }: Both, gives: number): boolean {
  const rise = after('boost') - before('boost');
  const alongTheLine = gives * before('dischargePressure');
  return Math.abs(rise) < SAME_PRESSURE || !(alongTheLine / rise < LEAST_EXPLAINED);
}

/** Ideal head goes with the square of impeller speed: affinity laws of turbomachines. */
function faster(both: Both, turned: number): Said {
  const head = (1 + turned) ** 2 - 1;
  return said`At ${speedFigure(both.engineSpeedRpm)} the impeller turns ${percentFigure(Math.abs(turned), 1)} ${turned > 0 ? 'faster' : 'slower'}, which by itself makes ${percentFigure(Math.abs(head), 1)} ${head > 0 ? 'more' : 'less'} head, and ${boostMoved(both)}.`;
}

function alongLine(both: Both): Said {
  const { flow, line, gives } = onTheLine(both);
  if (flow === null) return said`As much air goes through the compressor.`;
  const effect =
    Math.abs(gives) < SAME_SHARE
      ? said`which hardly moves boost`
      : said`which ${gives < 0 ? 'takes' : 'adds'} ${percentFigure(Math.abs(gives), 1)} of pressure ratio`;
  return said`${flow}; ${line}, ${effect}.`;
}

/** How far the flow moved and how the line runs there; `flow` is `null` where it did not move. */
function onTheLine({ before, after }: Both): { flow: Said | null; line: Said; gives: number } {
  const share = after('correctedFlow') / before('correctedFlow') - 1;
  const slope = (before('slopeOfLine') + after('slopeOfLine')) / 2;
  const size = said`${numberFigure(Math.abs(slope), 2)} % of pressure ratio for each per cent of flow`;
  const line = Number.isFinite(slope)
    ? {
        falls: said`its speed line falls there, ${size}`,
        flat: said`its speed line is flat there`,
        rises: said`its speed line still rises there, left of its peak, ${size}`,
      }[slopeWord(slope)]
    : said`how its speed line runs there is not known`;
  const mass = after('airFlow') / before('airFlow') - 1;
  // The map sees the flow corrected to its own air: another day's air moves it apart from what is weighed.
  const weighed = !(Math.abs(mass - share) >= SAME_SHARE)
    ? ''
    : said` by the map's measure (${percentFigure(Math.abs(mass), 1)} ${mass > 0 ? 'more' : 'less'} by weight: the air is another)`;
  const flow = said`${percentFigure(Math.abs(share), 1)} ${share > 0 ? 'more' : 'less'} air goes through the compressor${weighed}`;
  return { flow: Math.abs(share) >= SAME_SHARE ? flow : null, line, gives: share * slope };
}

function charge({ before, after }: Both): Said[] {
  const warmer = after('manifoldTemperature') - before('manifoldTemperature');
  if (!(Math.abs(warmer) >= SAME_TEMPERATURE)) return [];
  const size = figureOf(Math.abs(warmer), 'temperatureDifference', { decimals: 0 });
  return [
    warmer < 0
      ? said`The charge is ${size} cooler and so denser: the engine takes more of it at the same pressure, which moves the point along the line like better breathing.`
      : said`The charge is ${size} warmer and so lighter: the engine takes less of it at the same pressure.`,
  ];
}

function drive({ before, after }: Both): Said[] {
  const [power, taken] = [
    after('brakePower') - before('brakePower'),
    after('drivePower') - before('drivePower'),
  ];
  if (!Number.isFinite(power + taken) || !(Math.abs(taken) >= SAME_SHARE * before('brakePower'))) return [];
  const share = after('drivePower') / after('brakePower');
  const size = figureOf(Math.abs(taken), 'power');
  const whole = said`in all it is ${percentFigure(share, 1)} of brake power`;
  if (power > 0 && taken > 0)
    return [
      said`The drive takes ${size} more, ${percentFigure(taken / (power + taken))} of what the air gains; ${whole}.`,
    ];
  return [said`The drive takes ${size} ${taken > 0 ? 'more' : 'less'}; ${whole}.`];
}
