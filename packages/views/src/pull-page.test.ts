import {
  type ChannelMeaning,
  defaultRecipe,
  type GriddedCurve,
  OPEN_AUDIENCE,
  PLAIN_TREATMENT,
  type Pull,
  type PullView,
  recipeFor,
} from '@pullbook/core/pull';
import { absolutePressure, figureOf, percentFigure, temperature, toInside } from '@pullbook/core/quantity';
import { remark, said } from '@pullbook/core/remark';
import { describe, expect, test } from 'vitest';
import type { RecordedLook, ViewOptions } from './model.ts';
import { pullPage } from './pull-page.ts';
import { pullRow } from './pull-row.ts';
import { recordedPage } from './recorded-page.ts';
import { leavesOf } from './test-leaves.ts';

const US: ViewOptions = { units: 'us', decimalMark: '.' };
const SI: ViewOptions = { units: 'si', decimalMark: ',' };
const channel = (
  meaning: ChannelMeaning,
  name: string,
  kind: Pull['channels'][number]['kind'],
  values: number[],
) => ({
  meaning,
  name,
  unit: '',
  kind,
  values: Float64Array.from(values),
  origin: 'measured' as const,
});

const pull: Pull = {
  id: 'pull',
  name: 'Pull 2',
  combinationId: null,
  setUpId: null,
  sessionId: null,
  orderInSession: 2,
  recordedAt: '2026-03-13T10:31:00+01:00',
  cell: 'cell 1',
  operator: null,
  form: 'curve',
  channels: [
    channel('time', 'Time', 'time', [0, 1, 2, 3]),
    channel('engineSpeed', 'Engine speed', 'engineSpeed', [3000, 4000, 5000, 6000]),
    channel('torque', 'Torque', 'torque', [300, 310, 450, Number.NaN]),
    channel('throttle', 'Throttle', 'ratio', [0.1, 1, 1, 1]),
    channel('other', 'Knock, left', 'ratio', [0, 0, 1, 0]),
  ],
  summary: null,
  weather: {
    pressure: absolutePressure(98_900),
    temperature: temperature(295.05),
    humidity: { route: 'relativeHumidity', ratio: 0.4 },
    altitude: 210,
  },
  carried: { standard: 'observed', factor: 1 },
  sweep: { momentOfInertia: 0.32, inertiaCompensated: 'no' },
  tune: { sparkAdvance: '31 deg' },
  places: {},
  notes: [{ at: '2026-03-13T10:33:00+01:00', text: 'a loose plug' }],
  events: [{ engineSpeedRpm: 5000, text: 'one loud pop' }],
  outcome: 'completed',
  treatment: PLAIN_TREATMENT,
  audience: OPEN_AUDIENCE,
  origin: 'measured',
  fileHash: 'abc',
  invented: true,
};

const curve: GriddedCurve = {
  kindOfRows: 'samples',
  binWidthRpm: 50,
  engineSpeedRpm: Float64Array.of(4000, 4050, 4100),
  count: Float64Array.of(3, 0, 3),
  channels: new Map([
    ['power', Float64Array.of(toInside(200, 'hp'), Number.NaN, toInside(205, 'hp'))],
    ['torque', Float64Array.of(300, Number.NaN, 310)],
  ]),
};

const view: PullView = {
  pullId: 'pull',
  recipe: defaultRecipe(),
  correction: { asked: 'sae-j1349', standard: 'sae-j1349', factor: 1.0066, reached: true },
  window: {
    fromRow: 1,
    toRow: 3,
    direction: 'rising',
    windowRpm: [4000, 6000],
    sweepRateRpmPerS: 1000,
    cuts: [{ fromRow: 0, toRow: 0, reason: 'row 1: throttle at 10 %, not yet open' }],
  },
  spikes: [{ row: 2, meaning: 'torque', value: 450, expected: 320 }],
  curve,
  peakPower: {
    value: toInside(205, 'hp'),
    atRpm: 4112,
    valueSpread: null,
    atRpmSpread: null,
    stillClimbing: true,
  },
  peakTorque: { value: 310, atRpm: 4100, valueSpread: null, atRpmSpread: null, stillClimbing: false },
  remarks: [],
};

