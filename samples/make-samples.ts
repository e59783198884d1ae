/**
 * Makes the invented sample files: every layout of text that the importer reads, small and from one seed.
 * `npx tsx samples/make-samples.ts` writes them; a test checks that what is committed is what this makes.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { mapSamples } from './make-maps.ts';
import { matchSamples } from './make-matches.ts';
import { reachSamples } from './make-reaches.ts';

export interface Sample {
  /** Below `samples/`. */
  path: string;
  /** One line for the list in README.md. */
  about: string;
  bytes: Uint8Array;
}

/** One invented pull: a rising sweep of a mild supercharged engine. SI, but kW and kPa. */
interface InventedRow {
  time: number;
  speed: number;
  torque: number;
  power: number;
  boost: number;
  oil: number;
  lambda: number;
}

const SEED = 20240503;

/** Uniform numbers in 0..1 from a seed (mulberry32). */
function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

function inventedPull(seed: number, step: number, rows: number, gain = 1): InventedRow[] {
  const random = seeded(seed);
  return Array.from({ length: rows }, (_, row) => {
    const speed = 2000 + row * step;
    const noise = 1 + 0.004 * (random() - 0.5);
    const torque = Number((gain * 340 * (1 - ((speed - 4300) / 6200) ** 2) * noise).toFixed(1));
    return {
      time: Number((row * 0.1).toFixed(1)),
      speed,
      torque,
      power: Number(((torque * speed * Math.PI) / 30_000).toFixed(2)),
      boost: Number((52 * (speed / 6500) ** 2).toFixed(1)),
      oil: Number((84 + row * 0.15).toFixed(1)),
      lambda: Number((0.84 + 0.01 * random()).toFixed(3)),
    };
  });
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const marked = (text: string): Uint8Array => utf8(`\uFEFF${text}`);

function utf16(text: string, bigEndian: boolean): Uint8Array {
  const bytes = new Uint8Array(2 * text.length);
  const view = new DataView(bytes.buffer);
  for (let at = 0; at < text.length; at++) view.setUint16(2 * at, text.charCodeAt(at), !bigEndian);
  return bytes;
}

/** Text of code points below 256, one byte each. */
const latin1 = (text: string): Uint8Array => Uint8Array.from(text, (character) => character.charCodeAt(0));

const lines = (rows: readonly string[], end = '\n'): string => rows.map((row) => row + end).join('');
const comma = (value: number | string): string => String(value).replace('.', ',');
const fixed = (value: number, decimals: number): string => value.toFixed(decimals);

const LB_FT = 1.3558179483314004;
const HP_KW = 0.7456998715822702;
const PSI_KPA = 6.894757293168361;

/** What loggers write for a reading that is not there; '' is an empty cell. */
const MISSING = ['', '-', '--', 'n/a', 'NaN', 'null', '?', '#N/A', '*', 'none', '---'];

/** `11:59:57.0 AM` and on, past noon. */
function noon(seconds: number): string {
  const past = seconds - 3;
  const [hour, minute, rest] = past < 0 ? [11, 59, 60 + past] : [12, 0, past];
  return `${hour}:${String(minute).padStart(2, '0')}:${rest.toFixed(1).padStart(4, '0')} ${past < 0 ? 'AM' : 'PM'}`;
}

/** `12:59:57.0` and on, past one o'clock. */
function turn(seconds: number): string {
  const past = seconds - 3;
  const [hour, minute, rest] = past < 0 ? [12, 59, 60 + past] : [1, 0, past];
  return `${hour}:${String(minute).padStart(2, '0')}:${rest.toFixed(1).padStart(4, '0')}`;
}

/** A step test at 10 Hz: a second from speed to speed, then four on each, its first half second a fifth low. */
function heldSpeeds(points: readonly InventedRow[]): Pick<InventedRow, 'time' | 'speed' | 'torque' | 'power'>[] {
  const rows: Pick<InventedRow, 'time' | 'speed' | 'torque' | 'power'>[] = [];
  let before = 1500;
  for (const { speed, torque } of points) {
    for (let step = 0; step < 50; step++) {
      const isHeld = step >= 10;
      const now = isHeld ? speed + (step % 3) - 1 : Math.round(before + ((speed - before) * step) / 10);
      const load = Number((isHeld ? (step < 15 ? 0.8 : 1) * torque : 100).toFixed(1));
      const power = Number(((load * now * Math.PI) / 30_000).toFixed(2));
      rows.push({ time: rows.length / 10, speed: now, torque: load, power });
    }
    before = speed;
  }
  return rows;
}

export function makeSamples(): Sample[] {
  const pull = inventedPull(SEED, 250, 19);
  const log = inventedPull(SEED + 1, 50, 91);
  const points = inventedPull(SEED + 2, 500, 10);
  const second = inventedPull(SEED + 3, 250, 19, 1.03);
  const sample = (path: string, about: string, bytes: Uint8Array): Sample => ({ path, about, bytes });
  const plain = (rows: readonly InventedRow[], separator = ','): string[] =>
    rows.map((row) => [row.speed, row.torque, row.power, row.boost].join(separator));
  const us = (row: InventedRow): string[] => [
    fixed(row.speed, 0),
    fixed(row.torque / LB_FT, 1),
    fixed(row.power / HP_KW, 1),
  ];
  const clock = (row: InventedRow): string => `14:22:${(57 + row.time).toFixed(1).padStart(4, '0')}`;
  const wrapped = (row: InventedRow): string => (row.time < 3 ? clock(row) : `14:23:${fixed(row.time - 3, 1).padStart(4, '0')}`);
  const random = seeded(SEED + 4);

  return [
    sample('comma/units-in-brackets.csv', 'comma, decimal point, units in square brackets', utf8(lines(['Engine speed [rpm],Torque [Nm],Power [kW],Boost [kPa]', ...plain(pull)]))),
    sample('comma/us-units.csv', 'comma, UTF-8 with byte order mark, US units in round brackets, CRLF', marked(lines(['RPM,Torque (lb-ft),Power (hp),Boost (psig),Oil Temp (°F)', ...pull.map((row) => [...us(row), fixed(row.boost / PSI_KPA, 2), fixed(row.oil * 1.8 + 32, 0)].join(','))], '\r\n'))),
    sample('comma/no-units.csv', 'no units: torque and power told by power = torque × speed (lb-ft and hp)', utf8(lines(['rpm,torque,power', ...pull.map((row) => { const torque = Number(fixed(row.torque / LB_FT, 1)); return [row.speed, fixed(torque, 1), fixed((torque * row.speed) / 5252.113122, 1)].join(','); })]))),
    sample('comma/no-header.csv', 'no header: speed by range, torque and power by power = torque × speed', utf8(lines(pull.map((row) => [row.speed, row.torque, row.power].join(','))))),
    sample('comma/several-pulls.csv', 'a column of names parts the rows into two pulls', utf8(lines(['run,rpm,torque_Nm,power_kW,boost_kPa', ...plain(pull).map((row) => `base cam,${row}`), ...plain(second).map((row) => `other cam,${row}`)]))),
    sample('comma/report-like.csv', 'lines before the header, the header again half way, missing values, an empty last column, Average and Maximum at the end', utf8(lines(['Invented pull report', 'Barometer,98.2 kPa', '', 'Speed (rpm),Torque (N·m),Power (kW),Boost (kPa),', ...plain(pull.slice(0, 9)).map((row) => `${row},`), 'Speed (rpm),Torque (N·m),Power (kW),Boost (kPa),', ...plain(pull.slice(9)).map((row, at) => `${at === 2 ? row.replace(/,[^,]*$/, ',n/a') : row},`), 'Average,310.1,140.2,25.0,', 'Maximum,341.0,191.9,48.9,']))),
    sample('semicolon-decimal-comma/german-names.csv', 'semicolon, decimal comma, German names', utf8(lines(['Drehzahl [U/min];Drehmoment [Nm];Leistung [kW];Ladedruck [kPa];Öltemperatur [°C];Lambda', ...pull.map((row) => [row.speed, row.torque, row.power, row.boost, row.oil, row.lambda].map(comma).join(';'))], '\r\n'))),
    sample('tab/lines-before-header.txt', 'tab, three lines before the header', utf8(lines(['Cell\t1', 'Date\t2024-05-03', 'Note\tinvented', 'Engine speed, rpm\tTorque, N·m\tPower, kW\tBoost, kPa', ...plain(pull, '\t')]))),
    sample('utf-16/little-endian.csv', 'UTF-16 little endian with byte order mark', utf16(`\uFEFF${lines(['Engine speed [r/min];Torque [N·m];Boost [kPa]', ...pull.map((row) => [row.speed, row.torque, row.boost].map(comma).join(';'))], '\r\n')}`, false)),
    sample('utf-16/big-endian.csv', 'UTF-16 big endian with byte order mark', utf16(`\uFEFF${lines(['Engine speed [r/min],Torque [N·m],Power [kW],Boost [kPa]', ...plain(pull)])}`, true)),
    sample('utf-16/no-mark.csv', 'UTF-16 little endian without byte order mark', utf16(lines(['Engine speed [rpm],Torque [Nm],Power [kW],Boost [kPa]', ...plain(pull)]), false)),
    sample('latin-1/french-names.csv', 'Latin-1, French names', latin1(lines(['Régime (tr/min);Couple (N·m);Puissance (kW);Température huile (°C)', ...pull.map((row) => [row.speed, row.torque, row.power, row.oil].map(comma).join(';'))]))),
    sample('units-row/units-under-names.csv', 'a row of units under the names', utf8(lines(['Time,Engine speed,Torque,Power,Manifold pressure', '[s],[rpm],[N·m],[kW],[kPa]', ...log.map((row) => [row.time, row.speed, row.torque, row.power, fixed(98.2 + row.boost, 1)].join(','))]))),
    sample('quoted-line-breaks/header-over-two-lines.csv', 'line breaks inside quoted names, CRLF', utf8(`"Speed \r\n(RPM)","Torque\r\n(Nm)","Power\r\n(kW)","Boost\r\n(kPa)"\r\n${lines(plain(pull), '\r\n')}`)),
    sample('time-based/seconds.csv', 'a log over time in seconds', utf8(lines(['time_s,engine_speed_rpm,torque_Nm,boost_kPa,oil_temp_C', ...log.map((row) => [row.time, row.speed, row.torque, row.boost, row.oil].join(','))]))),
    sample('time-based/milliseconds.csv', 'a log over time in milliseconds', utf8(lines(['Time [ms],Engine speed [rpm],Torque [Nm]', ...log.map((row) => [fixed(row.time * 1000, 0), row.speed, row.torque].join(','))]))),
    sample('time-based/clock.csv', 'a log over clock time that passes a full minute', utf8(lines(['Time;Engine speed [rpm];Torque [Nm]', ...log.map((row) => [wrapped(row), row.speed, comma(row.torque)].join(';'))]))),
    sample('speed-based/settled-points.csv', 'a step test: one row each 500 r/min', utf8(lines(['Engine speed [rpm],Torque [Nm],Power [kW],Boost [kPa]', ...plain(points)]))),
    sample('speed-based/falling.csv', 'rows from the highest speed down', utf8(lines(['Engine speed [rpm],Torque [Nm],Power [kW],Boost [kPa]', ...plain([...pull].reverse())]))),
    sample('speed-based/observed-and-corrected.csv', 'two torques: the observed one is taken, both at once are refused', utf8(lines(['Engine speed [rpm],Torque [Nm],Torque corrected [Nm]', ...pull.map((row) => [row.speed, row.torque, fixed(row.torque * 1.02, 1)].join(','))]))),
    sample('spaces/aligned.txt', 'columns parted by runs of spaces', utf8(lines(['  RPM    Torque [Nm]   Power [kW]', ...pull.map((row) => fixed(row.speed, 0).padStart(5) + fixed(row.torque, 1).padStart(14) + fixed(row.power, 2).padStart(13))]))),
    sample('bar/pull.txt', 'columns parted by upright bars', utf8(lines(['Engine speed [rpm]|Torque [Nm]|Power [kW]|Boost [kPa]', ...plain(pull, '|')]))),
    sample('gaps/missing-marks.csv', 'every way to write that a reading is missing, and words in a column of numbers', utf8(lines(['Engine speed [rpm],Torque [Nm],Power [kW],Boost [kPa],Lambda', ...pull.map((row, at) => [row.speed, row.torque, row.power, MISSING[at] ?? row.boost, at === 4 ? 'warming up' : at === 5 ? 'over range' : row.lambda].join(','))]))),
    sample('gaps/empty-columns.csv', 'an empty column without a name, one with a name, and delimiters at the end of every row', utf8(lines(['Engine speed [rpm],,Torque [Nm],Spare,Power [kW],,', ...pull.map((row) => `${row.speed},,${row.torque},,${row.power},,`)]))),
    sample('gaps/summary-rows-at-end.csv', 'semicolon; Minimum, Maximum, Mean and a line of words after the readings', utf8(lines(['Drehzahl [1/min];Drehmoment [Nm];Leistung [kW]', ...pull.map((row) => [row.speed, row.torque, row.power].map(comma).join(';')), 'Minimum;293,1;61,4', 'Maximum;342,0;202,4', 'Mean;325,6;145,8', 'End of the record;;']))),
    sample('gaps/repeated-header.csv', 'the header and its row of units again every six rows', utf8(lines(pull.flatMap((row, at) => [...(at % 6 === 0 ? ['Speed,Torque,Power', 'rpm,Nm,kW'] : []), `${row.speed},${row.torque},${row.power}`])))),
    sample('gaps/rows-twice.csv', 'every row twice, as a logger does that writes faster than it reads', utf8(lines(['Time [s],Engine speed [rpm],Torque [Nm],Power [kW]', ...log.flatMap((row) => { const one = [row.time, row.speed, row.torque, row.power].join(','); return [one, one]; })]))),
    sample('several-probes/one-name-twice.csv', 'two columns of one name, and eight exhaust probes', utf8(lines([['rpm', 'Torque [Nm]', 'Lambda', 'Lambda', ...Array.from({ length: 8 }, (_, at) => `EGT ${at + 1} [°C]`)].join(','), ...pull.map((row) => [row.speed, row.torque, row.lambda, fixed(row.lambda + 0.02, 3), ...Array.from({ length: 8 }, (_, at) => 700 + 3 * at + row.speed / 100)].join(','))]))),
    sample('several-probes/volume-flows.csv', 'fuel in cm³/min and air in cfm: volumes, no masses', utf8(lines(['rpm,Torque [Nm],Fuel flow [cc/min],Air flow [cfm]', ...pull.map((row) => [row.speed, row.torque, fixed(row.power * 6.5, 0), fixed(row.power * 2.9, 0)].join(','))]))),
    sample('time-based/clock-12-hours.csv', 'a log over clock time of 12 hours that passes noon', utf8(lines(['Time,Engine speed [rpm],Torque [Nm]', ...log.map((row) => `${noon(row.time)},${row.speed},${row.torque}`)]))),
    sample('time-based/minutes-without-unit.csv', 'a time that names no unit: minutes, told by how fast the engine sweeps', utf8(lines(['Time,rpm,Torque [Nm]', ...log.map((row) => [fixed(row.time / 60, 6), row.speed, row.torque].join(','))]))),
    sample('time-based/held-speeds.csv', 'a step test logged throughout: hold, step, hold', utf8(lines(['Time [s],Engine speed [rpm],Torque [Nm],Power [kW]', ...heldSpeeds(points).map((row) => [fixed(row.time, 1), row.speed, row.torque, row.power].join(','))]))),
    sample('units-row/columns-in-another-order.csv', 'power first and engine speed last, units in a row of their own in round brackets', utf8(lines(['Power,Boost,Torque,Speed', '(kW),(kPa),(N·m),(rpm)', ...pull.map((row) => [row.power, row.boost, row.torque, row.speed].join(','))]))),
    sample('time-based/time-starts-again.csv', 'two logs one after the other, without a header between', utf8(lines(['Time [s],Engine speed [rpm],Torque [Nm]', ...[...log, ...log].map((row) => [row.time, row.speed, row.torque].join(','))]))),
    sample('time-based/clock-12-hours-unsaid.csv', 'a clock of 12 hours without am or pm that turns from 12:59 to 1:00', utf8(lines(['Time,Engine speed [rpm],Torque [Nm]', ...log.map((row) => `${turn(row.time)},${row.speed},${row.torque}`)]))),
    sample('spaces/gap-in-a-row.txt', 'columns parted by blanks, and a row in which one reading is missing', utf8(lines(['rpm Torque[Nm] Boost[kPa] Power[kW]', ...pull.map((row, at) => [row.speed, row.torque, ...(at === 4 ? [] : [row.boost]), row.power].join('  '))]))),
    sample('gaps/rows-named-by-words.csv', 'rows below the readings that begin with words of their own', utf8(lines(['Time [s],Engine speed [rpm],Torque [Nm]', ...log.map((row) => [row.time, row.speed, row.torque].join(',')), 'Highest,6500,342.0', 'Std deviation,1300,14.1']))),
    sample('semicolon-decimal-comma/tens-of-newton-metres.csv', 'torque in daN·m, thousands parted by a raised comma', utf8(lines(['Régime (tr/min);Couple (daNm);Puissance (kW)', ...pull.map((row) => [`${Math.floor(row.speed / 1000)}\u2019${fixed(row.speed % 1000, 0).padStart(3, '0')}`, comma(Number(fixed(row.torque / 10, 2))), comma(row.power)].join(';'))]))),
    sample('comma/temperatures-without-units.csv', 'temperatures in °C beside lb-ft and hp, without a unit', utf8(lines(['rpm,Torque [lb-ft],Power [hp],Air temp,Oil temp,Coolant temp', ...pull.map((row, at) => [row.speed, fixed(row.torque / 1.3558179483, 1), fixed(row.power / 0.74569987, 1), 27, fixed(row.oil, 0), 80 + Math.floor(at / 6)].join(','))]))),
    sample('invalid/web-page.csv', 'refused: a web page (HTML)', utf8('<!DOCTYPE html>\n<p>404, 1, 2</p>\n<pre>\n2000,300\n2100,305\n</pre>\n')),
    sample('invalid/json.csv', 'refused: JSON', utf8('[\n[2000, 300],\n[2100, 305]\n]\n')),
    sample('invalid/decimal-comma-between-commas.csv', 'refused: the comma parts columns and stands in numbers', utf8(lines(['rpm,Torque [Nm],Power [kW]', ...pull.map((row) => [row.speed, comma(Number(fixed(row.torque, 0)) + 0.5), comma(Number(fixed(row.power, 0)) + 0.5)].join(','))]))),
    sample('invalid/on-its-side.csv', 'refused: a channel a row', utf8(lines([['rpm', ...pull.map((row) => row.speed)].join(','), ['Torque [Nm]', ...pull.map((row) => row.torque)].join(','), ['Power [kW]', ...pull.map((row) => row.power)].join(',')]))),
    sample('invalid/thousands-read-as-decimals.csv', 'refused: 2.000 r/min, whose point stands between thousands', utf8(lines(['Drehzahl [1/min];Drehmoment [Nm]', ...pull.map((row) => `${Math.floor(row.speed / 1000)}.${fixed(row.speed % 1000, 0).padStart(3, '0')};${fixed(row.torque, 0)}`)]))),
    sample('invalid/empty.csv', 'refused: no bytes', new Uint8Array()),
    sample('invalid/binary.csv', 'refused: bytes that are no text', Uint8Array.from({ length: 512 }, () => Math.floor(256 * random()))),
    sample('invalid/spreadsheet.csv', 'refused: begins as a spreadsheet in its own format does', Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0, 6, 0, 8, 0, 0, 0, 33, 0, 98, 121])),
    sample('invalid/header-only.csv', 'refused: no readings', utf8('Engine speed [rpm],Torque [Nm],Power [kW]\n')),
    sample('invalid/one-row.csv', 'refused: one row is not a pull', utf8('Engine speed [rpm],Torque [Nm],Power [kW]\n5200,331.2,180.4\n')),
    sample('invalid/no-speed.csv', 'refused: no engine speed', utf8(lines(['Torque [Nm],Oil temp [°C]', ...pull.map((row) => [row.torque, row.oil].join(','))]))),
    sample('invalid/absurd-speed.csv', 'refused: an engine speed above 30,000 r/min', utf8(lines(['Engine speed [rpm],Torque [Nm]', ...pull.map((row, at) => `${at === 6 ? 350_000 : row.speed},${row.torque}`)]))),
    sample('invalid/absurd-torque.csv', 'refused: a torque above 20 kN·m', utf8(lines(['Engine speed [rpm],Torque [Nm]', ...pull.map((row, at) => `${row.speed},${at === 3 ? 9.9e6 : row.torque}`)]))),
    sample('invalid/one-column.csv', 'refused: one column only', utf8(lines(['Torque [Nm]', ...pull.map((row) => String(row.torque))]))),
    sample('invalid/words-only.csv', 'refused: no row of numbers', utf8(lines(['Engine,Cell,Note', 'straight six,Cell 2,belt dusty', 'straight six,Cell 2,belt changed']))),
    sample('invalid/speed-all-missing.csv', 'refused: an engine speed without a reading', utf8(lines(['Engine speed [rpm],Torque [Nm]', ...pull.map((row) => `n/a,${row.torque}`)]))),
    sample('invalid/torque-in-millimetres.csv', 'refused: torque in N·mm under a header that says N·m', utf8(lines(['Engine speed [rpm],Torque [Nm]', ...pull.map((row) => `${row.speed},${row.torque * 1000}`)]))),
    ...combinationSamples().map(([path, about, text]) => sample(`combinations/${path}`, about, utf8(text))),
    ...trialSamples().map(([path, about, text]) => sample(`a-trial/${path}`, about, utf8(text))),
    ...mapSamples(),
    ...matchSamples(),
    ...reachSamples(),
  ]; // prettier-ignore
}

