import { CORRECTIONS } from '@pullbook/core/air';
import { ORIGINS } from '@pullbook/core/combination';
import { PUBLICATION_KINDS } from '@pullbook/core/publication';
import { MEANINGS } from '@pullbook/core/pull';
import { STEP_IDS } from '@pullbook/core/trial';
import { EDGE_UNITS } from './edge-units.ts';
import { ENQUIRY } from './enquiry-schema.ts';
import { EXPORT_FORMAT, EXPORT_SCHEMA_VERSION } from './export-names.ts';
import {
  HASH,
  list,
  MAYBE_NUMBER,
  MAYBE_TEXT,
  NUMBER,
  object,
  objectWith,
  oneOf,
  orNull,
  TEXT,
  TRUTH,
  words,
} from './schema-pieces.ts';

/**
 * The shape of `book.json` as JSON Schema (draft 2020-12), for whoever reads an export with a program of their own.
 * `docs/book.schema.json` is this, written out by `npx tsx tools/write-book-schema.ts`; closed lists come from the tables that the
 * program itself reads by.
 */
export function bookSchema(): object {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Open export of a Pullbook book: book.json',
    description:
      'The unit stands last in a key that holds a bare number. null is unknown. SI; engine speed in r/min.',
    ...object({
      format: { const: EXPORT_FORMAT },
      schemaVersion: { const: EXPORT_SCHEMA_VERSION },
      info: object({
        id: TEXT,
        name: TEXT,
        invented: TRUTH,
        createdAt: TEXT,
        schemaVersion: { type: 'integer', minimum: 1 },
      }),
      engines: list(object({ id: TEXT, name: TEXT, buildRevision: TEXT, notes: TEXT, invented: TRUTH })),
      packages: list(object({ id: TEXT, name: TEXT, covers: list(TEXT), invented: TRUTH })),
      combinations: list(COMBINATION),
      setUps: list(object({ id: TEXT, combinationId: TEXT, fittedAt: TEXT, notes: TEXT })),
      sessions: list(object({ id: TEXT, name: TEXT, cell: TEXT, day: TEXT, notes: TEXT })),
      cells: list(CELL),
      pulls: list(pull()),
      files: list(
        object({
          hash: HASH,
          name: TEXT,
          byteLength: { type: 'integer', minimum: 0 },
          addedAt: TEXT,
          mapping: true,
        }),
      ),
      originals: list(
        object({ hash: HASH, name: TEXT, path: { type: 'string', pattern: '^originals/[^/]+$' } }),
      ),
      trials: list(trial()),
      layouts: list(object({ fingerprint: TEXT, name: TEXT, columns: true, said: true, confirmedAt: TEXT })),
      silenced: list(object({ id: TEXT, ruleId: TEXT, subject: TEXT, reason: TEXT, at: TEXT })),
      predictions: list(
        objectWith(
          {
            id: TEXT,
            trialId: TEXT,
            key: TEXT,
            what: oneOf('meanGain', 'peakPower', 'highestBoost'),
            // A share of the baseline's mean power, W, or Pa, as `what` says.
            value: NUMBER,
            low: NUMBER,
            high: NUMBER,
            basis: TEXT,
            at: TEXT,
          },
          {
            curve: PREDICTED_CURVE,
            madeBy: object({ version: TEXT, seed: { type: 'integer' } }),
          },
        ),
      ),
      compressorMaps: list(COMPRESSOR_MAP),
      publications: list(PUBLICATION),
      enquiries: list(ENQUIRY),
      settings: { type: 'object' },
      withdrawn: list(
        object({
          kind: oneOf(
            'pull',
            'trial',
            'combination',
            'package',
            'engine',
            'cell',
            'file',
            'prediction',
            'compressorMap',
            'publication',
            'enquiry',
          ),
          id: TEXT,
          at: TEXT,
        }),
      ),
      log: list(
        object({
          id: { type: 'integer', minimum: 1 },
          uid: TEXT,
          undoes: orNull(TEXT),
          together: TEXT,
          at: TEXT,
          act: TEXT,
          subject: TEXT,
          reason: TEXT,
          before: true,
          after: true,
        }),
      ),
    }),
  };
}

const RANGE = { type: 'array', items: NUMBER, minItems: 2, maxItems: 2 };
const ORIGIN = oneOf(...ORIGINS);
const AUDIENCE = object({ who: oneOf('shop', 'customer', 'everyone'), notBefore: MAYBE_TEXT });
const KIND = oneOf(...Object.keys(EDGE_UNITS));

