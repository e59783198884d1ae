import type { KeptAnswer, Rung } from '@pullbook/core/reach';

/**
 * What a rung is foretold to gain over what is there now, as a share of power on average over the speeds that both run at: what the
 * pulls of its trial have to show. A target's window bounds the speeds. `null`: they run at no speed alike.
 *
 * @example gainByRung(answer, rung) // 0.032
 */
export function gainByRung({ answer }: Pick<KeptAnswer, 'answer'>, rung: Rung): number | null {
  const [low, high] = answer.target.windowRpm ?? [0, Number.POSITIVE_INFINITY];
  const now = new Map(
    answer.now.curve.engineSpeedRpm.map((speed, node) => [speed, answer.now.curve.power.value[node]!]),
  );
  let before = 0;
  let after = 0;
  rung.curve.engineSpeedRpm.forEach((speed, node) => {
    const power = now.get(speed);
    if (power === undefined || speed < low || speed > high) return;
    before += power;
    after += rung.curve.power.value[node]!;
  });
  return before > 0 ? after / before - 1 : null;
}
