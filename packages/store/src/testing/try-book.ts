/**
 * Run as a program of its own, for a test that needs another user: opens the book of the folder given, adds an engine, and
 * prints what became of it as JSON.
 */
import { openBook } from '../open-book.ts';

const [folder, create] = process.argv.slice(2);
try {
  const book = await openBook(folder!, { create: create === 'create' ? { name: 'New' } : null });
  await book.addEngine({ id: 'added', name: '', buildRevision: '', notes: '', invented: true });
  await book.close();
  console.log(JSON.stringify({ code: 'none', message: '' }));
} catch (failure) {
  const { code, message } = failure as { code?: string; message: string };
  console.log(JSON.stringify({ code, message }));
}