const SHEET_VALUE = {
  type: 'object',
  properties: {
    text: TEXT,
    value: MAYBE_NUMBER,
    kind: oneOf(...Object.keys(EDGE_UNITS), 'text', 'count', 'table'),
    unit: MAYBE_TEXT,
    origin: ORIGIN,
    table: object({
      points: TEXT,
      columns: list(object({ field: TEXT, kind: KIND, unit: TEXT, enteredUnit: TEXT, values: list(NUMBER) })),
      details: { type: 'object' },
    }),
  },
  required: ['text', 'value', 'kind', 'unit', 'origin'],
  additionalProperties: false,
};

const COMBINATION = object({
  id: TEXT,
  engineId: TEXT,
  name: TEXT,
  sheet: object({
    schemaVersion: { const: 1 },
    name: TEXT,
    sections: {
      type: 'object',
      additionalProperties: { type: 'object', additionalProperties: SHEET_VALUE },
    },
  }),
  revision: { type: 'integer', minimum: 1 },
  madeFromId: MAYBE_TEXT,
  packageIds: list(TEXT),
  createdAt: TEXT,
  invented: TRUTH,
});

const PREDICTED_FIGURE = object({ value: list(NUMBER), low: list(NUMBER), high: list(NUMBER) });

const PREDICTED_CURVE = object({
  engineSpeedRpm: list(NUMBER),
  powerW: PREDICTED_FIGURE,
  boostPa: orNull(PREDICTED_FIGURE),
  air: object({ pressurePa: NUMBER, temperatureK: NUMBER }),
});

const COMPRESSOR_MAP = object({
  id: TEXT,
  name: TEXT,
  form: oneOf('points', 'rated'),
  reference: object({ pressurePa: NUMBER, temperatureK: NUMBER }),
  geometry: object({
    wheelExitDiameterM: MAYBE_NUMBER,
    wheelInletDiameterM: MAYBE_NUMBER,
    blades: MAYBE_NUMBER,
    backsweepRad: MAYBE_NUMBER,
  }),
  // Flow and speed are corrected to the reference; total to total.
  points: list(
    object({
      flowKgPerS: NUMBER,
      pressureRatio: NUMBER,
      speedRpm: NUMBER,
      efficiencyRatio: MAYBE_NUMBER,
    }),
  ),
  leftEnd: oneOf('surge', 'not known'),
  origin: ORIGIN,
  notes: TEXT,
  invented: TRUTH,
  createdAt: TEXT,
});

const PUBLICATION_KIND = oneOf(...PUBLICATION_KINDS);

const PUBLICATION = object({
  id: TEXT,
  trialId: TEXT,
  question: TEXT,
  sentence: TEXT,
  kinds: list(PUBLICATION_KIND),
  files: list(
    object({ name: TEXT, kind: PUBLICATION_KIND, bytes: { type: 'integer', minimum: 0 }, sha256: HASH }),
  ),
  pullIds: list(TEXT),
  correction: oneOf(...Object.keys(CORRECTIONS)),
  figures: list(
    object({
      id: oneOf('averagePower', 'peakPower', 'peakTorque', 'highestBoost', 'meanGain', 'meanGainRatio'),
      key: TEXT,
      kind: KIND,
      // In `unit`; low and high are the 95 % band.
      value: NUMBER,
      low: MAYBE_NUMBER,
      high: MAYBE_NUMBER,
      unit: TEXT,
      engineSpeedRpm: MAYBE_NUMBER,
      // In which it was said.
      units: oneOf('us', 'si'),
    }),
  ),
  privateToo: TRUTH,
  links: list(object({ where: TEXT, day: MAYBE_TEXT, note: TEXT })),
  at: TEXT,
});

const CELL = object({
  id: TEXT,
  name: TEXT,
  brake: TEXT,
  altitudeM: MAYBE_NUMBER,
  momentOfInertiaKgM2: MAYBE_NUMBER,
  instruments: list(
    object({
      id: TEXT,
      name: TEXT,
      measures: oneOf(...Object.keys(MEANINGS), 'weather'),
      serial: TEXT,
      calibrations: list(object({ day: TEXT, validUntil: MAYBE_TEXT, how: TEXT, found: TEXT, by: TEXT })),
    }),
  ),
  notes: TEXT,
});

