import { type AirState, airState } from '../../air/index.ts';
import { type Pull, type PullView, weatherOfPull } from '../../pull/index.ts';
import { type Result, refused, remark } from '../../remark/index.ts';

/** The ambient air of a pull: the weather noted, or its own channels; refused where neither is there. */
export function airOfViewedPull({ pull, view }: { pull: Pull; view: PullView }): Result<AirState> {
  const nodes = Array.from(view.curve?.engineSpeedRpm ?? [], (_, node) => node);
  const { weather } = weatherOfPull(pull, view.curve?.channels ?? new Map(), nodes);
  if (weather !== null) return airState(weather);
  return refused(
    remark(
      'refusal',
      'no-weather',
      `No barometer and inlet temperature go with ${pull.name}, and a match needs its air. Enter the weather of the pull.`,
    ),
  );
}
