import type { SettingsReport } from '@pullbook/workshop';
import type { PriorChange } from '../../api/shop.ts';

type Kept = SettingsReport['scatterPrior'];

/**
 * The shop's whole guess to send: what was typed, by path; where nothing was typed over, the number as it is kept, so that
 * a figure shown rounded is not rounded by keeping another.
 *
 * @example priorChange({ setUp: '0.4 %' }, [], null) // { setUp: '0.4 %' }
 */
export function priorChange(
  typed: Readonly<Record<string, string>>,
  shown: readonly { path: string; own: string }[],
  kept: Kept,
): PriorChange {
  const known = kept?.degreesOfFreedom;
  const change: PriorChange = known === undefined ? {} : { degreesOfFreedom: { ...known } };
  for (const [path, text] of Object.entries(typed)) {
    if (text.trim() === '') continue;
    const asShown = shown.find((one) => one.path === path)?.own === text;
    const value = asShown ? (keptAt(kept, path) ?? text) : text.trim();
    const [name, inner] = path.split('.') as [string, string?];
    if (inner === undefined) change[name] = value;
    else change[name] = { ...Object(change[name]), [inner]: value };
  }
  return change;
}

function keptAt(kept: Kept, path: string): number | undefined {
  let found: unknown = kept;
  for (const name of path.split('.')) found = Object(found)[name];
  return typeof found === 'number' ? found : undefined;
}
