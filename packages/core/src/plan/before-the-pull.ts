import { figureOf, rangeOf } from '../quantity/index.ts';
import { type Said, said } from '../remark/index.ts';

/** What to do before a counted pull, so that it can be compared. */
export interface StartAdvice {
  /** Pulls that warm up and never count. */
  warmUps: number;
  /** Minutes between counted pulls; `null`: as soon as the temperatures are there. */
  waitMinutes: number | null;
  oil: Said;
  coolant: Said;
  /** Of both and of the air: as near to the first counted pull as this. */
  alike: Said;
  source: string;
}

const fahrenheit = (degrees: number): number => (degrees - 32) / 1.8 + 273.15;

/** Windows and waits for one stay on the brake. Two warm-ups where heat soaks in or the day begins. */
export function beforeThePull(isBoosted: boolean, isFirstOfDay: boolean): StartAdvice {
  return {
    warmUps: isBoosted || isFirstOfDay ? 2 : 0,
    waitMinutes: isBoosted ? 3 : null,
    oil: said`${rangeOf(fahrenheit(160), fahrenheit(190), 'temperature', ' to ', { decimals: 0 })}`,
    coolant: said`${rangeOf(fahrenheit(160), fahrenheit(185), 'temperature', ' to ', { decimals: 0 })}`,
    alike: alike(),
    source: 'common practice, no source',
  };
}

const alike = (): Said =>
  said`oil within ${difference(10)}, coolant within ${difference(5)} of the first counted pull`;

const difference = (degreesFahrenheit: number) =>
  figureOf(degreesFahrenheit / 1.8, 'temperatureDifference', { decimals: 0 });
