import { figureOf, speedFigure } from '../quantity/index.ts';
import { type Said, said } from '../remark/index.ts';
import type { PlannedEngine } from './planned-engine.ts';

/** One line of the card before it is written in anybody's units. */
export interface StopLine {
  id: string;
  label: string;
  limit: Said;
  source: string;
}

const COMMON = 'common practice, no source';

const PSI = 6894.757;
const fahrenheit = (degrees: number): number => (degrees - 32) / 1.8 + 273.15;

/**
 * When to end a pull at once, worked out for one combination. Defaults of the trade, to be edited: a planning aid, not a
 * safety device. Where it holds: engines on a brake at full load.
 */
export function stopCriteria(engine: PlannedEngine): StopLine[] {
  return [
    line('oil-pressure', 'Oil pressure below', oilPressure(), COMMON),
    ...fuelPressure(engine),
    line('lambda', 'Mixture leaner than', mixture(engine), COMMON),
    line(
      'exhaust',
      'Exhaust gas above',
      said`${figureOf(fahrenheit(1550), 'temperature', { decimals: 0 })}`,
      COMMON,
    ),
    line(
      'coolant',
      'Coolant above',
      said`${figureOf(fahrenheit(215), 'temperature', { decimals: 0 })}`,
      COMMON,
    ),
    line('oil', 'Oil above', said`${figureOf(fahrenheit(260), 'temperature', { decimals: 0 })}`, COMMON),
    ...boost(engine),
    line(
      'speed',
      'Engine speed above',
      engineSpeed(engine),
      `${COMMON}; the lowest maker’s limit of engine, damper, coupling and brake`,
    ),
    ...impeller(engine),
    line('knock', 'Knock', said`any that is heard or shown`, COMMON),
    line('crankcase', 'Crankcase pressure', said`more than twice its usual rise`, COMMON),
    line('smoke', 'Smoke, a leak, a new noise', said`at once`, COMMON),
    ...(engine.hasNitrous
      ? [
          line(
            'nitrous',
            'Nitrous',
            said`mixture goes lean in the first 0.3 s after it is switched on`,
            COMMON,
          ),
        ]
      : []),
  ];
}

const line = (id: string, label: string, limit: Said, source: string): StopLine => ({
  id,
  label,
  limit,
  source,
});

/** Stop below 7 psi for each 1,000 r/min, be warned below 10. */
const oilPressure = (): Said => said`${psiFigure(7)} for each 1,000 r/min (be warned below ${psiFigure(10)})`;

const psiFigure = (psi: number) => figureOf(psi * PSI, 'pressureDifference', { decimals: 0 });

/** In figures where the sheet tells the resting pressure; a rail that does not rise with boost has one figure at any boost. */
function fuelPressure({ isBoosted, fuelPressure: known, highestBoost }: PlannedEngine): StopLine[] {
  const fall = 2 * PSI;
  const rises = isBoosted && known?.followsBoost !== false;
  const rest =
    known === null ? 'its resting pressure' : figureOf(known.atRest, 'pressureDifference', { decimals: 0 });
  const limit = said`${rest}${rises ? ' plus boost' : ''} less ${psiFigure(2)}`;
  const lowest = known === null ? null : known.atRest + (rises ? (highestBoost ?? Number.NaN) : 0) - fall;
  const figure =
    lowest === null || Number.isNaN(lowest)
      ? said``
      : said`: ${figureOf(lowest, 'gaugePressure', { decimals: 0 })}${rises ? said` at the ${figureOf(highestBoost!, 'gaugePressure')} pulled so far` : ''}`;
  const source = known === null ? COMMON : `${COMMON}; resting pressure on the sheet`;
  return [line('fuel-pressure', 'Fuel pressure below', said`${limit}${figure}`, source)];
}

/** Lambda; of alcohol the best-power range of the trade is the limit, since it is run richer. */
function mixture({ isBoosted, fuel }: PlannedEngine): Said {
  const limits = {
    gasoline: isBoosted ? '0.88' : '0.95',
    ethanol: isBoosted ? '0.84' : '0.95',
    methanol: isBoosted ? '0.80' : '0.90',
    unknown: isBoosted
      ? '0.88 (gasoline; the fuel is not on the sheet)'
      : '0.95 (gasoline; the fuel is not on the sheet)',
  };
  return said`lambda ${limits[fuel]}`;
}

function boost({ isBoosted, highestBoost, boostForetold }: PlannedEngine): StopLine[] {
  if (!isBoosted) return [];
  const over = 1.5 * PSI;
  if (boostForetold !== null && boostForetold > (highestBoost ?? 0) + over) {
    const limit = said`${figureOf(boostForetold, 'gaugePressure')} (upper end of what is foretold)`;
    return [line('boost', 'Boost above', limit, 'the prediction kept with the trial')];
  }
  const limit =
    highestBoost === null
      ? said`what is planned plus ${figureOf(over, 'pressureDifference', { decimals: 1 })}`
      : said`${figureOf(highestBoost + over, 'gaugePressure')} (highest so far plus ${figureOf(over, 'pressureDifference', { decimals: 1 })})`;
  return [line('boost', 'Boost above', limit, COMMON)];
}

const engineSpeed = ({ highestSpeedRpm }: PlannedEngine): Said =>
  highestSpeedRpm === null
    ? said`the limit: ______ r/min`
    : said`the limit: ______ r/min (pulled so far to ${speedFigure(highestSpeedRpm)})`;

function impeller({ maximumImpellerSpeed }: PlannedEngine): StopLine[] {
  return maximumImpellerSpeed === null
    ? []
    : [
        line(
          'impeller',
          'Impeller speed above',
          said`${speedFigure(maximumImpellerSpeed)}, by the pulleys without slip`,
          'its highest speed on the sheet',
        ),
      ];
}
