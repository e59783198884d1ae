import { said } from '@pullbook/core/remark';
import type { KeptEnquiry } from '../reach-model.ts';
import {
  answerOf,
  both,
  CAM,
  hp,
  INJECTORS,
  keptOf,
  NOW_RUNG,
  PULLEY,
  psi,
  rung,
  TARGET,
} from './test-reach.ts';

const LONG = 'a combination whose name somebody wrote out in full, '.repeat(4).slice(0, 200);

/** Kept answers that a card must stand: usual, out of reach, there already, of many changes, with long names. */
export function oddAnswers(): KeptEnquiry[] {
  const many = rung({
    id: 'many',
    changes: [PULLEY, CAM, { ...CAM, said: said`Cooler “ice water” in place of one of 80 %` }, CAM],
    bindsFirst: INJECTORS,
  });
  const longNames = keptOf(answerOf({ rungs: [{ ...both, changes: [{ ...CAM, said: said`${LONG}` }] }] }), {
    question: `How does ${LONG} make it?`,
  });
  longNames.enquiry.answer.combinationName = LONG;
  for (const near of longNames.enquiry.answer.near) near.name = LONG;
  return [
    keptOf(),
    keptOf(answerOf({ rungs: [many] })),
    keptOf(
      answerOf({
        feasible: false,
        rungs: [
          rung({ reaches: false, chance: 0.02, reached: { value: hp(506), low: hp(484), high: hp(526) } }),
        ],
        reason: said`Impeller speed is passed by 17 of the 17 that would make it; the most within all limits is 506 hp of the 520 hp asked for`,
        leastRemedy: {
          what: 'breathing',
          said: said`An engine that swallows 6.2 % more air from the same manifold at all speeds`,
          share: 0.062,
          changes: [],
        },
      }),
    ),
    keptOf(answerOf({ feasible: false, rungs: [], left: [] })),
    keptOf(answerOf({ now: { ...NOW_RUNG, reaches: true }, rungs: [] })),
    keptOf(
      answerOf({
        target: { ...TARGET, what: 'average power', windowRpm: [4000, 6500], boostCap: psi(10) },
        rungs: [both],
      }),
    ),
    longNames,
  ];
}
