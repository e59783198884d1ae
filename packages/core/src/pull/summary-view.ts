import { correctionOf } from './correction.ts';
import type { CorrectionApplied, Peak, Pull, PullView, Recipe } from './model.ts';

/** View of a printed or remembered peak: its figures in the standard asked for, where that can be reached, and no curve. */
export function viewSummary(pull: Pull, recipe: Recipe): PullView {
  const { applied, multiplier, remarks } = correctionOf({
    asked: recipe.correction,
    carried: pull.carried,
    weather: pull.weather,
    boosted: false,
  });
  const summary = pull.summary;
  return {
    pullId: pull.id,
    recipe,
    correction: applied satisfies CorrectionApplied,
    window: null,
    spikes: [],
    curve: null,
    peakPower: peakOf(summary?.peakPower ?? null, summary?.peakPowerRpm ?? null, multiplier),
    peakTorque: peakOf(summary?.peakTorque ?? null, summary?.peakTorqueRpm ?? null, multiplier),
    remarks,
  };
}

function peakOf(value: number | null, atRpm: number | null, multiplier: number): Peak | null {
  if (value === null) return null;
  return {
    value: value * multiplier,
    atRpm: atRpm ?? Number.NaN,
    valueSpread: null,
    atRpmSpread: null,
    stillClimbing: false,
  };
}
