import { createHash } from 'node:crypto';
import { CORRECTIONS } from '@pullbook/core/air';
import type { CompressorMap } from '@pullbook/core/airpath';
import { readSheet } from '@pullbook/core/combination';
import type { Publication, PublicationKind } from '@pullbook/core/publication';
import type { Cell, Channel, ChannelMeaning, Pull } from '@pullbook/core/pull';
import { MEANINGS } from '@pullbook/core/pull';
import { absolutePressure, temperature } from '@pullbook/core/quantity';
import type { PredictedCurve, Prediction } from '@pullbook/core/shop';
import { type RunningOrder, STEP_IDS } from '@pullbook/core/trial';
import type { BookContents, LogEntry, WithdrawnKind } from '@pullbook/store';
import fc from 'fast-check';
import { generatedEnquiry } from './generated-enquiry.ts';

/** A whole book with something of every kind a book can hold, and the bytes of its originals. */
export interface GeneratedBook {
  contents: BookContents;
  originals: Map<string, Uint8Array>;
}

const ORIGINS = [
  'measured',
  'data sheet',
  'read off a picture',
  'remembered',
  'assumed',
  'computed',
] as const;
const TIME = '2026-03-14T10:42:00+01:00';

/** What people type: any sign there is, line breaks, quotes, a formula; never half a sign. */
const words = fc.oneof(
  fc.constantFrom('', '=1+1', '"quoted", and more\nnext line', '漢字 · ñ · 🛠', 'a\tb', "O'Neil; --", '../up'),
  fc.string({ unit: 'grapheme', maxLength: 24 }),
);
/** JSON has no minus nothing; channels have it, in their CSV. */
const figure = fc.double({ noNaN: true, min: -1e9, max: 1e9 }).map((value) => (value === 0 ? 0 : value));
const orNull = <T>(what: fc.Arbitrary<T>) => fc.option(what, { nil: null });
const some = <T>(what: fc.Arbitrary<T>, most = 4) => fc.array(what, { maxLength: most });
const share = fc.integer({ min: 1, max: 900 }).map((thousandths) => thousandths / 1000);
const rpmWindow = fc.constant<[number, number]>([2000, 6000]);
const audience = fc.record({
  who: fc.constantFrom('shop' as const, 'customer' as const, 'everyone' as const),
  notBefore: orNull(fc.constant('2026-05-03')),
});
const correction = fc.constantFrom(...Object.values(CORRECTIONS).map(({ id }) => id));

