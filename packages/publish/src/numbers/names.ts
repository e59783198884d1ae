/** Name of the file that a PDF carries its numbers in. */
export const NUMBERS_FILE = 'numbers.json';
/** Keyword of a PNG's text, id of an SVG's metadata and of an HTML file's data block. */
export const NUMBERS_NAME = 'published-numbers';