const FLOW_POINTS = 'lift mm, flow L/s\n2, 24\n4, 48\n6, 70\n8, 88\n10, 100\n12, 108\n';

const CARD_AND_FLOW = `schemaVersion: 1
name: Straight six, card cam
shortBlock:
  cylinders: 6
  bore: { value: 96 mm, origin: measured }
  stroke: 88 mm
heads:
  valvesPerCylinder: 2
  intakeValveDiameter: 46 mm
  rockerRatio: "1.6"
  flowIntake:
    origin: measured
    testPressure: 28 inH2O
    bore: 96 mm
    entry: yes
    bench: shop bench
    points: |
${FLOW_POINTS.replace(/^(?=.)/gm, '      ')}cam:
  profile: { value: card cam, origin: data sheet }
  durationIntake: { value: 276 deg, origin: data sheet }
  durationExhaust: { value: 282 deg, origin: data sheet }
  durationLift: { value: 0.006 in, origin: data sheet }
  intakeOpens: { value: 32 deg, origin: data sheet }
  intakeCloses: { value: 64 deg, origin: data sheet }
  exhaustOpens: { value: 75 deg, origin: data sheet }
  exhaustCloses: { value: 27 deg, origin: data sheet }
  lobeSeparation: { value: 110 deg, origin: data sheet }
  lobeLiftIntake: { value: 7.1 mm, origin: data sheet }
  lashIntake: 0.3 mm
`;

