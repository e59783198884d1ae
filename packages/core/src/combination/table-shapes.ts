import type { QuantityKind } from '../quantity/index.ts';
import type { SheetEntry } from './fields.ts';

/** One column of a table on a sheet. */
export interface TableColumn {
  field: string;
  label: string;
  /** Words of a heading that mean it: `lift mm`, `Valve lift (in)`. */
  word: string;
  kind: QuantityKind;
  /** Inside unit; outside is refused. Wide on purpose. Common practice, no source. */
  allowed: readonly [low: number, high: number];
}

/** A line beside the points: what they were taken with. */
export interface TableDetail extends SheetEntry {
  /** Must stand there, `unknown` allowed: without it the points cannot be used. */
  needed: boolean;
}

/** What a field that is a table holds: two columns over each other, the first rising, and what they were taken with. */
export interface TableShape {
  columns: readonly [TableColumn, TableColumn];
  details: readonly TableDetail[];
  /** Points as a person would enter them: a heading with units, then one point a line. */
  example: string;
}

const MM = 1e-3;

const text = (
  field: string,
  label: string,
  example: string,
  more: { understood?: readonly string[]; needed?: boolean } = {},
): TableDetail => ({
  field,
  label,
  kinds: ['text'],
  example,
  allowed: null,
  usual: null,
  understood: more.understood ?? [],
  needed: more.needed ?? false,
});

const LIFT: TableColumn = {
  field: 'lift',
  label: 'Lift',
  word: 'lift',
  kind: 'length',
  allowed: [0, 100 * MM],
};

/** Lift against flow on a bench. Flow goes with the root of the test pressure, so the pressure must be told. */
export const FLOW_SHEET: TableShape = {
  columns: [LIFT, { field: 'flow', label: 'Flow', word: 'flow', kind: 'volumeFlow', allowed: [0, 20] }],
  details: [
    {
      field: 'testPressure',
      label: 'Test pressure',
      kinds: ['pressureDifference'],
      example: '28 inH2O',
      allowed: [10, 1e5],
      usual: [700, 15_000],
      understood: [],
      needed: true,
    },
    {
      field: 'bore',
      label: 'Bore under the head',
      kinds: ['length'],
      example: '96 mm',
      allowed: [10 * MM, 1],
      usual: null,
      understood: [],
      needed: false,
    },
    text('entry', 'Radius plate at the port', 'yes', { understood: ['yes', 'no'] }),
    text('pipe', 'Pipe at the port', 'no', { understood: ['yes', 'no'] }),
    text('bench', 'Bench', 'shop bench no. 1'),
    text('notes', 'Notes', 'second port from the front'),
  ],
  example: 'lift mm, flow L/s\n2, 24\n4, 48\n6, 70\n8, 88\n10, 100\n12, 108',
};

/** Lift over angle, as measured with a degree wheel or printed by the grinder. */
export const LIFT_CURVE: TableShape = {
  columns: [
    { field: 'angle', label: 'Angle', word: 'angle', kind: 'angle', allowed: [-4 * Math.PI, 4 * Math.PI] },
    LIFT,
  ],
  details: [
    text('angleOf', 'Degrees of', 'crank', { understood: ['crank', 'cam'], needed: true }),
    text('liftAt', 'Lift at', 'valve', { understood: ['valve', 'lobe'], needed: true }),
    text('zeroAngle', 'Angle is counted from', 'top dead centre of the overlap'),
    text('notes', 'Notes', 'with checking springs'),
  ],
  example: 'angle deg, lift mm\n-20, 0.4\n40, 6.1\n108, 11.2\n176, 6.0\n236, 0.4',
};
