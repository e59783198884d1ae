import type { MapPoint } from '@pullbook/core/airpath';
import type { PublicationLink } from '@pullbook/core/publication';
import { formatNumber, formatQuantity, type QuantityKind } from '@pullbook/core/quantity';
import type { Enquiry } from '@pullbook/core/reach';
import type { StepChoice } from '@pullbook/core/trial';
import type { ViewOptions } from '@pullbook/views';
import type { NameOf } from './history-words.ts';

/** Fields that say nothing to a person: places of other things inside the book. */
const UNSAID = new Set([
  'id',
  'route',
  'sessionId',
  'setUpId',
  'createdAt',
  'invented',
  'engineId',
  'schemaVersion',
  'base64',
]);

const LABELS: Record<string, string> = {
  combinationId: 'Combination',
  orderInSession: 'Place in the session',
  recordedAt: 'Recorded',
  'weather.humidity.ratio': 'Relative humidity',
  'weather.humidity.temperature': 'Dew point or wet bulb',
  'weather.humidity.pressure': 'Vapour pressure',
  'carried.standard': 'Standard carried',
  'carried.factor': 'Factor carried',
  'sweep.momentOfInertia': 'Moment of inertia',
  'sweep.inertiaCompensated': 'Inertia in the figures',
  'treatment.windowRpm': 'Counted window',
  'treatment.binWidthRpm': 'Means over',
  'treatment.addInertia': 'Torque of inertia added',
  'audience.who': 'May be seen by',
  'audience.notBefore': 'Not before',
  averagesWindowRpm: 'Window of the averages',
  correction: 'Power and torque by',
  remark: 'Own remark',
  'plan.gainRatio': 'Planned: gain to be seen',
  'plan.odds': 'Planned: chance to see it',
  'plan.pulls': 'Planned pulls',
  'plan.looksAt': 'Planned looks, after so many pulls',
  'plan.stopCriteria': 'Stop criteria',
  'plan.notes': 'Notes on the plan',
  'runningOrder.steps': 'Running order',
  'runningOrder.speed': 'Running order, speed',
  links: 'Appeared in',
  became: 'Became',
  cards: 'Answer cards that left the shop',
  leftEnd: 'Left end of the speed lines',
  'reference.pressure': 'Reference pressure',
  'reference.temperature': 'Reference temperature',
  'geometry.wheelExitDiameter': 'Wheel exit diameter',
  'geometry.wheelInletDiameter': 'Wheel inlet diameter',
  'geometry.blades': 'Blades at the wheel exit',
  'geometry.backsweep': 'Backsweep at the wheel exit',
  binWidthRpm: 'Means over',
  backupFolder: 'Folder of the backups',
};

const KINDS: Record<string, QuantityKind> = {
  'weather.pressure': 'absolutePressure',
  'weather.temperature': 'temperature',
  'weather.altitude': 'length',
  'weather.humidity.temperature': 'temperature',
  'weather.humidity.pressure': 'absolutePressure',
  'sweep.momentOfInertia': 'momentOfInertia',
  momentOfInertia: 'momentOfInertia',
  altitude: 'length',
  'treatment.binWidthRpm': 'engineSpeed',
  'reference.pressure': 'absolutePressure',
  'reference.temperature': 'temperature',
  'geometry.wheelExitDiameter': 'length',
  'geometry.wheelInletDiameter': 'length',
  'geometry.backsweep': 'angle',
  binWidthRpm: 'engineSpeed',
};

