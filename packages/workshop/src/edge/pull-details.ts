import { type CorrectionId, correctionById } from '@pullbook/core/air';
import type { CarriedCorrection, Places, Pull, SweepSettings, Treatment, Tune } from '@pullbook/core/pull';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { type EventText, eventsFromText } from './events-text.ts';
import { optionalQuantityFromText } from './quantity-text.ts';
import { type SaidFields, saidFields } from './text-fields.ts';
import { type TreatmentText, treatmentFromText } from './treatment-text.ts';
import { type WeatherText, weatherFromText } from './weather-text.ts';

/** With fields that may also be there and empty. */
type Loose<T> = { [Field in keyof T]?: T[Field] | undefined };

/** What a person says of a pull beside its file: text with units. Missing: not said. `null`: unknown. */
export interface PullDetailsText {
  name?: string | undefined;
  combinationId?: string | null | undefined;
  /** Which time of the combination on the brake, in words: `second fitting`. Empty: unknown. */
  setUp?: string | null | undefined;
  cell?: string | null | undefined;
  operator?: string | null | undefined;
  /** ISO 8601, with offset */
  recordedAt?: string | null | undefined;
  weather?: WeatherText | null | undefined;
  /** `factor: null`: not known. */
  carried?: { standard: string; factor?: number | null | undefined } | undefined;
  /** `0.31 kg·m²` */
  momentOfInertia?: string | null | undefined;
  inertiaCompensated?: 'yes' | 'no' | 'unknown' | undefined;
  /** A field that is `null` or blank is cleared. */
  tune?: SaidFields<Tune> | undefined;
  places?: SaidFields<Places> | undefined;
  /** One note, taken down now. */
  notes?: string | undefined;
  outcome?: 'completed' | 'aborted' | undefined;
  /** Place in the order of its session, from 1. */
  orderInSession?: number | null | undefined;
  /** How the pull is to be read. */
  treatment?: TreatmentText | undefined;
  events?: EventText[] | undefined;
}

/** The same in inside types. Combination, set-up and session are ids. */
export type PullDetails = Partial<
  Pick<
    Pull,
    | 'name'
    | 'combinationId'
    | 'setUpId'
    | 'sessionId'
    | 'orderInSession'
    | 'recordedAt'
    | 'cell'
    | 'operator'
    | 'weather'
    | 'carried'
    | 'notes'
    | 'events'
    | 'outcome'
    | 'invented'
  >
> & {
  /** Only what was said; a field that is `null` is cleared. */
  tune?: SaidFields<Tune>;
  places?: SaidFields<Places>;
  /** Only what was said of the two. */
  sweep?: Partial<SweepSettings>;
  /** Only what was said: lags join those that stand, and one of 0 takes a lag away. */
  treatment?: Partial<Treatment>;
  /** The set-up in words, until the book has given it an id. */
  setUpWords?: string | null;
};

/** Details of a pull from what a person wrote; each field that cannot be read has its own remark. `now`: ISO 8601. */
export function pullDetailsFromText(text: PullDetailsText, now: string): Result<PullDetails> {
  const weather = text.weather ? weatherFromText(text.weather) : accepted(text.weather);
  const carried = text.carried ? carriedFromText(text.carried) : accepted(undefined);
  const recordedAt = instantFromText(text.recordedAt);
  const inertia = optionalQuantityFromText(text.momentOfInertia, 'momentOfInertia', 'Moment of inertia');
  const treatment = treatmentFromText(text.treatment ?? {});
  const events = eventsFromText(text.events ?? []);
  const remarks = [weather, carried, recordedAt, inertia, treatment, events].flatMap((one) => one.remarks);
  if (!weather.ok || !carried.ok || !recordedAt.ok || !inertia.ok || !treatment.ok || !events.ok) {
    return refused(...(remarks as [Remark, ...Remark[]]));
  }
  const sweep = onlySaid<Partial<SweepSettings>>({
    momentOfInertia: text.momentOfInertia === undefined ? undefined : inertia.value,
    inertiaCompensated: text.inertiaCompensated,
  });
  const notes = text.notes?.trim() ? [{ at: now, text: text.notes.trim() }] : undefined;
  return accepted(
    onlySaid<PullDetails>({
      name: text.name?.trim() || undefined,
      combinationId: text.combinationId,
      setUpWords: text.setUp === undefined ? undefined : text.setUp?.trim() || null,
      cell: saidText(text.cell),
      operator: saidText(text.operator),
      recordedAt: recordedAt.value,
      weather: weather.value,
      carried: carried.value,
      sweep: orNothing(sweep),
      tune: saidFields<Tune>(text.tune),
      places: saidFields<Places>(text.places),
      notes,
      outcome: text.outcome,
      orderInSession: text.orderInSession,
      treatment: orNothing(treatment.value),
      events: events.value.length > 0 ? events.value : undefined,
    }),
    remarks,
  );
}

function onlySaid<T extends object>(fields: Loose<T>): T {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as T;
}

/** Missing: not said; blank is unknown. */
const saidText = (text: string | null | undefined): string | null | undefined =>
  text === undefined ? undefined : text?.trim() || null;

const orNothing = <T extends object>(fields: T): T | undefined =>
  Object.keys(fields).length > 0 ? fields : undefined;

const STANDARDS = 'observed, sae-j1349, sae-j607, iso-1585, din-70020, unknown, not stated';
/** Beyond these a factor is a slip of the pen: no weather an engine runs in asks for it (common practice, no source). */
const FACTOR_RANGE = [0.5, 2] as const;

function carriedFromText(text: {
  standard: string;
  factor?: number | null | undefined;
}): Result<CarriedCorrection> {
  const factor = text.factor ?? null;
  if (text.standard === 'unknown' || text.standard === 'not stated') {
    return accepted({ standard: text.standard, factor: null });
  }
  if (text.standard === 'observed') return accepted({ standard: 'observed', factor: 1 });
  const standard = correctionById(text.standard);
  if (!standard) {
    return refused(
      remark(
        'refusal',
        'unknown-correction',
        `"${text.standard}" is not a correction Pullbook knows. Accepted: ${STANDARDS}.`,
      ),
    );
  }
  if (factor !== null && !(factor >= FACTOR_RANGE[0] && factor <= FACTOR_RANGE[1])) {
    return refused(
      remark(
        'refusal',
        'absurd-factor',
        `A correction factor of ${factor} cannot be. Accepted: ${FACTOR_RANGE[0]} to ${FACTOR_RANGE[1]}, as printed on the sheet (1.021). Leave it out where it is not known.`,
      ),
    );
  }
  return accepted({ standard: standard.id as CorrectionId, factor });
}

/** An instant with the offset as given, so that the day stays the day of the cell. */
function instantFromText(text: string | null | undefined): Result<string | null | undefined> {
  if (text === null || text === undefined) return accepted(text);
  const trimmed = text.trim().replace(/^(\d{4}-\d\d-\d\d) (?=\d)/, '$1T');
  if (trimmed === '') return accepted(null);
  const shape = /^\d{4}-\d\d-\d\d(T\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:?\d\d)?)?$/;
  if (!shape.test(trimmed) || Number.isNaN(Date.parse(trimmed))) {
    return refused(
      remark(
        'refusal',
        'time-not-read',
        `"${text}" is not a time Pullbook reads. Accepted: 2026-03-14, 2026-03-14 10:42, 2026-03-14T10:42:00+01:00.`,
      ),
    );
  }
  return accepted(trimmed);
}
