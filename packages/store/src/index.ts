export * from './model.ts';
export { type OpenOptions, openBook } from './open-book.ts';
export { restoreContents } from './restore-contents.ts';
