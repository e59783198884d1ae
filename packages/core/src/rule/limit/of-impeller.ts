import { highestImpellerSpeed, tipSpeedOf } from '../../airpath/index.ts';
import { figureOf, speedFigure } from '../../quantity/index.ts';
import { said } from '../../remark/index.ts';
import type { EngineAtLimits } from './engine-at-limits.ts';
import { below, isPassed, type LimitKind } from './limit-kind.ts';
import { onSheet } from './on-sheet.ts';

/** V20: the impeller without slip where the engine is stopped, and what that may be overrun by, against the maker's limit. */
export const impellerSpeedLimit: LimitKind = {
  label: 'Impeller speed',
  ruleId: 'V20',
  bindsUsually: true,
  measure: (at) => {
    const highest = highestOf(at);
    const allowed = at.input?.drive.maximumImpellerSpeedRpm ?? null;
    if (highest === null || allowed === null) return null;
    const threshold = at.limit('V20.limit') * allowed;
    const from = { section: 'supercharger', field: 'maximumImpellerSpeed' } as const;
    return below({ value: highest.value, threshold, kind: 'engineSpeed', rpm: highest.rpm, from });
  },
  tell: (measured) =>
    said`Without slip the impeller reaches ${speedFigure(measured.value)} at ${speedFigure(measured.engineSpeedRpm!)}, the over-rev counted; ${speedFigure(measured.threshold)} is its limit.${isPassed(measured) ? ' A wheel that bursts goes through its housing: a larger blower pulley, or a lower engine speed limit.' : ''}`,
  levelPassed: () => 'alarm',
  missing: (at) => {
    if (at.input === null) return null;
    return `Impeller speed: the maker’s limit is not on the sheet (${onSheet('supercharger', 'maximumImpellerSpeed')}). Look it up before anything is turned faster.`;
  },
};

/**
 * V20: the tip of the wheel, against what aluminium wheels stand. Where the maker tells a limit of his own that one binds, and this
 * cautions.
 */
export const tipSpeedLimit: LimitKind = {
  label: 'Tip speed of the impeller',
  ruleId: 'V20',
  bindsUsually: true,
  bindsWhere: 'where the maker tells no limit of his own',
  measure: (at) => {
    const highest = highestOf(at);
    const map = at.input?.compressor.map;
    if (highest === null || map === undefined || map.isDiameterAssumed) return null;
    const value = tipSpeedOf(map.wheelExitDiameter, highest.value);
    const measured = below({
      value,
      threshold: at.limit('V20.tip'),
      kind: 'speed',
      rpm: highest.rpm,
      from: 'V20.tip',
    });
    return at.input!.drive.maximumImpellerSpeedRpm === null ? measured : { ...measured, binds: false };
  },
  tell: (measured) =>
    said`Without slip the tip of the wheel moves at ${metresASecond(measured.value)} at ${speedFigure(measured.engineSpeedRpm!)}; ${metresASecond(measured.threshold)} is about what aluminium wheels stand.${isPassed(measured) ? ' Keep to the maker’s limit, and ask him what the wheel is made of.' : ''}`,
  levelPassed: () => 'caution',
  missing: (at) =>
    at.input === null
      ? null
      : `Tip speed: the size of the wheel is not on the sheet (${onSheet('supercharger', 'wheelExitDiameter')}).`,
};

function highestOf({ input, highestRpm }: EngineAtLimits): { value: number; rpm: number } | null {
  if (input === null || highestRpm === null) return null;
  const value = highestImpellerSpeed(input.drive, highestRpm);
  return Number.isFinite(value) ? { value, rpm: highestRpm + input.drive.overRevMarginRpm } : null;
}

const metresASecond = (speed: number) =>
  figureOf(speed, 'speed', { units: { us: 'ft/s', si: 'm/s' }, decimals: 0 });
