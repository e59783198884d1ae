import type { ReachAsk } from '../../search.ts';
import { endsOf } from './with-unit.ts';

/**
 * What is still to be written before a question can be asked; '' nothing.
 *
 * @example missingOf({ power: '520 hp', what: 'power at a speed' }) // 'Write the engine speed.'
 */
export function missingOf({ power, what, at, window }: ReachAsk): string {
  if (power === undefined) return 'Write the power it should make.';
  if (what === 'power at a speed' && at === undefined) return 'Write the engine speed.';
  if (what === 'average power' && endsOf(window).some((end) => end.trim() === ''))
    return 'Write between which engine speeds.';
  return '';
}