const plain = (text: string) => text.replace(/\u00a0/g, ' ');
const page = (options: ViewOptions) =>
  pullPage({ pull, view, combination: null, file: null, trials: [], cell: null }, options);
const recordedIn = (options: ViewOptions, look: Partial<RecordedLook>) =>
  recordedPage(pull, view, { over: 'time', range: null, channels: null, ...look }, options);

describe('a pull page', () => {
  test('headline, basis, cuts and spikes in words', () => {
    const shown = page(US);
    expect(plain(shown.headline.map((part) => part.text).join(''))).toBe(
      '205 hp at 4,110 rpm, still climbing; 229 lb-ft at 4,100 rpm.',
    );
    expect(plain(shown.basis)).toBe(
      'SAE J1349, factor 1.007 · counted from 4,000 to 6,000 rpm · means over 50 rpm · 13 March 2026 10:31',
    );
    expect(shown.cuts).toEqual(['Row 1: throttle at 10 %, not yet open']);
    expect(plain(page(SI).spikes[0]!)).toBe(
      'Torque, 1 row left out of the curve: row 3, 450,0 N·m where its neighbours say 320,0 N·m.',
    );
    expect(plain(shown.events[0]!)).toBe('5,000 rpm: one loud pop');
    expect(shown.notes).toEqual(['13 March 2026 10:33: a loose plug']);
  });

  test('everything recorded is there over time, with the spike marked, what counts told and what is cut faint', () => {
    const { chart: recorded } = recordedIn(SI, { over: 'time' });
    expect(recorded!.panels.map((panel) => panel.title)).toEqual(['Engine speed', 'Throttle', 'Torque']);
    expect(recorded!.xRange).toEqual([0, 3]);
    expect(recorded!.xWindow).toMatchObject({ range: [1, 3] });
    expect(recorded!.xCuts).toEqual([{ range: [0, 1], label: '1' }]);
    const torque = recorded!.panels[2]!;
    expect(torque.lines.map(({ weight, x, y }) => ({ weight, x, y }))).toEqual([
      { weight: 'rejected', x: [0, 1], y: [300, 310] },
      { weight: 'pull', x: [1, 2, 3], y: [310, 450, null] },
    ]);
    expect(torque.marks[0]).toMatchObject({ x: 2, y: 450 });
    expect(recorded!.panels[1]!.lines[0]!.y).toEqual([10, 100]);
  });

  test('the same over engine speed, without a panel of its own axis', () => {
    const { chart: recorded, cursor, windowSteps } = recordedIn(SI, { over: 'speed' });
    expect(recorded!.panels.map((panel) => panel.title)).toEqual(['Throttle', 'Torque']);
    expect(recorded!.xRange).toEqual([3000, 6000]);
    expect(recorded!.xWindow!.range).toEqual([4000, 6000]);
    expect(recorded!.xCuts).toEqual([]);
    expect(recorded!.panels[1]!.marks[0]).toMatchObject({ x: 5000, y: 450 });
    expect(cursor!.at).toEqual([4000, 5000, 6000]);
    expect(cursor!.rows[1]!.cells[0]).toEqual(['310,0', '450,0', '']);
    expect(windowSteps.at.slice(0, 2)).toEqual([3000, 3050]);
    expect(windowSteps.at.at(-1)).toBe(6000);
  });

  test('over time an end of the window is the engine speed of a row', () => {
    expect(recordedIn(US, { over: 'time' }).windowSteps).toEqual({
      at: [0, 1, 2, 3],
      engineSpeedRpm: [3000, 4000, 5000, 6000],
    });
  });

  test('an end of the window that is let be loses no row', () => {
    const between: PullView = { ...view, window: { ...view.window!, windowRpm: [3999.6, 6000.3] } };
    const steps = (over: RecordedLook['over']) =>
      recordedPage(pull, between, { over, range: null, channels: null }, US).windowSteps.engineSpeedRpm;
    expect(steps('time')).toEqual([3000, 3999, 5000, 6001]);
    expect(steps('speed')).toContain(3999);
    expect(steps('speed').at(-1)).toBe(6001);
  });

  test('what is not understood is shown when it is asked for', () => {
    const { channels } = recordedIn(US, { over: 'time' });
    const knock = channels.find(({ name }) => name === 'Knock, left')!;
    expect(knock).toMatchObject({ understood: false, shown: false });
    const { chart } = recordedIn(US, { over: 'time', channels: [knock.id] });
    expect(chart!.panels.map((panel) => panel.title)).toEqual(['Knock, left']);
  });

  test('a figure at the last row has its mark where the drawn line ends', () => {
    const { chart } = page(US);
    expect(chart!.xRange).toEqual([4000, 4100]);
    expect(chart!.panels[0]!.marks[0]).toMatchObject({ x: 4100, y: 205, stillClimbing: true });
  });

  test('the cursor has every node, an empty one without a figure', () => {
    expect(page(US).cursor).toMatchObject({ at: [4000, 4050, 4100], start: 2 });
    expect(page(US).cursor!.rows[0]!.cells[0]).toEqual(['200.0', '', '205.0']);
  });

  test('channels tell how much of them was read', () => {
    const torque = page(SI).channels[2]!;
    expect(torque).toMatchObject({ meaning: 'Torque', count: 3 });
    expect(plain(`${torque.low} ${torque.high}`)).toBe('300,0 N·m 450,0 N·m');
    expect(page(SI).channels[4]!.meaning).toBe('not understood, kept');
  });

  test('says nothing that is not there', () => {
    for (const options of [US, SI]) {
      const { texts, numbers } = leavesOf(page(options));
      expect(texts.filter((text) => /undefined|NaN|Infinity|\bnull\b/.test(text))).toEqual([]);
      expect(numbers.every(Number.isFinite)).toBe(true);
    }
  });

  test('how the pull is read stands in the basis and the conditions, and as numbers for a form', () => {
    const plainPage = page(US);
    expect(plainPage.treatment).toEqual({ lagsS: {}, windowRpm: null, binWidthRpm: null, addInertia: false });
    expect(plainPage.channelMeanings.slice(0, 2)).toEqual([
      { id: 'time', label: 'Time' },
      { id: 'engineSpeed', label: 'Engine speed' },
    ]);
    expect(plainPage.conditions.map((one) => one.label)).not.toContain('Accepted window');
    const treatment: Pull['treatment'] = {
      lags: { torque: 0.25 },
      windowRpm: [4000, 6000],
      binWidthRpm: 50,
      addInertia: true,
    };
    const remarks = ['window-set', 'bin-width-set', 'lag-set', 'inertia-added'].map((code) => ({
      code,
      level: 'note' as const,
      message: code,
    }));
    const shown = pullPage(
      {
        pull: { ...pull, treatment },
        view: { ...view, recipe: recipeFor({ treatment }, view.recipe), remarks },
        combination: null,
        file: null,
        trials: [],
        cell: null,
      },
      SI,
    );
    expect(shown.treatment).toEqual({
      lagsS: { torque: 0.25 },
      windowRpm: [4000, 6000],
      binWidthRpm: 50,
      addInertia: true,
    });
    expect(plain(shown.basis)).toContain(
      'window set by hand · bins set by hand · lags taken out · inertia torque added',
    );
    const valueUnder = (label: string) =>
      plain(shown.conditions.find((one) => one.label === label)?.value ?? '').replace(/\u202f/g, ' ');
    expect(valueUnder('Accepted window')).toBe('set by hand, 4 000 to 6 000 rpm');
    expect(valueUnder('Bins')).toBe('set by hand, 50 rpm');
    expect(valueUnder('Lags')).toBe('Torque read 0,25 s earlier');
    expect(valueUnder('Inertia torque')).toMatch(/^not added back in the file, added here/);
  });

  test('remarks and cuts stand in the units and with the decimal mark of the page', () => {
    // 10.1 N·m x 0.73756 lbf·ft and 3500 rpm (NIST SP 811, from memory).
    const hides = remark(
      'note',
      'inertia-left-out',
      said`The sweep hides ${figureOf(10.1, 'torque')} below ${figureOf(3500, 'engineSpeed')}.`,
    );
    const cut = said`row 1: throttle at ${percentFigure(0.105, 1)}`;
    const cuts = [{ fromRow: 0, toRow: 0, reason: cut.text, parts: cut.parts }];
    const spoken = { ...view, remarks: [hides], window: { ...view.window!, cuts } };
    const shownIn = (options: ViewOptions) => {
      const of = { pull, view: spoken, combination: null, file: null, trials: [], cell: null };
      const { remarks, cuts: texts } = pullPage(of, options);
      return [...remarks.map(({ text }) => text), ...texts].map((text) =>
        text.replace(/[\u00a0\u202f]/g, ' '),
      );
    };
    expect(shownIn({ units: 'us', decimalMark: ',' })).toEqual([
      'The sweep hides 7,4 lb-ft below 3 500 rpm.',
      'Row 1: throttle at 10,5 %',
    ]);
    expect(shownIn({ units: 'si', decimalMark: '.' })).toEqual([
      'The sweep hides 10.1 N·m below 3,500 rpm.',
      'Row 1: throttle at 10.5 %',
    ]);
  });

  test('a pull without curve or weather is told so', () => {
    const bare: PullView = {
      ...view,
      curve: null,
      window: null,
      peakPower: null,
      peakTorque: null,
      spikes: [],
    };
    const shown = pullPage(
      {
        pull: { ...pull, weather: null, channels: [] },
        view: bare,
        combination: null,
        file: null,
        trials: [],
        cell: null,
      },
      US,
    );
    expect(shown.headline[0]!.text).toBe('No power or torque could be taken from this pull.');
    expect(shown.chart).toBeNull();
    expect(shown.recordedRows).toBe(0);
    const look = { over: 'time', range: null, channels: null } as const;
    expect(recordedPage({ ...pull, channels: [] }, bare, look, US)).toMatchObject({
      chart: null,
      cursor: null,
    });
    expect(shown.chips.map((chip) => chip.text)).toEqual([
      'No curve',
      'No combination',
      'No weather',
      'Invented data',
    ]);
    expect(shown.conditions[0]).toEqual({ label: 'Air', value: 'not noted' });
  });
});

describe('a row of the list', () => {
  test('a remembered summary shows its figures and where they come from', () => {
    const summary: Pull = {
      ...pull,
      form: 'summary',
      channels: [],
      weather: null,
      origin: 'remembered',
      carried: { standard: 'unknown', factor: null },
      summary: { peakPower: toInside(301, 'hp'), peakPowerRpm: null, peakTorque: null, peakTorqueRpm: null },
    };
    const correction: PullView['correction'] = {
      asked: 'sae-j1349',
      standard: 'unknown',
      factor: null,
      reached: false,
    };
    const row = pullRow(
      {
        pull: summary,
        view: { correction, windowRpm: null, hasCurve: false, peakPower: null, peakTorque: null },
      },
      null,
      US,
    );
    expect(plain(row.peakPower)).toBe('301 hp');
    expect(row.peakTorque).toBe('');
    expect(row.standard).toBe('as recorded');
    expect(row.chips.map((chip) => chip.text)).toEqual([
      'Summary, remembered',
      'No combination',
      'Invented data',
    ]);
  });
});
