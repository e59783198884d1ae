import type { Book, LogEntry } from '@pullbook/store';

const ENTRIES_A_PAGE = 500;
/** Older than so many acts nothing is looked up: what was asked then is asked again anyway. */
const MOST_PAGES = 20;

/** For each of these enquiries the entries of the log that came after it was asked, newest first; one too old is not named. */
export async function logSinceAsked(book: Book, ids: readonly string[]): Promise<Map<string, LogEntry[]>> {
  const since = new Map<string, LogEntry[]>();
  const open = new Set(ids.map((id) => `enquiry ${id}`));
  const passed: LogEntry[] = [];
  let before: number | null = Number.MAX_SAFE_INTEGER;
  for (let page = 0; open.size > 0 && before !== null && page < MOST_PAGES; page += 1) {
    const { entries, next } = await book.logPage({ limit: ENTRIES_A_PAGE, before });
    for (const entry of entries) {
      if (entry.act === 'enquiry added' && open.delete(entry.subject))
        since.set(entry.subject.slice('enquiry '.length), [...passed]);
      passed.push(entry);
    }
    before = next;
  }
  return since;
}
