import { join } from 'node:path';

/** The database of the book in a folder. */
export const databaseFile = (folder: string): string => join(folder, 'book.sqlite');

/** The folder of original bytes in a book's folder. */
export const originalsFolder = (folder: string): string => join(folder, 'originals');
