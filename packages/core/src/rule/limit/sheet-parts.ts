import type { CombinationSheet, SectionId } from '../../combination/index.ts';
import { sheetNumber, sheetText } from '../sheet-words.ts';

/** What a part is made as, by the words of the sheet; `null`: not told, or words that are not understood. */
export type MadeAs = 'cast' | 'nodular' | 'production' | 'forged' | null;

/** Lines of a sheet that limits ask for; inside units, `null`: not known. */
export interface SheetParts {
  cylinders: number | null;
  bore: number | null;
  stroke: number | null;
  compressionRatio: number | null;
  pistons: MadeAs;
  rods: MadeAs;
  crankshaft: MadeAs;
  /** Which of pistons, rods and crankshaft the sheet calls cast. */
  castParts: ('pistons' | 'rods' | 'crankshaft')[];
  mainCaps: 'two-bolt' | 'four-bolt' | null;
  topRingGap: number | null;
  plugGap: number | null;
  powerLimit: number | null;
  boostLimit: number | null;
  intakeValve: number | null;
  springSeatLoad: number | null;
  fasteners: 'bolts' | 'studs' | null;
  gasket: 'composition' | 'other' | null;
  isBlowThrough: boolean;
  floats: 'hollow' | 'solid';
  /** Whether the sheet names a cooler. */
  isCooled: boolean;
}

/** A search asks the same sheet thousands of times; reading its words each time would cost more than the limits. */
const READ = new WeakMap<CombinationSheet, SheetParts>();

/** The lines that limits ask for, read once for each sheet. */
export function sheetParts(sheet: CombinationSheet): SheetParts {
  const known = READ.get(sheet);
  if (known !== undefined) return known;
  const parts = read(sheet);
  READ.set(sheet, parts);
  return parts;
}

function read(sheet: CombinationSheet): SheetParts {
  const block = (field: string) => sheetNumber(sheet, 'shortBlock', field);
  const words = (section: SectionId, field: string) => sheetText(sheet, section, field);
  const made = (field: string) => madeAs(words('shortBlock', field));
  const carburettor = `${words('fuelSystem', 'type')} ${words('intake', 'carburettor')}`;
  const cooler = words('cooler', 'type');
  return {
    cylinders: block('cylinders'),
    bore: block('bore'),
    stroke: block('stroke'),
    compressionRatio: block('compressionRatio'),
    pistons: made('pistons'),
    rods: made('rods'),
    crankshaft: made('crankshaft'),
    castParts: (['pistons', 'rods', 'crankshaft'] as const).filter((field) =>
      /\bcast\b|hypereutectic/.test(words('shortBlock', field)),
    ),
    mainCaps: capsOf(`${words('shortBlock', 'mainCaps')} ${words('shortBlock', 'block')}`),
    topRingGap: block('topRingGap'),
    plugGap: sheetNumber(sheet, 'ignition', 'plugGap'),
    powerLimit: block('powerLimit'),
    boostLimit: block('boostLimit'),
    intakeValve: sheetNumber(sheet, 'heads', 'intakeValveDiameter'),
    springSeatLoad: sheetNumber(sheet, 'heads', 'springSeatLoad'),
    fasteners: fastenersOf(words('heads', 'headFasteners')),
    gasket: gasketOf(words('heads', 'headGasket')),
    isBlowThrough: /blow-through/.test(carburettor),
    floats: /solid|foam|nitrophyl/.test(carburettor) ? 'solid' : 'hollow',
    isCooled: cooler !== '' && !/^(none|no|not fitted)$/.test(cooler),
  };
}

function madeAs(words: string): MadeAs {
  if (/forged|billet/.test(words)) return 'forged';
  if (/nodular|ductile/.test(words)) return 'nodular';
  if (/\bcast\b|hypereutectic/.test(words)) return 'cast';
  return /powder|production|standard|stock/.test(words) ? 'production' : null;
}

const capsOf = (words: string): SheetParts['mainCaps'] =>
  /two-bolt/.test(words) ? 'two-bolt' : /four-bolt/.test(words) ? 'four-bolt' : null;

const fastenersOf = (words: string): SheetParts['fasteners'] =>
  /stud/.test(words) ? 'studs' : /bolt/.test(words) ? 'bolts' : null;

const gasketOf = (words: string): SheetParts['gasket'] =>
  words === '' ? null : /composition/.test(words) ? 'composition' : 'other';
