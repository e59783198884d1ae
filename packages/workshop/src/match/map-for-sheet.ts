import { type CompressorMap, type FittedMap, fitMap } from '@pullbook/core/airpath';
import type { CombinationSheet } from '@pullbook/core/combination';
import { figureOf } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, refused, remark, said } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { findMap, fittedMapOf } from '../maps.ts';

/** A map for a match, with what had to be taken for it. */
export interface MapFound {
  map: FittedMap;
  assumptions: Remark[];
}

/** Air to which a rating is told where its sheet does not say (common practice, no source). */
const USUAL_REFERENCE = { pressure: 101_325, temperature: 288.15 };

/**
 * The map of a sheet's supercharger: the one of the book that it names; else the generic stage through its rated point; else
 * the generic stage by its wheels alone. How wide the band of either is, the match says.
 */
export async function mapForSheet(book: Book | null, sheet: CombinationSheet): Promise<Result<MapFound>> {
  const named = textOf(sheet, 'map');
  const missing: Remark[] = [];
  if (named !== null && book !== null) {
    const found = await findMap(book, named);
    if (found.ok) {
      const map = fittedMapOf(book, found.value);
      return map.ok ? accepted({ map: map.value, assumptions: map.remarks }) : map;
    }
    missing.push(notInBook(named));
  }
  const generic = genericMap(sheet);
  if (!generic.ok) return refused(...([...missing, ...generic.remarks] as [Remark, ...Remark[]]));
  const map = fitMap(generic.value);
  if (!map.ok) return map;
  const assumptions = [...missing, ...generic.remarks, ...map.remarks];
  return accepted({ map: map.value, assumptions });
}

/** A map to be scaled from the generic stage by what the sheet says of the supercharger. */
function genericMap(sheet: CombinationSheet): Result<CompressorMap> {
  const number = (field: string) => sheet.sections.supercharger?.[field]?.value ?? null;
  const geometry = {
    wheelExitDiameter: number('wheelExitDiameter'),
    wheelInletDiameter: number('wheelInletDiameter'),
    blades: number('blades'),
    backsweep: number('backsweep'),
  };
  const [flow, pressureRatio, speedRpm] = [
    number('ratedFlow'),
    number('ratedPressureRatio'),
    number('ratedSpeed'),
  ];
  const isRated = flow !== null && pressureRatio !== null && speedRpm !== null;
  if (!isRated && geometry.wheelExitDiameter === null) return refused(NO_MAP);
  const unit = textOf(sheet, 'unit');
  const map: CompressorMap = {
    // Two sheets of one unit share what its map leaves open, so the id goes by what is known of it.
    id: `sheet ${JSON.stringify([unit, geometry, flow, pressureRatio, speedRpm])}`,
    name: unit ?? 'generic stage',
    form: 'rated',
    reference: USUAL_REFERENCE,
    geometry,
    points: isRated ? [{ flow, pressureRatio, speedRpm, efficiency: number('ratedEfficiency') }] : [],
    leftEnd: 'not known',
    origin: 'assumed',
    notes: '',
    invented: false,
    createdAt: '',
  };
  return accepted(map, [isRated ? RATED : WHEELS_ALONE]);
}

function textOf(sheet: CombinationSheet, field: string): string | null {
  const text = sheet.sections.supercharger?.[field]?.text.trim() ?? '';
  return text === '' || text.toLowerCase() === 'unknown' ? null : text;
}

const notInBook = (name: string): Remark =>
  remark(
    'caution',
    'map-not-in-book',
    `The sheet names the compressor map "${name}", which is not in the book. Add it with "pullbook map add FILE.csv" or on the page Maps; until then a generic one is taken.`,
  );

const RATED = remark(
  'caution',
  'map-from-rating',
  said`No compressor map is at hand: a generic stage is scaled through the rated point on the sheet, told for air of ${figureOf(USUAL_REFERENCE.pressure, 'absolutePressure')} and ${figureOf(USUAL_REFERENCE.temperature, 'temperature')} (assumed). A map or a boosted pull makes it better.`,
);

const WHEELS_ALONE = remark(
  'caution',
  'map-from-wheels',
  'No compressor map and no rated point are at hand: a generic stage is taken by the wheel alone, which is a rough guess. Enter the rated flow, pressure ratio and speed, add a map, or fit to a boosted pull.',
);

const NO_MAP = remark(
  'refusal',
  'no-map',
  'Nothing says what this supercharger delivers. Add its compressor map ("pullbook map add FILE.csv") and name it on the sheet under supercharger, map; or enter rated flow, pressure ratio and speed; or at least the wheel exit diameter.',
);
