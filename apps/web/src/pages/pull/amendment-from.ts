import type { PullDetailsText } from '../../api/edge.ts';
import { carriedOf, type FileDetails, instantOf, weatherOf } from '../add-pulls/file-details.ts';

/** What may be mended of what was written down. Missing: stays; `null`: not known after all. */
export type WrittenAmendment = Omit<PullDetailsText, 'treatment' | 'orderInSession'>;

const AIR = ['pressure', 'temperature', 'humidity', 'altitude'] as const;
const TUNE = {
  sparkAdvance: 'sparkAdvance',
  targetLambda: 'targetLambda',
  jets: 'jets',
  fuelPressure: 'fuelPressure',
  coolerWater: 'coolerWater',
  fuelBatch: 'fuelBatch',
  tuneNotes: 'notes',
} as const;
const PLACES = { boostTap: 'boostTap', chargeProbe: 'chargeProbe', inletProbe: 'inletProbe' } as const;

/** What a person changed in the form of a pull: only that is sent. A field that was emptied is cleared. */
export function amendmentFrom(stands: FileDetails, typed: FileDetails): WrittenAmendment {
  const changed = (name: keyof FileDetails) => typed[name] !== stands[name];
  const text = (name: 'combinationId' | 'setUp' | 'cell' | 'operator' | 'momentOfInertia') =>
    changed(name) ? { [name]: typed[name].trim() || null } : {};
  const group = <To extends string>(names: Record<string, To>) =>
    Object.fromEntries(
      Object.entries(names)
        .filter(([name]) => changed(name as keyof FileDetails))
        .map(([name, to]) => [to, String(typed[name as keyof FileDetails]).trim() || null]),
    );
  const [tune, places] = [group(TUNE), group(PLACES)];
  const events = typed.events
    .map(({ engineSpeed, text: words }) => ({ engineSpeed: engineSpeed.trim() || null, text: words.trim() }))
    .filter((event) => event.engineSpeed !== null || event.text !== '');
  return {
    ...(changed('name') && typed.name.trim() !== '' ? { name: typed.name.trim() } : {}),
    ...text('combinationId'),
    ...text('setUp'),
    ...text('cell'),
    ...text('operator'),
    ...text('momentOfInertia'),
    ...(changed('recordedAt')
      ? { recordedAt: typed.recordedAt === '' ? null : instantOf(typed.recordedAt) }
      : {}),
    ...(AIR.some(changed) ? { weather: weatherOf(typed) } : {}),
    ...(changed('standard') || changed('factor') ? { carried: carriedOf(typed) } : {}),
    ...(changed('inertiaCompensated') ? { inertiaCompensated: typed.inertiaCompensated || 'unknown' } : {}),
    ...(changed('outcome') && typed.outcome !== '' ? { outcome: typed.outcome } : {}),
    ...(Object.keys(tune).length > 0 ? { tune } : {}),
    ...(Object.keys(places).length > 0 ? { places } : {}),
    ...(typed.note.trim() === '' ? {} : { notes: typed.note.trim() }),
    ...(events.length > 0 ? { events } : {}),
  };
}
