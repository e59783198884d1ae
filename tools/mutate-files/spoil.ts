import type { Chance } from './chance.ts';

type Spoil = (bytes: Uint8Array, chance: Chance) => Uint8Array;

const ascii = (text: string): Uint8Array => Uint8Array.from(text, (character) => character.charCodeAt(0));

function spliced(bytes: Uint8Array, at: number, removed: number, put: Uint8Array): Uint8Array {
  const spoiled = new Uint8Array(bytes.length - removed + put.length);
  spoiled.set(bytes.subarray(0, at));
  spoiled.set(put, at);
  spoiled.set(bytes.subarray(at + removed), at + put.length);
  return spoiled;
}

const placeIn = (bytes: Uint8Array, chance: Chance) => chance.whole(0, bytes.length);

/** A stretch by chance: where it starts, and its length. */
function stretchOf(bytes: Uint8Array, chance: Chance): [at: number, length: number] {
  const at = placeIn(bytes, chance);
  return [at, chance.whole(0, Math.min(bytes.length - at, chance.oneOf([3, 40, 2000])))];
}

const put =
  (texts: readonly string[]): Spoil =>
  (bytes, chance) =>
    spliced(bytes, placeIn(bytes, chance), 0, ascii(chance.oneOf(texts)));

/** Each line as text changed by itself; read as Latin-1, so that no byte is lost. */
const byLine =
  (change: (lines: string[], chance: Chance) => string[]): Spoil =>
  (bytes, chance) => {
    const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
    return ascii(change(text.split('\n'), chance).join('\n'));
  };

const DELIMITERS = [',', ';', '\t', '|', ' '];

/** Ways in which files come to harm, by name. */
export const SPOILS: Readonly<Record<string, Spoil>> = {
  'byte flipped': (bytes, chance) => {
    const spoiled = bytes.slice();
    for (let time = chance.whole(1, 20); time > 0 && spoiled.length > 0; time--)
      spoiled[chance.whole(0, spoiled.length - 1)]! ^= 1 << chance.whole(0, 7);
    return spoiled;
  },
  'byte put by chance': (bytes, chance) => {
    const spoiled = bytes.slice();
    for (let time = chance.whole(1, 30); time > 0 && spoiled.length > 0; time--)
      spoiled[chance.whole(0, spoiled.length - 1)] = chance.whole(0, 255);
    return spoiled;
  },
  'cut off': (bytes, chance) => bytes.slice(0, placeIn(bytes, chance)),
  'start lost': (bytes, chance) => bytes.slice(placeIn(bytes, chance)),
  'stretch lost': (bytes, chance) => spliced(bytes, ...stretchOf(bytes, chance), new Uint8Array(0)),
  'stretch doubled': (bytes, chance) => {
    const [at, length] = stretchOf(bytes, chance);
    return spliced(bytes, at, 0, bytes.slice(at, at + length));
  },
  'stretch moved': (bytes, chance) => {
    const [at, length] = stretchOf(bytes, chance);
    const rest = spliced(bytes, at, length, new Uint8Array(0));
    return spliced(rest, placeIn(rest, chance), 0, bytes.slice(at, at + length));
  },
  'delimiters swapped': byLine((lines, chance) => {
    const [from, to] = [chance.oneOf(DELIMITERS), chance.oneOf(DELIMITERS)];
    const first = chance.whole(0, lines.length);
    return lines.map((line, at) => (at < first ? line : line.replaceAll(from, to)));
  }),
  'quote put': put(['"', '""', '"""', '"\n', ',"', '";"', "'"]),
  'zeros put': (bytes, chance) =>
    spliced(bytes, placeIn(bytes, chance), 0, new Uint8Array(chance.oneOf([1, 3, 700, 40_000]))),
  'absurd number put': put([
    '1e308',
    '1e999',
    '-1e400',
    '9'.repeat(400),
    '0'.repeat(30),
    '-',
    '1.2.3',
    '0x1F',
    'NaN',
    'Infinity',
    '1e-400',
  ]),
  'long line put': (bytes, chance) =>
    spliced(
      bytes,
      placeIn(bytes, chance),
      0,
      ascii(chance.oneOf(['7', 'x', ',', ' ', '1,']).repeat(chance.whole(1000, 60_000))),
    ),
  'words put': put(['Average', 'Max', '\nEND OF RUN\n', 'err', '#N/A', 'ÿþ', '\r', '\r\r\n', '\v', '\u00a0']),
  'odd letters put': put(['\xc3', '\xe2\x82', '\xf0\x9f\x92', '\xff\xfe', '\xef\xbb\xbf', '\x80\x81']),
  'as UTF-16': (bytes, chance) => {
    const wide = new Uint8Array(2 * bytes.length);
    const high = chance.whole(0, 1);
    for (let at = 0; at < bytes.length; at++) wide[2 * at + high] = bytes[at]!;
    const mark = chance.oneOf([[], high === 0 ? [0xff, 0xfe] : [0xfe, 0xff]]);
    return Uint8Array.from([...mark, ...wide]);
  },
  'header repeated': byLine((lines, chance) => {
    const header = lines[chance.whole(0, Math.min(4, lines.length - 1))]!;
    return lines.toSpliced(chance.whole(0, lines.length), 0, header);
  }),
  'column lost': byLine((lines, chance) => {
    const delimiter = chance.oneOf(DELIMITERS);
    const column = chance.whole(0, 3);
    return lines.map((line) => line.split(delimiter).toSpliced(column, 1).join(delimiter));
  }),
  'lines shuffled': byLine((lines, chance) =>
    lines
      .map((line) => ({ line, at: chance.share() }))
      .sort((a, b) => a.at - b.at)
      .map(({ line }) => line),
  ),
  'line ends changed': byLine((lines, chance) => {
    const first = chance.whole(0, lines.length);
    return [lines.slice(0, first).join('\r'), ...lines.slice(first)];
  }),
};

/** A file spoiled in one to four ways, with their names. */
export function spoiled(bytes: Uint8Array, chance: Chance): { bytes: Uint8Array; ways: string[] } {
  const ways = Array.from({ length: chance.whole(1, 4) }, () => chance.oneOf(Object.keys(SPOILS)));
  return { bytes: ways.reduce((before, way) => SPOILS[way]!(before, chance), bytes), ways };
}
