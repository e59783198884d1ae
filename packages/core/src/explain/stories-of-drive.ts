import { percentFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import { boostPerSpeed } from './boost-and-slip.ts';
import { DOWN, DOWN_NOT_UP, type Facts, SAME_OR_ELSE, type StoryEntry, UP, UP_NOT_DOWN } from './story.ts';

const MECHANICAL = ['mechanical'] as const;

/** The speed of the impeller: pulleys and belt. */
export const DRIVE_STORIES: readonly StoryEntry[] = [
  {
    id: 'faster-pulleys',
    text: () => said`The pulleys turn the supercharger faster: more air and more pressure.`,
    foretells: {
      power: UP,
      boost: UP,
      pulleyRatio: UP,
      impellerSpeed: UP,
      fuelFlow: UP_NOT_DOWN,
      airFlow: UP_NOT_DOWN,
      chargeTemperature: UP_NOT_DOWN,
    },
    charger: MECHANICAL,
    decidedBy: ['pulleyRatio'],
  },
  {
    id: 'slower-pulleys',
    text: () => said`The pulleys turn the supercharger slower: less air and less pressure.`,
    foretells: {
      power: DOWN,
      boost: DOWN,
      pulleyRatio: DOWN,
      impellerSpeed: DOWN,
      fuelFlow: DOWN_NOT_UP,
      airFlow: DOWN_NOT_UP,
      chargeTemperature: DOWN_NOT_UP,
    },
    charger: MECHANICAL,
    decidedBy: ['pulleyRatio'],
  },
  {
    id: 'less-slip',
    text: () =>
      said`The belt slips less than before: the supercharger turns faster at the same engine speed.`,
    foretells: {
      power: UP,
      boost: UP,
      slip: DOWN,
      fuelFlow: UP_NOT_DOWN,
      airFlow: UP_NOT_DOWN,
      pulleyRatio: SAME_OR_ELSE,
    },
    charger: MECHANICAL,
    decidedBy: ['slip'],
  },
  {
    id: 'belt-slip',
    text: beltSlip,
    foretells: {
      power: DOWN,
      boost: DOWN,
      boostAtTop: DOWN,
      slip: UP,
      trend: { agrees: ['down'], contradicts: [] },
      fuelFlow: DOWN_NOT_UP,
      airFlow: DOWN_NOT_UP,
    },
    charger: MECHANICAL,
    decidedBy: ['slip'],
    beside: true,
  },
];

/** How much slip would take as much boost: never from the shape of boost over speed, which accuses good belts. */
function beltSlip({ input, of }: Facts) {
  const boost = of('boost');
  const plain = said`The belt slips more than before: the supercharger turns slower at the same engine speed`;
  const { pressureRatio, boostRatio } = input;
  if (boost?.state !== 'down' || pressureRatio === null || boostRatio === null || !(boostRatio < 0))
    return said`${plain}.`;
  const perSpeed = boostPerSpeed(pressureRatio);
  return said`${plain}. About ${percentFigure(-boostRatio / perSpeed, 1)} of slip would take as much boost, at ${percentFigure(perSpeed / 100, 1)} of boost for each per cent.`;
}