/** Parts of one per cent between pulls: three of the short runners, three of the long ones. */
const PULL_OFFSETS = { 'short-runners': [0, 1.6, -1.2], 'long-runners': [-0.9, 0.7, 1.4] };

/**
 * Pulls of a trial to walk through, a row each 100 r/min. The long runners give up to 4.5 % near 3,800 r/min and take about
 * as much at the top: a plain curve drawn by hand.
 */
function trialSamples(): [path: string, about: string, text: string][] {
  return Object.entries(PULL_OFFSETS).flatMap(([runners, offsets], build) =>
    offsets.map((offset, pull): [string, string, string] => {
      const random = seeded(SEED + 100 + 10 * build + pull);
      const rows = Array.from({ length: 36 }, (_, row) => {
        const speed = 2500 + 100 * row;
        const gain = build === 0 ? 0 : 0.045 * (1 - ((speed - 3800) / 1900) ** 2);
        const scatter = offset / 1000 + 0.003 * (random() + random() - 1);
        const torque = 372 * (1 - ((speed - 4300) / 6200) ** 2) * (1 + gain) * (1 + scatter);
        const fuel = (torque * speed * Math.PI * 0.285) / 30_000;
        return [
          speed,
          fixed(torque / LB_FT, 1),
          fixed((fuel / 0.45359237) * (1 + 0.006 * (random() - 0.5)), 1),
          fixed(0.874 + 0.008 * random(), 3),
          fixed(184 + pull + row / 12, 0),
          fixed(176 + row / 14, 0),
          fixed(77 + pull / 2 + random() / 2, 1),
        ].join(',');
      });
      const header = 'Engine speed [rpm],Torque [lb-ft],Fuel flow [lb/h],Lambda,Oil temperature [°F],Coolant temperature [°F],Inlet air temperature [°F]';
      return [
        `${runners}-${pull + 1}.csv`,
        `pull ${pull + 1} of 3 with the ${runners.replace('-', ' ')}, a row each 100 r/min`,
        lines([header, ...rows]),
      ];
    }),
  );
}

