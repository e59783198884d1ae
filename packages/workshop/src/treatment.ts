import { canBeLate, MEANINGS, type Pull, type Treatment } from '@pullbook/core/pull';
import { type Remark, remark } from '@pullbook/core/remark';

/** A treatment with what was said put over it: lags join, and a lag of 0 is none. */
export function treated(before: Treatment, said: Partial<Treatment>): Treatment {
  const lags = Object.entries({ ...before.lags, ...said.lags }).filter(([, lag]) => lag !== 0);
  return { ...before, ...said, lags: Object.fromEntries(lags) };
}

/**
 * What stands in the way of reading this pull as was said. `channels: null`: not known yet, as one file may hold several
 * pulls; a lag without its channel is then a remark of the view.
 */
export function treatmentTrouble(
  pull: Pick<Pull, 'name' | 'form' | 'sweep'> & { channels: Pull['channels'] | null },
  said: Partial<Treatment>,
): Remark[] {
  if (pull.form === 'summary') return [treatmentOfSummary(pull.name)];
  return [...lagTrouble(pull, said), ...(said.addInertia === true ? inertiaTrouble(pull.sweep) : [])];
}

/** Said of a pull of which only its peaks are known. */
export const treatmentOfSummary = (name: string): Remark =>
  remark(
    'refusal',
    'treatment-of-a-summary',
    `"${name}" is a printed or remembered peak without rows: lags, window, bins and inertia say nothing of it. Leave them out.`,
  );

function lagTrouble(
  { name, channels }: { name: string; channels: Pull['channels'] | null },
  said: Partial<Treatment>,
): Remark[] {
  if (channels === null) return [];
  const there = new Set(channels.map(({ meaning }) => meaning));
  return Object.entries(said.lags ?? {}).flatMap(([meaning, lag]) => {
    if (lag === 0 || [...there].some((one) => one === meaning)) return [];
    const label = MEANINGS[meaning as keyof typeof MEANINGS].label.toLowerCase();
    return [
      remark(
        'refusal',
        'lag-of-no-channel',
        `"${name}" has no channel of ${label}, so no lag can be set for it. It has: ${[...there].filter(canBeLate).join(', ')}.`,
      ),
    ];
  });
}

function inertiaTrouble({ momentOfInertia, inertiaCompensated }: Pull['sweep']): Remark[] {
  if (inertiaCompensated === 'yes')
    return [
      remark(
        'refusal',
        'inertia-twice',
        'The figures have the inertia torque of the sweep added back already; adding it again would count it twice. Leave it out, or amend what is noted of it.',
      ),
    ];
  const missing = [
    ...(momentOfInertia === null ? ['the moment of inertia of all that turns ("0.31 kg·m²")'] : []),
    ...(inertiaCompensated === 'unknown'
      ? ['whether the figures have the inertia torque already (yes or no)']
      : []),
  ];
  if (missing.length === 0) return [];
  return [
    remark(
      'refusal',
      'inertia-not-known',
      `The inertia of the sweep cannot be added: ${missing.join(', and ')} is not known. Enter it with the pull.`,
    ),
  ];
}
