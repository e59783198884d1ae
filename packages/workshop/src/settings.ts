import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { editDistance } from '@pullbook/formats';
import type { Book, StoredSettings } from '@pullbook/store';
import { FIRST_SETTINGS, SETTING_NAMES, SETTING_READERS, type ShopSettings } from './edge/setting-readers.ts';
import { isMark, type ShopMark } from './mark.ts';

/** The shop's settings as they leave the program: of the mark only what it is, for its bytes are asked for apart. */
export interface SettingsReport extends Omit<ShopSettings, 'mark'> {
  schemaVersion: 1;
  mark: Omit<ShopMark, 'base64'> | null;
  /** What was looked at, for a change that must not overwrite another unseen. */
  stamp: string;
}

/**
 * The settings kept in the book, with the program's own where nothing is kept. What cannot be read (kept by another
 * version) stands as the program's own.
 */
export async function settingsOf(book: Book): Promise<ShopSettings> {
  const stored = await book.settings();
  return Object.fromEntries(
    SETTING_NAMES.map((name) => {
      // The mark was looked at when it was kept and is again before it is drawn: not at every request.
      if (name === 'mark') return [name, isMark(stored.mark) ? stored.mark : null];
      const read = stored[name] === undefined ? null : SETTING_READERS[name](stored[name]);
      return [name, read?.ok ? read.value : FIRST_SETTINGS[name]];
    }),
  ) as unknown as ShopSettings;
}

/** The settings for the edge. */
export async function settingsReport(book: Book): Promise<SettingsReport> {
  // The stamp before the settings: what is written in between makes a change be asked again, never lost.
  const stamp = await book.stamp('settings');
  const { mark, ...plain } = await settingsOf(book);
  if (mark === null) return { schemaVersion: 1, ...plain, mark, stamp };
  const { base64: _, ...about } = mark;
  return { schemaVersion: 1, ...plain, mark: about, stamp };
}

/**
 * Keeps some settings, each as JSON or as a person writes it; the others stay. All of them or none: every one that cannot
 * be has its own remark. `stamp`: of the settings as they were looked at.
 *
 * @example changeSettings(book, { units: 'si', binWidthRpm: '200rpm' })
 */
export async function changeSettings(
  book: Book,
  change: Record<string, unknown>,
  stamp?: string,
): Promise<Result<SettingsReport>> {
  const kept: StoredSettings = {};
  const remarks: Remark[] = [];
  for (const [given, value] of Object.entries(change)) {
    const name = SETTING_NAMES.find((one) => one.toLowerCase() === given.trim().toLowerCase());
    const read = name ? SETTING_READERS[name](value) : unknownSetting(given);
    if (read.ok) kept[name!] = read.value;
    remarks.push(...read.remarks);
  }
  const [first, ...others] = remarks;
  if (first) return refused(first, ...others);
  if (Object.keys(kept).length === 0) {
    return refused(
      remark('refusal', 'nothing-to-set', `No setting was named. There are: ${SETTING_NAMES.join(', ')}.`),
    );
  }
  await book.changeSettings(kept, stamp);
  return accepted(await settingsReport(book));
}

function unknownSetting(given: string): Result<never> {
  const [nearest] = SETTING_NAMES.toSorted(
    (one, other) => editDistance(one, given) - editDistance(other, given),
  );
  return refused(
    remark(
      'refusal',
      'unknown-setting',
      `There is no setting "${given}". Nearest: ${nearest}. All: ${SETTING_NAMES.join(', ')}.`,
    ),
  );
}
