import type { CombinationSheet } from './model.ts';

const NOT_FITTED = /^(none|no|not fitted|naturally aspirated)$/i;

/** Whether the sheet has a supercharger of any kind: a filled supercharger section whose type is not `none`. */
export function isSupercharged(sheet: CombinationSheet): boolean {
  const section = sheet.sections.supercharger;
  if (section === undefined || Object.keys(section).length === 0) return false;
  return !NOT_FITTED.test(section.type?.text ?? '');
}
