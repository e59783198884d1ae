import { figureOf, speedFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Finding } from './model.ts';
import type { PullAtHand } from './pull-at-hand.ts';

const THOUSAND = 1000;

/** V39 of one pull: oil pressure for each 1,000 r/min at the node where it is least. */
export function oil(at: PullAtHand): Finding[] {
  const pressure = at.values('oilPressure');
  if (pressure === null || at.curve === null) return [];
  const speeds = at.curve.engineSpeedRpm;
  const least = [...pressure.keys()]
    .filter((node) => Number.isFinite(pressure[node]!) && speeds[node]! > 0)
    .map((node) => ({ node, value: (pressure[node]! / speeds[node]!) * THOUSAND }))
    .toSorted((one, other) => one.value - other.value)[0];
  const [caution, stop] = [at.limit('V39.oil'), at.limit('V39.oilAlarm')];
  if (least === undefined || least.value >= caution) return [];
  const kind = 'gaugePressure';
  const isStop = least.value < stop;
  return [
    at.find('V39', {
      input: 'Oil pressure for each 1,000 r/min',
      kind,
      value: least.value,
      threshold: isStop ? stop : caution,
      level: isStop ? 'alarm' : 'caution',
      said: said`At ${speedFigure(speeds[least.node]!)} oil pressure is ${figureOf(pressure[least.node]!, kind)}, ${figureOf(least.value, kind)} for each ${speedFigure(THOUSAND)}; ${figureOf(caution, kind)} is asked for, below ${figureOf(stop, kind)} stop. ${isStop ? 'Make no other pull before the cause is known.' : 'Check level, temperature and the sender.'}`,
    }),
  ];
}