function combinationSamples(): [path: string, about: string, text: string][] {
  const sheet = (bore: string, more = ''): string => `schemaVersion: 1
name: Straight six, base cam
shortBlock:
  configuration: straight
  cylinders: 6
${bore}  stroke: 88 mm
  rodLength: unknown
  compressionRatio: { value: "9.2:1", origin: data sheet }
cam:
  durationIntake: 248°
  durationExhaust: 252°
  liftIntake: { value: 11.2 mm, origin: measured }
fuel:
  name: pump gasoline
${more}`;
  const bore = '  bore: { value: 96 mm, origin: measured }\n';
  const blower = `supercharger:
  type: centrifugal
  wheelExitDiameter: 110 mm
  stepUp: "3.6"
drive:
  crankPulleyDiameter: 180 mm
  blowerPulleyDiameter: 76 mm
`;
  return [
    ['straight-six.yaml', 'a combination as built, naturally aspirated', sheet(bore)],
    ['straight-six-supercharged.yaml', 'the same with a centrifugal supercharger', sheet(bore, blower).replace('base cam', 'supercharged')],
    ['short-runners.yaml', 'the sheet of the trial to walk through, `a-trial/`', sheet(bore, 'intake:\n  runnerLength: { value: 260 mm, origin: measured }\n').replace('Straight six, base cam', 'Short runners')],
    ['straight-six.json', 'the same sheet as JSON', `${JSON.stringify({ schemaVersion: 1, name: 'Straight six, base cam', shortBlock: { cylinders: 6, bore: '96 mm', stroke: '88 mm' } }, null, 2)}\n`],
    ['missing-bore.yaml', 'legal: the bore is not known, so no displacement', sheet('')],
    ['invalid-wrong-unit.yaml', 'refused: a bore in horsepower', sheet('  bore: 96 hp\n')],
    ['invalid-no-name.yaml', 'refused: no name', sheet(bore).replace(/^name:.*\n/m, '')],
    ['invalid-syntax.yaml', 'refused: a tab at the start of a line', sheet(bore).replace('  stroke', '\tstroke')],
    ['cam-card-and-flow-sheet.yaml', 'a printed cam card with its events, and a flow sheet of the intake', CARD_AND_FLOW],
    ['flow-intake.csv', 'points of a flow sheet, to go with `--flow-intake`', FLOW_POINTS],
    ['invalid-flow-without-pressure.yaml', 'refused: a flow sheet that does not tell its test pressure', CARD_AND_FLOW.replace(/^ +testPressure.*\n/m, '')],
    ['invalid-newer.yaml', 'refused: a schema version that is not known yet', sheet(bore).replace('schemaVersion: 1', 'schemaVersion: 99')],
  ]; // prettier-ignore
}

/** Text of README.md: one line a file. */
export function samplesReadme(samples: readonly Sample[]): string {
  const list = samples.map(({ path, about }) => `- \`${path}\`: ${about}`).join('\n');
  return `# Samples

Small input files by kind. All but \`open-data/\` are invented, made by \`npx tsx samples/make-samples.ts\` from one seed.

${list}
- \`open-data/full-load-curve-1.csv\`, \`open-data/full-load-curve-2.csv\`: two published full-load curves, see
  \`open-data/PROVENANCE.md\`; \`open-data/first-engine.yaml\`, \`open-data/second-engine.yaml\`: sheets to go with them
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const folder = dirname(fileURLToPath(import.meta.url));
  const samples = makeSamples();
  for (const { path, bytes } of samples) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), bytes);
  }
  writeFileSync(join(folder, 'README.md'), samplesReadme(samples));
  process.stdout.write(`${samples.length} samples written\n`);
}
