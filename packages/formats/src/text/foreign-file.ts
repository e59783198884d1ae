/** Files that are no text, by their first bytes, with what to do about each. */
const SIGNATURES: readonly { bytes: readonly number[]; what: string; advice: string }[] = [
  {
    bytes: [0x50, 0x4b, 0x03, 0x04],
    what: 'a spreadsheet in its own format, or a packed archive',
    advice: 'Save the sheet as CSV, or unpack the archive, and give the text file.',
  },
  {
    bytes: [0xd0, 0xcf, 0x11, 0xe0],
    what: 'an old spreadsheet or document in its own format',
    advice: 'Save the sheet as CSV and give that file.',
  },
  {
    bytes: [0x25, 0x50, 0x44, 0x46],
    what: 'a PDF',
    advice: 'Export the run as delimited text, or enter the printed peaks as a summary.',
  },
  {
    bytes: [0x89, 0x50, 0x4e, 0x47],
    what: 'a picture (PNG)',
    advice: 'Give the logged text file, or enter the peaks as a summary.',
  },
  {
    bytes: [0xff, 0xd8, 0xff],
    what: 'a picture (JPEG)',
    advice: 'Give the logged text file, or enter the peaks as a summary.',
  },
  {
    bytes: [0x47, 0x49, 0x46, 0x38],
    what: 'a picture (GIF)',
    advice: 'Give the logged text file, or enter the peaks as a summary.',
  },
  { bytes: [0x1f, 0x8b], what: 'a gzip archive', advice: 'Unpack it and give the text file inside.' },
  {
    bytes: [0x53, 0x51, 0x4c, 0x69, 0x74, 0x65, 0x20, 0x66],
    what: 'a database (SQLite)',
    advice: 'If it is a book, open it as a book; otherwise export the run as delimited text.',
  },
];

/** What a file is when its first bytes give it away as no text; `null`: they do not. */
export function foreignFile(bytes: Uint8Array): { what: string; advice: string } | null {
  for (const { bytes: signature, what, advice } of SIGNATURES) {
    if (signature.every((byte, position) => bytes[position] === byte)) return { what, advice };
  }
  return null;
}

/** Text that is no table, by how it begins. */
const BEGINNINGS: readonly { begins: RegExp; what: string; advice: string }[] = [
  {
    begins: /^(<!doctype|<html|<head|<body|<table)\b/i,
    what: 'a web page (HTML)',
    advice: 'Open it, and save or copy its table as CSV (comma, semicolon or tab).',
  },
  {
    begins: /^<(\?xml|!--|svg\b)/i,
    what: 'XML',
    advice: 'Export the run as CSV (comma, semicolon or tab).',
  },
  {
    begins: /^(\{\s*("|\})|\[\s*[[{])/,
    what: 'JSON',
    advice: 'Export the run as CSV (comma, semicolon or tab).',
  },
  {
    begins: /^\{\\rtf/,
    what: 'a document (RTF)',
    advice: 'Save it as plain text with its columns parted by tabs, and give that file.',
  },
];

const LOOKED_AT = 200;

/** What a file of text is when it begins as no table of readings does; `null`: it may be one. */
export function foreignText(bytes: Uint8Array): { what: string; advice: string } | null {
  const start = new TextDecoder().decode(bytes.subarray(0, LOOKED_AT)).replaceAll('\0', '').trimStart();
  return BEGINNINGS.find(({ begins }) => begins.test(start)) ?? null;
}
