import type { PartsKind } from '../../api/reach.ts';

/** One field of a thing that can be bought. */
export interface PartField {
  /** As in a parts file. */
  name: string;
  label: string;
  placeholder: string;
  /** One of these; missing: free text with its unit. */
  choices?: { value: string; text: string }[];
}

const field = (name: string, label: string, placeholder: string): PartField => ({ name, label, placeholder });

const PULLEY = [field('diameter', 'Diameter', '78 mm')];

/** What is written of each kind of thing; cost and where it is from go with all of them. */
export const PART_FIELDS: Record<PartsKind, PartField[]> = {
  blowerPulleys: PULLEY,
  crankPulleys: PULLEY,
  stepUps: [field('ratio', 'Turns of the impeller for one of the input', '3.6')],
  coolers: [
    field('name', 'Name', 'larger core'),
    {
      ...field('by', 'Heat carried away by', ''),
      choices: [
        { value: 'air', text: 'Air' },
        { value: 'water', text: 'Water' },
        { value: 'ice water', text: 'Ice water' },
        { value: 'none', text: 'No cooler' },
      ],
    },
    field('effectiveness', 'Effectiveness', '75 %'),
    field('coolantTemperature', 'Coolant as it comes in', '18 °C'),
    field('pressureLoss', 'Pressure lost in it', '4 kPa'),
    field('pressureLossFlow', 'At an air flow of', '0.3 kg/s'),
  ],
  fuels: [field('fuel', 'Fuel, or a blend', '70 % ethanol, 30 % gasoline')],
  injectors: [
    field('name', 'Name', '80 lb/h'),
    field('flow', 'Flow of one', '80 lb/h'),
    field('pressure', 'At a pressure of', '3 bar'),
    field('density', 'Density of the fluid', '745 kg/m3'),
    field('deadTime', 'Opens late by', '1 ms'),
  ],
  pumps: [
    field('name', 'Name', '255 L/h'),
    field('flow', 'Flow', '255 L/h'),
    field('pressure', 'At a pressure of', '3 bar'),
    field('flowAbove', 'Flow at a higher pressure', '204 L/h'),
    field('pressureAbove', 'The higher pressure', '5 bar'),
    field('ratedVoltage', 'Told at', '13.5 V'),
    field('voltage', 'Gets at full load', '13.5 V'),
  ],
  beltRibs: [field('ribs', 'Ribs', '8')],
  breathing: [
    field('name', 'What would be fitted', 'ported heads'),
    field('gain', 'More air swallowed', '4 %'),
    field('from', 'From', '4500 rpm'),
    field('to', 'To', '6500 rpm'),
    field('spread', 'Uncertain by (one standard deviation)', '2 %'),
    {
      ...field('ground', 'It rests on', ''),
      choices: ['rule of thumb', 'scaled from your data', 'measured by you'].map((value) => ({
        value,
        text: value,
      })),
    },
  ],
};