/** A field as a person calls it: `Weather, pressure`; `null`: it says nothing to a person. */
export function labelOfField(path: string): string | null {
  const known = LABELS[path];
  if (known) return known;
  const parts = path.split('.');
  if (parts.some((part) => UNSAID.has(part))) return null;
  const words = parts.map((part) => part.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`));
  const text = words.join(', ');
  return text[0]!.toUpperCase() + text.slice(1);
}

/** A value of the log in a person's words and units; '' where there is none. */
export function wordsOfValue(
  path: string,
  value: unknown,
  nameOf: NameOf,
  { units, decimalMark }: ViewOptions,
): string {
  if (value === null || value === undefined || value === '') return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (path === 'combinationId') return nameOf('combination', String(value));
  if (typeof value === 'string') return value;
  const speed = (rpm: number) => formatQuantity(rpm, 'engineSpeed', { system: units, decimalMark }).text;
  if (typeof value === 'number') {
    const kind = KINDS[path];
    if (kind) return formatQuantity(value, kind, { system: units, decimalMark }).text;
    if (/\.(ratio|odds)$|Ratio$/.test(path)) return `${formatNumber(100 * value, 1, decimalMark)} %`;
    if (path.startsWith('treatment.lags.')) return `${formatNumber(value, 2, decimalMark)} s`;
    return formatNumber(value, Number.isInteger(value) ? 0 : 4, decimalMark);
  }
  if (!Array.isArray(value)) return JSON.stringify(value);
  if (path.endsWith('indowRpm')) return value.map((one) => speed(Number(one))).join(' to ');
  return value.map((one) => partWords(one, nameOf)).join('; ');
}

/** One of a list: a note, something that happened, a combination of a trial, an instrument. */
function partWords(one: unknown, nameOf: NameOf): string {
  if (typeof one !== 'object' || one === null) return String(one);
  if (isMapPoint(one)) return pointWords(one);
  if (isStep(one)) return stepWords(one);
  if (isPlanned(one)) return nameOf('combination', one.combinationId);
  if (isPart(one)) return boughtWords(one);
  if (isLink(one)) return [one.where, one.day, one.note].filter(Boolean).join(', ');
  const { text, key, shortName, combinationId, name, label, limit } = one as Record<
    string,
    string | undefined
  >;
  const { takenApart } = one as { takenApart?: boolean | null };
  if (text !== undefined) return text;
  if (combinationId !== undefined) {
    const apart = takenApart == null ? '' : ` (engine ${takenApart ? '' : 'not '}taken apart for it)`;
    return `${key} ${shortName || nameOf('combination', combinationId)}${apart}`;
  }
  if (label !== undefined) return `${label} ${limit}`;
  if (key !== undefined) return key;
  return name ?? JSON.stringify(one);
}

const isStep = (one: object): one is StepChoice => 'isShown' in one;
const isPlanned = (one: object): one is Enquiry['became'][number] => 'rungId' in one;
/** One thing of the parts list, as it is written there. */
interface BoughtPart {
  diameter?: string;
  fuel?: string;
  name?: string;
  ratio?: number;
  ribs?: number;
  cost: number;
}
const isPart = (one: object): one is BoughtPart => 'cost' in one;

function boughtWords({ diameter, fuel, name, ratio, ribs, cost }: BoughtPart): string {
  const called = diameter ?? fuel ?? name ?? (ribs === undefined ? `${ratio}` : `${ribs} ribs`);
  return `${called}, cost ${cost}`;
}

const isLink = (one: object): one is PublicationLink => 'where' in one;

/** `gain “What it adds” 6 s`, `why, not shown`: a step of a running order as a person left it. */
function stepWords({ id, isShown, title, seconds }: StepChoice): string {
  if (!isShown) return `${id}, not shown`;
  return [id, title === null ? '' : `“${title}”`, seconds === null ? '' : `${seconds} s`]
    .filter(Boolean)
    .join(' ');
}

const isMapPoint = (one: object): one is MapPoint => 'flow' in one && 'pressureRatio' in one;

/** `0.4120 kg/s, 1.850, 42000 r/min, 0.740`: a point of a compressor map, as it stands in the book. */
function pointWords({ flow, pressureRatio, speedRpm, efficiency }: MapPoint): string {
  const last = efficiency === null ? '' : `, ${efficiency.toFixed(3)}`;
  return `${flow.toFixed(4)} kg/s, ${pressureRatio.toFixed(3)}, ${Math.round(speedRpm)} r/min${last}`;
}