const WEATHER = object({
  pressurePa: NUMBER,
  temperatureK: NUMBER,
  altitudeM: MAYBE_NUMBER,
  humidity: {
    anyOf: [
      { type: 'null' },
      object({ route: { const: 'relativeHumidity' }, relativeHumidityRatio: NUMBER }),
      object({ route: { const: 'dewPoint' }, dewPointK: NUMBER }),
      object({ route: { const: 'wetBulb' }, wetBulbK: NUMBER }),
      object({ route: { const: 'vapourPressure' }, vapourPressurePa: NUMBER }),
    ],
  },
});

function pull(): object {
  const meaning = oneOf(...Object.keys(MEANINGS));
  return object({
    id: TEXT,
    name: TEXT,
    combinationId: MAYBE_TEXT,
    setUpId: MAYBE_TEXT,
    sessionId: MAYBE_TEXT,
    orderInSession: orNull({ type: 'integer' }),
    recordedAt: MAYBE_TEXT,
    cell: MAYBE_TEXT,
    operator: MAYBE_TEXT,
    form: oneOf('curve', 'summary'),
    channels: list(
      object({
        meaning,
        name: TEXT,
        unit: TEXT,
        kind: KIND,
        origin: ORIGIN,
        column: { type: 'string', minLength: 1 },
      }),
    ),
    channelsFile: orNull({ type: 'string', pattern: '^pulls/[^/]+\\.csv$' }),
    summary: orNull(
      object({
        peakPowerW: MAYBE_NUMBER,
        peakPowerRpm: MAYBE_NUMBER,
        peakTorqueNm: MAYBE_NUMBER,
        peakTorqueRpm: MAYBE_NUMBER,
      }),
    ),
    weather: orNull(WEATHER),
    carried: object({
      standard: oneOf(...Object.keys(CORRECTIONS), 'not stated', 'unknown'),
      factor: MAYBE_NUMBER,
    }),
    sweep: object({ momentOfInertiaKgM2: MAYBE_NUMBER, inertiaCompensated: oneOf('yes', 'no', 'unknown') }),
    tune: words('sparkAdvance', 'targetLambda', 'jets', 'fuelPressure', 'coolerWater', 'fuelBatch', 'notes'),
    places: words('boostTap', 'chargeProbe', 'inletProbe'),
    notes: list(object({ at: TEXT, text: TEXT })),
    events: list(object({ engineSpeedRpm: MAYBE_NUMBER, text: TEXT })),
    outcome: oneOf('completed', 'aborted'),
    treatment: object({
      lagsS: { type: 'object', propertyNames: meaning, additionalProperties: NUMBER },
      windowRpm: orNull(RANGE),
      binWidthRpm: MAYBE_NUMBER,
      addInertia: TRUTH,
    }),
    audience: AUDIENCE,
    origin: ORIGIN,
    fileHash: orNull(HASH),
    invented: TRUTH,
  });
}

const PLAN = object({
  gainRatio: NUMBER,
  odds: NUMBER,
  pulls: list(object({ key: TEXT })),
  looksAt: list({ type: 'integer' }),
  stopCriteria: orNull(list(object({ id: TEXT, label: TEXT, limit: TEXT, source: TEXT }))),
  notes: TEXT,
});

const RUNNING_ORDER = object({
  steps: list(object({ id: oneOf(...STEP_IDS), isShown: TRUTH, title: MAYBE_TEXT, seconds: MAYBE_NUMBER })),
  speed: NUMBER,
});

function trial(): object {
  return objectWith(
    {
      id: TEXT,
      question: TEXT,
      kind: oneOf('comparison', 'survey'),
      combinations: list(
        objectWith({ key: TEXT, combinationId: TEXT, shortName: TEXT }, { takenApart: TRUTH }),
      ),
      pulls: list(
        object({
          pullId: TEXT,
          key: TEXT,
          role: oneOf('counted', 'rejected', 'warm-up'),
          reason: MAYBE_TEXT,
        }),
      ),
      correction: oneOf(...Object.keys(CORRECTIONS)),
      averagesWindowRpm: orNull(RANGE),
      remark: TEXT,
      audience: AUDIENCE,
      createdAt: TEXT,
      invented: TRUTH,
    },
    { plan: PLAN, runningOrder: RUNNING_ORDER },
  );
}