const weather = fc.record({
  pressure: fc.double({ min: 80_000, max: 105_000, noNaN: true }).map(absolutePressure),
  temperature: fc.double({ min: 260, max: 320, noNaN: true }).map(temperature),
  altitude: orNull(figure),
  humidity: orNull(
    fc.oneof(
      fc.record({
        route: fc.constant('relativeHumidity' as const),
        ratio: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      fc.record({
        route: fc.constantFrom('dewPoint' as const, 'wetBulb' as const),
        temperature: fc.double({ min: 260, max: 320, noNaN: true }).map(temperature),
      }),
      fc.record({
        route: fc.constant('vapourPressure' as const),
        pressure: fc.double({ min: 1, max: 5000, noNaN: true }).map(absolutePressure),
      }),
    ),
  ),
});

/** Columns of one length, every double there is among the values; not a number is a missing one. */
const channels: fc.Arbitrary<Channel[]> = fc.integer({ min: 1, max: 12 }).chain((rows) =>
  fc.array(
    fc
      .record({
        from: fc.constantFrom(...(Object.keys(MEANINGS) as ChannelMeaning[])),
        name: words,
        unit: fc.constantFrom('', 'x', 'N·m'),
        values: fc.array(fc.double(), { minLength: rows, maxLength: rows }),
        origin: fc.constantFrom(...ORIGINS),
      })
      .map(({ from, values, ...rest }) => ({
        ...rest,
        meaning: from,
        kind: MEANINGS[from].kind,
        values: Float64Array.from(values),
      })),
    { minLength: 1, maxLength: 4 },
  ),
);

const told = fc.record({
  name: words,
  setUpId: orNull(fc.constant('set-up')),
  sessionId: orNull(fc.constant('session')),
  orderInSession: orNull(fc.integer({ min: 1, max: 99 })),
  recordedAt: orNull(fc.constant(TIME)),
  cell: orNull(words),
  operator: orNull(words),
  weather: orNull(weather),
  carried: fc.record({
    standard: fc.oneof(correction, fc.constantFrom('not stated' as const, 'unknown' as const)),
    factor: orNull(figure),
  }),
  sweep: fc.record({
    momentOfInertia: orNull(figure),
    inertiaCompensated: fc.constantFrom('yes' as const, 'no' as const, 'unknown' as const),
  }),
  tune: fc.record(
    {
      sparkAdvance: words,
      targetLambda: words,
      jets: words,
      fuelPressure: words,
      fuelBatch: words,
      notes: words,
    },
    { requiredKeys: [] },
  ),
  places: fc.record({ boostTap: words, chargeProbe: words, inletProbe: words }, { requiredKeys: [] }),
  notes: some(fc.record({ at: fc.constant(TIME), text: words })),
  events: some(fc.record({ engineSpeedRpm: orNull(figure), text: words })),
  outcome: fc.constantFrom('completed' as const, 'aborted' as const),
  treatment: fc.record({
    lags: fc.record({ lambda: figure, torque: figure }, { requiredKeys: [] }),
    windowRpm: orNull(rpmWindow),
    binWidthRpm: orNull(fc.constantFrom(25, 50, 100)),
    addInertia: fc.boolean(),
  }),
  audience,
  origin: fc.constantFrom(...ORIGINS),
  invented: fc.boolean(),
});

const curve = fc.record({ told, channels });
const remembered = fc.record({
  told,
  summary: fc.record({
    peakPower: orNull(figure),
    peakPowerRpm: orNull(figure),
    peakTorque: orNull(figure),
    peakTorqueRpm: orNull(figure),
  }),
});

const cell: fc.Arbitrary<Omit<Cell, 'id' | 'name'>> = fc.record({
  brake: words,
  altitude: orNull(figure),
  momentOfInertia: orNull(figure),
  instruments: some(
    fc.record({
      id: fc.uuid(),
      name: words,
      measures: fc.constantFrom('torque' as const, 'weather' as const, 'lambda' as const),
      serial: words,
      calibrations: some(
        fc.record({
          day: fc.constant('2026-03-10'),
          validUntil: orNull(fc.constant('2027-03-10')),
          how: words,
          found: words,
          by: words,
        }),
        3,
      ),
    }),
    3,
  ),
  notes: words,
});

// As JSON holds it: it knows no −0.
const json = fc.jsonValue({ maxDepth: 2 }).map((value): unknown => JSON.parse(JSON.stringify(value)));

/** A sheet with a flow sheet and a lift curve among its lines, as a person writes them. */
const sheet = fc
  .record({
    bore: fc.integer({ min: 80, max: 120 }),
    lift: fc.integer({ min: 5, max: 15 }),
    fuel: fc.constantFrom('petrol', 'unknown'),
  })
  .map(({ bore, lift, fuel }) => {
    const read = readSheet({
      schemaVersion: 1,
      name: `Bore ${bore}`,
      shortBlock: { cylinders: 6, bore: `${bore} mm`, stroke: '88 mm' },
      heads: {
        flowIntake: { testPressure: '28 inH2O', points: `lift mm, flow L/s\n2, 24\n${lift}, 108` },
      },
      cam: {
        liftCurveIntake: {
          angleOf: 'crank',
          liftAt: 'valve',
          points: 'angle deg, lift mm\n-20, 0.4\n108, 11.2\n236, 0.4',
        },
      },
      fuel: { fuel, origin: 'own word' },
    });
    if (!read.ok) throw new Error(read.remarks.map(({ message }) => message).join('\n'));
    return read.value;
  });

/** A predicted curve of three speeds, with or without boost. */
const figures = fc.array(figure, { minLength: 3, maxLength: 3 });
const predictedFigure = fc.record({ value: figures, low: figures, high: figures });
const predictedCurve: fc.Arbitrary<PredictedCurve> = fc.record({
  engineSpeedRpm: fc.constant([2000, 3000, 4000]),
  power: predictedFigure,
  boost: orNull(predictedFigure),
  air: fc.record({ pressure: figure, temperature: figure }),
});

const compressorMap: fc.Arbitrary<Omit<CompressorMap, 'id' | 'name'>> = fc.record({
  form: fc.constantFrom('points' as const, 'rated' as const),
  reference: fc.record({ pressure: figure, temperature: figure }),
  geometry: fc.record({
    wheelExitDiameter: orNull(figure),
    wheelInletDiameter: orNull(figure),
    blades: orNull(fc.integer({ min: 3, max: 60 })),
    backsweep: orNull(figure),
  }),
  points: some(
    fc.record({ flow: figure, pressureRatio: figure, speedRpm: figure, efficiency: orNull(share) }),
  ),
  leftEnd: fc.constantFrom('surge' as const, 'not known' as const),
  origin: fc.constantFrom(...ORIGINS),
  notes: words,
  invented: fc.boolean(),
  createdAt: fc.constant(TIME),
});

const publicationKind = fc.constantFrom<PublicationKind>('still', 'clip', 'report', 'table', 'bundle');
const publication: fc.Arbitrary<Omit<Publication, 'id' | 'trialId' | 'pullIds'>> = fc.record({
  question: words,
  sentence: words,
  kinds: some(publicationKind, 2),
  files: some(
    fc.record({ name: words, kind: publicationKind, bytes: fc.nat(), sha256: fc.constant('ab'.repeat(32)) }),
    2,
  ),
  correction,
  figures: some(
    fc.record({
      id: fc.constantFrom('averagePower' as const, 'highestBoost' as const, 'meanGainRatio' as const),
      key: fc.constantFrom('A', 'B'),
      kind: fc.constantFrom('power' as const, 'gaugePressure' as const, 'ratio' as const),
      value: figure,
      low: orNull(figure),
      high: orNull(figure),
      engineSpeedRpm: orNull(figure),
      units: fc.constantFrom('us' as const, 'si' as const),
    }),
    3,
  ),
  privateToo: fc.boolean(),
  links: some(fc.record({ where: words, day: orNull(fc.constant('2026-05-01')), note: words }), 2),
  at: fc.constant(TIME),
});

const runningOrder: fc.Arbitrary<RunningOrder> = fc.record({
  steps: some(
    fc.record({
      id: fc.constantFrom(...STEP_IDS),
      isShown: fc.boolean(),
      title: orNull(words),
      seconds: orNull(fc.integer({ min: 1, max: 30 })),
    }),
    3,
  ),
  speed: fc.constantFrom(0.5, 1, 2),
});

const parts = fc.record({
  bookName: words,
  sheets: fc.array(sheet, { minLength: 1, maxLength: 3 }),
  curves: some(curve),
  remembered: some(remembered, 2),
  cells: some(cell, 2),
  texts: fc.array(words, { minLength: 12, maxLength: 12 }),
  trialAudience: audience,
  correction,
  window: orNull(rpmWindow),
  layouts: some(fc.record({ name: words, columns: json, said: json }), 2),
  silenced: some(fc.record({ reason: words }), 2),
  predictions: some(
    fc.record({
      what: fc.constantFrom<Prediction['what']>('meanGain', 'peakPower', 'highestBoost'),
      value: share,
      basis: words,
      made: fc.option(
        fc.record({ curve: predictedCurve, madeBy: fc.record({ version: words, seed: fc.nat() }) }),
        { nil: {} },
      ),
    }),
    2,
  ),
  compressorMaps: some(compressorMap, 2),
  publications: some(publication, 2),
  enquiries: some(generatedEnquiry, 2),
  runningOrder: orNull(runningOrder),
  plan: orNull(
    fc.record({
      gainRatio: share,
      odds: share,
      pulls: some(fc.record({ key: fc.constantFrom('A', 'B') }), 3),
      looksAt: some(fc.integer({ min: 2, max: 12 }), 3),
      stopCriteria: orNull(some(fc.record({ id: words, label: words, limit: words, source: words }), 2)),
      notes: words,
    }),
  ),
  takenApart: orNull(fc.boolean()),
  settings: fc.dictionary(
    fc.constantFrom('units', 'shopName', 'cell', 'mark'),
    json.filter((value) => value !== null),
  ),
  withdrawn: some(
    fc.constantFrom<WithdrawnKind>(
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
    8,
  ),
  log: some(fc.record({ act: words, reason: words, before: json, after: json, undoes: fc.boolean() }), 6),
  bytes: some(fc.uint8Array({ minLength: 1, maxLength: 60 }), 3),
});

/** Books of every kind of thing, whose references hold. `name` keeps the ids of two of them apart. */
export const generatedBook = (name: string): fc.Arbitrary<GeneratedBook> =>
  parts.map((given) => {
    const text = (at: number) => given.texts[at]!;
    const id = (what: string, at: number | string = '') => `${name} ${what}${at}`;
    const originals = new Map(given.bytes.map((bytes) => [hashOf(bytes), bytes]));
    const hashes = [...originals.keys()];
    const combinations = given.sheets.map((one, at) => ({
      id: id('combination', at),
      engineId: id('engine'),
      name: one.name,
      sheet: one,
      revision: at + 1,
      madeFromId: at === 0 ? null : id('combination', at - 1),
      packageIds: at === 0 ? [] : [id('package')],
      createdAt: TIME,
      invented: at === 0,
    }));
    const ownIds = (one: Pick<Pull, 'setUpId' | 'sessionId'>) => ({
      setUpId: one.setUpId === null ? null : id('set-up'),
      sessionId: one.sessionId === null ? null : id('session'),
    });
    const pulls: Pull[] = [
      ...given.curves.map(({ told: one, channels: columns }, at) => ({
        ...one,
        ...ownIds(one),
        id: id('curve', at),
        combinationId: at % 2 === 0 ? id('combination', 0) : null,
        form: 'curve' as const,
        channels: columns,
        summary: null,
        fileHash: hashes[at] ?? null,
      })),
      ...given.remembered.map(({ told: one, summary }, at) => ({
        ...one,
        ...ownIds(one),
        id: id('summary', at),
        combinationId: null,
        form: 'summary' as const,
        channels: [],
        summary,
        fileHash: null,
      })),
    ];
    const things: Record<WithdrawnKind, string | undefined> = {
      pull: pulls[0]?.id,
      trial: id('trial'),
      combination: combinations.at(-1)!.id,
      package: id('package'),
      engine: id('spare engine'),
      cell: given.cells.length > 0 ? id('cell', 0) : undefined,
      file: hashes[0],
      prediction: given.predictions.length > 0 ? id('prediction', 0) : undefined,
      compressorMap: given.compressorMaps.length > 0 ? id('map', 0) : undefined,
      publication: given.publications.length > 0 ? id('publication', 0) : undefined,
      enquiry: given.enquiries.length > 0 ? id('enquiry', 0) : undefined,
    };
    const contents: BookContents = {
      info: { id: name, name: given.bookName, invented: false, createdAt: TIME, schemaVersion: 3 },
      engines: [id('engine'), id('spare engine')].map((one, at) => ({
        id: one,
        name: `${one} ${text(0)}`,
        buildRevision: text(1),
        notes: text(2),
        invented: at === 0,
      })),
      packages: [
        { id: id('package'), name: text(3), covers: ['supercharger', 'cam.lobeLift'], invented: true },
      ],
      combinations,
      setUps: [{ id: id('set-up'), combinationId: id('combination', 0), fittedAt: TIME, notes: text(4) }],
      sessions: [{ id: id('session'), name: text(5), cell: text(6), day: '2026-03-14', notes: text(7) }],
      cells: given.cells.map((one, at) => ({ ...one, id: id('cell', at), name: id('cell', at) })),
      pulls,
      files: hashes.map((hash, at) => ({
        hash,
        name: `${text(8)}${at}`,
        byteLength: originals.get(hash)!.length,
        addedAt: TIME,
        mapping: at === 0 ? null : [{ index: at, meaning: 'torque', unit: 'N·m' }],
      })),
      trials: [
        {
          id: id('trial'),
          question: text(9),
          kind: pulls.length % 2 === 0 ? 'comparison' : 'survey',
          combinations: [
            {
              key: 'A',
              combinationId: id('combination', 0),
              shortName: text(10),
              ...(given.takenApart === null ? {} : { takenApart: given.takenApart }),
            },
          ],
          pulls: pulls.map((one, at) => ({
            pullId: one.id,
            key: 'A',
            role: (['counted', 'rejected', 'warm-up'] as const)[at % 3]!,
            reason: at % 3 === 1 ? text(11) : null,
          })),
          correction: given.correction,
          averagesWindowRpm: given.window,
          remark: text(1),
          audience: given.trialAudience,
          ...(given.plan === null ? {} : { plan: given.plan }),
          ...(given.runningOrder === null ? {} : { runningOrder: given.runningOrder }),
          createdAt: TIME,
          invented: true,
        },
      ],
      layouts: given.layouts.map((one, at) => ({ ...one, fingerprint: id('layout', at), confirmedAt: TIME })),
      silenced: given.silenced.map((one, at) => ({
        ...one,
        id: `V0${at + 1} trial ${id('trial')}`,
        ruleId: `V0${at + 1}`,
        subject: `trial ${id('trial')}`,
        at: TIME,
      })),
      predictions: given.predictions.map(({ made, ...one }, at) => ({
        ...one,
        ...made,
        id: id('prediction', at),
        trialId: id('trial'),
        key: 'A',
        low: one.value - 1,
        high: one.value + 1,
        at: TIME,
      })),
      compressorMaps: given.compressorMaps.map((one, at) => ({
        ...one,
        id: id('map', at),
        name: id('map', at),
      })),
      publications: given.publications.map((one, at) => ({
        ...one,
        id: id('publication', at),
        trialId: id('trial'),
        pullIds: pulls.map((pull) => pull.id),
      })),
      enquiries: given.enquiries.map((one, at) => ({
        ...one,
        id: id('enquiry', at),
        combinationId: id('combination', 0),
        pullIds: pulls.map((pull) => pull.id),
        became:
          at === 0
            ? []
            : [{ rungId: 'a', combinationId: id('combination', 0), trialId: id('trial'), at: TIME }],
      })),
      settings: given.settings,
      withdrawn: [...new Set(given.withdrawn)].sort().flatMap((kind, at) => {
        const thing = things[kind];
        return thing === undefined ? [] : [{ kind, id: thing, at: `2026-03-14T10:0${at}:00.000Z` }];
      }),
      log: logOf(name, given.log),
    };
    return { contents, originals };
  });

function logOf(
  book: string,
  entries: readonly (Pick<LogEntry, 'act' | 'reason' | 'before' | 'after'> & { undoes: boolean })[],
): LogEntry[] {
  return entries.map(({ undoes, ...rest }, at) => ({
    ...rest,
    id: at + 1,
    uid: `${book}/${at + 1}`,
    undoes: undoes && at > 0 ? `${book}/${at}` : null,
    together: `${book}/${undoes && at > 0 ? at : at + 1}`,
    at: TIME,
    subject: `pull ${at}`,
  }));
}

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
