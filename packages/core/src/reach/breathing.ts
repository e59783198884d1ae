import type { MatchCase } from '../airpath/index.ts';
import { fingerprintOfCurves, interpolateLinear } from '../numeric/index.ts';
import type { ReachInput } from './model.ts';
import type { Picked } from './picked.ts';

/** On the air swallowed at engine speeds by all breathing changes picked, each held beyond its ends. */
export function breathingAt(
  { breathing }: ReachInput,
  picked: Picked,
  speeds: readonly number[],
): number[] | null {
  if (picked.breathing.length === 0) return null;
  return speeds.map((speed) =>
    picked.breathing.reduce((product, place) => product * heldAt(breathing[place]!, speed), 1),
  );
}

function heldAt({ engineSpeedRpm, factor }: ReachInput['breathing'][number], speed: number): number {
  const within = Math.max(engineSpeedRpm[0]!, Math.min(engineSpeedRpm.at(-1)!, speed));
  return interpolateLinear(engineSpeedRpm, factor, within);
}

/** How far the breathing changes of a rung may be off, by the key under which their draws are shared. */
export const breathingSpread = ({ breathing }: ReachInput, picked: Pick<Picked, 'breathing'>) =>
  picked.breathing.flatMap((place) => {
    const { name, spread, engineSpeedRpm, factor } = breathing[place]!;
    return spread > 0
      ? [{ key: `breathing ${name} ${fingerprintOfCurves(engineSpeedRpm, factor)}`, spread }]
      : [];
  });

/** A match whose engine breathes better by all that was picked. */
export function breathed(
  { input, spread }: MatchCase,
  factors: readonly number[],
  reach: ReachInput,
  picked: Picked,
): MatchCase {
  const { swallowing } = input;
  const breathing = factors.map((factor, node) => factor * (swallowing.breathing?.[node] ?? 1));
  return {
    input: { ...input, swallowing: { ...swallowing, breathing } },
    spread: [
      ...spread,
      ...breathingSpread(reach, picked).map(({ key, spread: deviation }) => ({
        key,
        parts: ['swallowing' as const],
        factor: [[deviation]],
        staysBesideFit: true as const,
      })),
    ],
  };
}
