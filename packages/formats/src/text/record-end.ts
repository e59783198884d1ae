/** A quoted field that runs on longer than this is a stray quote (an inch mark), not a field. */
const LONGEST_QUOTED_LINES = 60;

const LINE_FEED = 10;
const RETURN = 13;
const BLANK = 32;
const QUOTE = 34;

/** One record of delimited text: from where it was looked for to `end`; the next one starts at `next`. */
export interface RecordPlace {
  end: number;
  next: number;
  /** Its fields in quotes are well formed; elsewhere a quote is a sign like any other. */
  quoted: boolean;
  /** Lines it runs over. */
  lines: number;
}

/**
 * Where the record that starts at `from` ends. Lines end in `\n`, `\r\n` or `\r`; a quoted field may hold delimiters and
 * line breaks. `null`: its end lies beyond `to`, and more bytes may come (`isLast` says that none do).
 */
export function recordAt(
  bytes: Uint8Array,
  from: number,
  to: number,
  delimiter: number,
  isLast: boolean,
): RecordPlace | null {
  let end = from;
  let quotes = false;
  for (; end < to; end++) {
    const byte = bytes[end] as number;
    if (byte === LINE_FEED || byte === RETURN) break;
    if (byte === QUOTE) quotes = true;
  }
  if (quotes) {
    const record = quotedRecordAt(bytes, from, to, delimiter, isLast);
    if (record !== 'stray') return record;
  }
  const next = afterLineEnd(bytes, end, to, isLast);
  return next === null ? null : { end, next, quoted: false, lines: 1 };
}

/** Start of the next line; `null`: more bytes must say. */
function afterLineEnd(bytes: Uint8Array, end: number, to: number, isLast: boolean): number | null {
  if (end >= to) return isLast ? to : null;
  if (bytes[end] === LINE_FEED) return end + 1;
  if (end + 1 >= to) return isLast ? to : null;
  return bytes[end + 1] === LINE_FEED ? end + 2 : end + 1;
}

/** `'stray'`: a quote in it opens no field, or the field it opens is never closed. */
function quotedRecordAt(
  bytes: Uint8Array,
  from: number,
  to: number,
  delimiter: number,
  isLast: boolean,
): RecordPlace | null | 'stray' {
  let inside = false;
  let atFieldStart = true;
  let lines = 1;
  for (let at = from; at < to; at++) {
    const byte = bytes[at] as number;
    if (byte === LINE_FEED || byte === RETURN) {
      const next = afterLineEnd(bytes, at, to, isLast);
      if (next === null) return null;
      if (!inside) return { end: at, next, quoted: true, lines };
      if (lines > LONGEST_QUOTED_LINES) return 'stray';
      lines += 1;
      at = next - 1;
    } else if (inside) {
      if (byte !== QUOTE) continue;
      if (at + 1 >= to && !isLast) return null;
      if (at + 1 < to && bytes[at + 1] === QUOTE) at += 1;
      else {
        const ends = endsField(bytes, at + 1, to, delimiter);
        if (ends === null && !isLast) return null;
        if (ends === false) return 'stray';
        inside = false;
      }
    } else if (byte === QUOTE) {
      if (!atFieldStart) return 'stray';
      inside = true;
      atFieldStart = false;
    } else if (byte === delimiter) atFieldStart = true;
    else if (byte !== BLANK) atFieldStart = false;
  }
  if (!isLast) return null;
  return inside ? 'stray' : { end: to, next: to, quoted: true, lines };
}

/** Whether the field closed before `from` ends there; `null`: the bytes end first. */
function endsField(bytes: Uint8Array, from: number, to: number, delimiter: number): boolean | null {
  let at = from;
  while (delimiter !== BLANK && at < to && bytes[at] === BLANK) at += 1;
  if (at >= to) return null;
  const byte = bytes[at];
  return byte === delimiter || byte === LINE_FEED || byte === RETURN;
}
