import type { MoreOfPull } from '../../api/edge.ts';

/** What a person may say of a pull beyond the first questions, as typed; '' is not said. */
export interface MoreDetails {
  operator: string;
  sparkAdvance: string;
  targetLambda: string;
  jets: string;
  fuelPressure: string;
  coolerWater: string;
  fuelBatch: string;
  tuneNotes: string;
  boostTap: string;
  chargeProbe: string;
  inletProbe: string;
  momentOfInertia: string;
  inertiaCompensated: '' | 'yes' | 'no' | 'unknown';
  note: string;
  outcome: '' | 'completed' | 'aborted';
  events: readonly TypedEvent[];
}

export interface TypedEvent {
  /** '' not tied to a speed */
  engineSpeed: string;
  text: string;
}

export const NO_MORE: MoreDetails = {
  operator: '',
  sparkAdvance: '',
  targetLambda: '',
  jets: '',
  fuelPressure: '',
  coolerWater: '',
  fuelBatch: '',
  tuneNotes: '',
  boostTap: '',
  chargeProbe: '',
  inletProbe: '',
  momentOfInertia: '',
  inertiaCompensated: '',
  note: '',
  outcome: '',
  events: [],
};

/** The same as it is sent: what was left blank is not in it. */
export function moreSaid(details: MoreDetails): MoreOfPull {
  const { sparkAdvance, targetLambda, jets, fuelPressure, coolerWater, fuelBatch, tuneNotes } = details;
  const { boostTap, chargeProbe, inletProbe } = details;
  const tune = said({
    sparkAdvance,
    targetLambda,
    jets,
    fuelPressure,
    coolerWater,
    fuelBatch,
    notes: tuneNotes,
  });
  const places = said({ boostTap, chargeProbe, inletProbe });
  const events = details.events
    .map(({ engineSpeed, text }) => ({ engineSpeed: engineSpeed.trim() || null, text: text.trim() }))
    .filter((event) => event.engineSpeed !== null || event.text !== '');
  const { operator, momentOfInertia, note, inertiaCompensated, outcome } = details;
  return {
    ...said({ operator, momentOfInertia, notes: note }),
    ...(inertiaCompensated === '' ? {} : { inertiaCompensated }),
    ...(outcome === '' ? {} : { outcome }),
    ...(Object.keys(tune).length === 0 ? {} : { tune }),
    ...(Object.keys(places).length === 0 ? {} : { places }),
    ...(events.length === 0 ? {} : { events }),
  };
}

function said<Name extends string>(texts: Record<Name, string>): Partial<Record<Name, string>> {
  const entries = Object.entries<string>(texts).map(([name, text]) => [name, text.trim()] as const);
  return Object.fromEntries(entries.filter(([, text]) => text !== '')) as Partial<Record<Name, string>>;
}
