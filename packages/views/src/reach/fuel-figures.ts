import { injectorNeeded, lineFor } from '@pullbook/core/fuel';
import { unitFor } from '@pullbook/core/quantity';
import type { Rung } from '@pullbook/core/reach';
import type { LimitId } from '@pullbook/core/rule';
import type { ShownReachFigure, ShownSource } from '../reach-model.ts';
import { leftWords, limitValue, thresholdWords } from './limit-words.ts';
import type { ReachInView } from './reach-in-view.ts';
import { highestOf } from './rung-figures.ts';
import { computedFrom, sourceOfLimit, sourceOfPart } from './sources.ts';

const MILLIMETRE = unitFor('mm', 'length')!;
/** Held open for this share of the time at most, where no limit of injectors says another; common practice, no source. */
const USUAL_DUTY = 0.85;

/** The fuel a way needs, and what injectors, pump and line must give for it. */
export function fuelFigures(view: ReachInView, rung: Rung): ShownReachFigure[] {
  const { show } = view;
  const flow = highestOf(rung, rung.curve.fuelFlow);
  const supply = rung.made?.supply ?? null;
  if (flow === null) return [];
  const computed = computedFrom(view, rung);
  const lambda = supply === null ? '' : `λ\u00a0${show.number(supply.lambda, 'ratio', { decimals: 2 })}`;
  const from: ShownSource =
    lambda === '' ? computed : { ...computed, text: `From its air at ${lambda}. ${computed.text}` };
  const { ground } = rung;
  return [
    ...(supply === null
      ? []
      : [
          {
            label: 'Fuel',
            value: `${supply.fuel.name}, ${lambda} at full load`,
            band: '',
            ground: null,
            from: sourceOfPart(view, rung, 'fuel'),
          },
        ]),
    {
      label: 'Highest fuel flow',
      value: `${show.quantity(flow.value, 'massFlow', { decimals: 0 })} at ${show.speed(flow.atRpm)}`,
      band: '',
      ground,
      from,
    },
    ...injectorLines(view, rung, flow.value),
    ...limitLine(view, rung, 'pump', 'Pump gives, for one that is needed'),
    ...lineNeeded(view, rung, flow.value),
    ...limitLine(view, rung, 'fuelLine', 'Fuel in its feed line'),
  ];
}

function injectorLines(view: ReachInView, rung: Rung, fuelFlow: number): ShownReachFigure[] {
  const { show } = view;
  const injectors = rung.made?.supply.injectors ?? null;
  const limit = rung.limits.find(({ id }) => id === 'injectors');
  const duty = limit?.threshold ?? USUAL_DUTY;
  const flow = (value: number) => show.quantity(value, 'massFlow', { decimals: 0 });
  if (injectors === null) return limitLine(view, rung, 'injectors', 'Injectors, open for');
  const { count } = injectors;
  const needed = injectorNeeded({ fuelFlow, count, duty });
  return [
    {
      label: 'Injectors',
      value: `${count} of ${flow(injectors.flow)} at ${show.quantity(injectors.ratedPressure, 'pressureDifference', { decimals: 0 })}`,
      band: '',
      ground: null,
      from: sourceOfPart(view, rung, 'injectors'),
    },
    {
      label: `Each needs, open for ${show.perCent(duty, { decimals: 0 })} of the time`,
      value: `${flow(needed)} at the pressure it has`,
      band: '',
      ground: rung.ground,
      from: { text: 'Fuel flow over the number of injectors and that share.', links: [] },
    },
    ...limitLine(view, rung, 'injectors', 'Injectors, open for'),
  ];
}

function lineNeeded({ show }: ReachInView, rung: Rung, fuelFlow: number): ShownReachFigure[] {
  const fuel = rung.made?.supply.fuel;
  if (fuel === undefined) return [];
  const { diameter, size } = lineFor(fuelFlow, fuel);
  const inside = show.quantity(diameter, 'length', {
    ...(show.options.units === 'si' ? { unit: MILLIMETRE, decimals: 1 } : { decimals: 2 }),
  });
  return [
    {
      label: 'Feed line needed, inside',
      value: `${inside}${size === null ? ': more than one hose' : `, ${size}`}`,
      band: '',
      ground: 'rule of thumb',
      from: {
        text: 'Fuel no faster in its line than the trade’s hose sizes come to; common practice, no source.',
        links: [],
      },
    },
  ];
}

/** A limit that is about fuel as a line of that table. */
function limitLine(view: ReachInView, rung: Rung, id: LimitId, label: string): ShownReachFigure[] {
  const limit = rung.limits.find((one) => one.id === id);
  if (limit === undefined) return [];
  const { show } = view;
  return [
    {
      label,
      value: `${limitValue(show, limit)}, ${thresholdWords(show, limit)}: ${leftWords(show, limit)}`,
      band: '',
      ground: rung.ground,
      from: sourceOfLimit(view, rung, limit),
    },
  ];
}
