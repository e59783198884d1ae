import { unitFor } from '@pullbook/core/quantity';
import { CHANGE_PARTS, type ChangePart, type CostClass, type PartsList } from '@pullbook/core/reach';
import { LIMIT_IDS, LIMITS } from '@pullbook/core/rule';
import type { ViewOptions } from '../model.ts';
import type { PartsPage, ShownPart } from '../reach-model.ts';
import { type Showing, showingIn } from '../showing.ts';
import { listed } from '../wording.ts';
import { costText, phrase } from './reach-words.ts';
import { pulleyText } from './what-is-left.ts';

const LITRE_AN_HOUR = unitFor('L/h', 'volumeFlow');

/** Kinds of change as a heading or the name of a toggle. */
export const CHANGE_LABELS: Record<ChangePart, string> = {
  pulley: 'Pulleys',
  stepUp: 'Step-up',
  supercharger: 'Supercharger',
  cooler: 'Cooler',
  fuel: 'Fuel',
  injectors: 'Injectors',
  pump: 'Fuel pump',
  belt: 'Belt',
  breathing: 'Breathing',
  speedLimit: 'Engine speed limit',
};

/**
 * What the shop can buy as its page lists it. The rows of a kind stand in the order of the list, so that a change of a row is a change of
 * that place.
 *
 * @example partsPage(usualParts(), { units: 'si', decimalMark: '.' }).kinds[0].rows[0].text // '60 mm'
 */
export function partsPage(list: PartsList, options: ViewOptions): PartsPage {
  const show = showingIn(options);
  return {
    kinds: kindsOf(list, show),
    costClasses: ([0, 1, 2, 3, 4, 5] as const).map((cost) => ({ cost, text: costText(cost) })),
    costs: CHANGE_PARTS.map((part) => ({
      part,
      label: CHANGE_LABELS[part],
      cost: list.costs[part] ?? null,
    })),
    binding: LIMIT_IDS.map((id) => {
      const { label, bindsUsually, bindsWhere = '' } = LIMITS[id];
      const own = list.binding[id];
      // What the shop says itself goes before what the limit's own measure would.
      const where = own === undefined && bindsUsually ? bindsWhere : '';
      return { id, label, usually: bindsUsually, here: own ?? bindsUsually, where };
    }),
  };
}

function kindsOf(list: PartsList, show: Showing): PartsPage['kinds'] {
  const row = (text: string, { cost, from }: { cost: CostClass; from: { source: string } }): ShownPart => ({
    text,
    cost,
    from: from.source,
  });
  return [
    {
      id: 'blowerPulleys',
      title: 'Blower pulleys',
      what: 'Diameter',
      rows: list.blowerPulleys.map((one) => row(pulleyText(show, one.diameter), one)),
    },
    {
      id: 'crankPulleys',
      title: 'Crank pulleys',
      what: 'Diameter',
      rows: list.crankPulleys.map((one) => row(pulleyText(show, one.diameter), one)),
    },
    {
      id: 'stepUps',
      title: 'Step-ups',
      what: 'Turns of the impeller for one of the input',
      rows: list.stepUps.map((one) => row(show.number(one.ratio, 'ratio', { decimals: 2 }), one)),
    },
    {
      id: 'coolers',
      title: 'Coolers',
      what: 'Cooler',
      rows: list.coolers.map((one) => row(coolerText(show, one), one)),
    },
    { id: 'fuels', title: 'Fuels', what: 'Fuel', rows: list.fuels.map((one) => row(one.fuel.name, one)) },
    {
      id: 'injectors',
      title: 'Injectors',
      what: 'Flow of one, at its pressure',
      rows: list.injectors.map((one) => row(injectorText(show, one.injectors), one)),
    },
    {
      id: 'pumps',
      title: 'Fuel pumps',
      what: 'Flow at pressure',
      rows: list.pumps.map((one) => row(pumpText(show, one.pump), one)),
    },
    {
      id: 'beltRibs',
      title: 'Ribbed belts',
      what: 'Ribs',
      rows: list.beltRibs.map((one) => row(`${one.ribs} ribs`, one)),
    },
    {
      id: 'breathing',
      title: 'Gains in breathing',
      what: 'What is done, and what it adds to the air',
      rows: list.breathing.map((one) => ({
        text: `${one.name}: ${gainText(show, one.factor)}`,
        cost: one.cost,
        from: phrase(one.from, show.options),
      })),
    },
  ];
}

function coolerText(show: Showing, { name, cooler }: PartsList['coolers'][number]): string {
  if (cooler === null) return name;
  const coolant =
    cooler.coolantTemperature === null
      ? ''
      : `, coolant at ${show.quantity(cooler.coolantTemperature, 'temperature')}`;
  return `${name}: ${show.perCent(cooler.effectiveness, { decimals: 0 })}${coolant}`;
}

const injectorText = (
  show: Showing,
  { flow, ratedPressure }: PartsList['injectors'][number]['injectors'],
): string =>
  `${show.quantity(flow, 'massFlow', { decimals: 0 })} at ${show.quantity(ratedPressure, 'pressureDifference', { decimals: 0 })}`;

function pumpText(show: Showing, { points }: PartsList['pumps'][number]['pump']): string {
  return listed(
    points.map(({ flow, pressure }) => {
      const unit = LITRE_AN_HOUR === null ? {} : { unit: LITRE_AN_HOUR };
      return `${show.quantity(flow, 'volumeFlow', { ...unit, decimals: 0 })} at ${show.quantity(pressure, 'pressureDifference', { decimals: 0 })}`;
    }),
  );
}

/** `+4.0 %`, `+1.0 to +4.0 %` */
function gainText(show: Showing, factor: readonly number[]): string {
  const [low, high] = [Math.min(...factor) - 1, Math.max(...factor) - 1];
  const most = show.perCent(high, { sign: true });
  return low === high ? most : `${show.perCent(low, { sign: true }).replace(/\u00a0%$/u, '')} to ${most}`;
}
