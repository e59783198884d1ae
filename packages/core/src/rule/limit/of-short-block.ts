import { meanPistonSpeed } from '../../combination/index.ts';
import { figureOf, speedFigure } from '../../quantity/index.ts';
import { type Said, said } from '../../remark/index.ts';
import type { EngineAtLimits } from './engine-at-limits.ts';
import { atSpeed, below, isPassed, type LimitKind, type Measured, tighter } from './limit-kind.ts';
import { onSheet } from './on-sheet.ts';

const BORE_TOLD_OF = figureOf(0.1016, 'length', { units: { us: 'in', si: 'mm' }, decimals: 0 });
const MANY_FAILED = said`Told of V8 engines with bores about ${BORE_TOLD_OF}, so rough for this one: set your own limit on the sheet.`;

/** V21: mean piston speed, by what the sheet says of pistons, rods and crankshaft. */
export const pistonSpeedLimit: LimitKind = {
  label: 'Piston speed',
  ruleId: 'V21',
  bindsUsually: false,
  measure: ({ parts, highestRpm, limit }) => {
    if (parts.stroke === null || highestRpm === null) return null;
    const from = parts.castParts.length > 0 ? 'V21.cast' : 'V21.forged';
    const value = meanPistonSpeed(parts.stroke, highestRpm);
    return below({ value, threshold: limit(from), kind: 'speed', rpm: highestRpm, from });
  },
  tell: (measured, { parts, limit }) => {
    const cast = parts.castParts.length > 0 ? ` with cast ${parts.castParts.join(' and ')}` : '';
    return said`At ${speedFigure(measured.engineSpeedRpm!)} the pistons move at ${figureOf(measured.value, 'speed')} on average${cast}; ${figureOf(limit('V21.cast'), 'speed')} is asked of cast parts, ${figureOf(limit('V21.forged'), 'speed')} of forged ones, ${figureOf(limit('V21.race'), 'speed')} of racing parts.${isPassed(measured) ? ' Keep to the maker’s limit and people out of the plane of rotation.' : ''}`;
  },
  levelPassed: ({ value }, { limit }) => (value > limit('V21.race') ? 'alarm' : 'caution'),
  missing: () => `Piston speed: the stroke is not on the sheet (${onSheet('shortBlock', 'stroke')}).`,
};

/** V46: pistons by power of each cylinder and boost. Of forged ones nothing usual is told. */
export const pistonsLimit: LimitKind = {
  label: 'Pistons',
  ruleId: 'V46',
  bindsUsually: false,
  measure: (at) =>
    at.parts.pistons === 'cast'
      ? tighter(
          aCylinder(at, 'V46.castPistons'),
          at.boost === null
            ? null
            : below({
                value: at.boost.value,
                threshold: at.limit('V46.castPistonsBoost'),
                kind: 'gaugePressure',
                rpm: at.boost.rpm,
                from: 'V46.castPistonsBoost',
              }),
        )
      : null,
  tell: (measured) =>
    measured.kind === 'gaugePressure'
      ? said`${figureOf(measured.value, 'gaugePressure')} of boost on cast pistons; many have failed above ${figureOf(measured.threshold, 'gaugePressure')}.${isPassed(measured) ? ' Only without any knock, or with forged pistons. Their top lands break first.' : ''}`
      : tellOfCylinder('cast pistons', measured, ' Only without any knock, or with forged pistons.'),
  missing: ({ parts }) =>
    parts.pistons === null
      ? `Pistons: the sheet does not tell whether they are cast or forged (${onSheet('shortBlock', 'pistons')}).`
      : null,
};

/** V46: rods by power of each cylinder. */
export const rodsLimit: LimitKind = {
  label: 'Rods',
  ruleId: 'V46',
  bindsUsually: false,
  measure: (at) =>
    at.parts.rods === null
      ? null
      : aCylinder(at, at.parts.rods === 'forged' ? 'V46.forgedRods' : 'V46.productionRods'),
  tell: (measured, { parts }) =>
    tellOfCylinder(
      parts.rods === 'forged' ? 'forged rods' : 'production rods',
      measured,
      ' A rod that lets go comes through the block: better rods and bolts, and nobody in the cell.',
    ),
  missing: ({ parts }) =>
    parts.rods === null
      ? `Rods: the sheet does not tell how they are made (${onSheet('shortBlock', 'rods')}: production, powdered metal, forged).`
      : null,
};

/** V46: crankshaft by power of each cylinder. */
export const crankshaftLimit: LimitKind = {
  label: 'Crankshaft',
  ruleId: 'V46',
  bindsUsually: false,
  measure: (at) => {
    const made = at.parts.crankshaft;
    return made === null ? null : aCylinder(at, CRANKSHAFTS[made]);
  },
  tell: (measured, { parts }) =>
    tellOfCylinder(
      `a ${parts.crankshaft === 'production' ? 'production' : parts.crankshaft} crankshaft`,
      measured,
      ' A forged one, and a look at the snout’s keyways: the belt pulls at it.',
    ),
  missing: ({ parts }) =>
    parts.crankshaft === null
      ? `Crankshaft: the sheet does not tell how it is made (${onSheet('shortBlock', 'crankshaft')}: cast, nodular iron, forged).`
      : null,
};

const CRANKSHAFTS = {
  cast: 'V46.castCrankshaft',
  production: 'V46.castCrankshaft',
  nodular: 'V46.nodularCrankshaft',
  forged: 'V46.forgedCrankshaft',
} as const;

/** V46: the power the shop trusts the block with, which binds; else two-bolt main caps by power of each cylinder. */
export const blockLimit: LimitKind = {
  label: 'Block',
  ruleId: 'V46',
  bindsUsually: true,
  bindsWhere: 'where the sheet tells what it is trusted with',
  measure: (at) => {
    const { powerLimit, mainCaps } = at.parts;
    if (powerLimit !== null && at.power !== null) {
      const from = { section: 'shortBlock', field: 'powerLimit' } as const;
      return below({
        value: at.power.value,
        threshold: powerLimit,
        kind: 'power',
        rpm: at.power.rpm,
        from,
      });
    }
    const caps = mainCaps === 'two-bolt' ? aCylinder(at, 'V46.twoBolt') : null;
    return caps === null ? null : { ...caps, binds: false };
  },
  tell: (measured) =>
    typeof measured.from === 'string'
      ? tellOfCylinder(
          'two-bolt main caps',
          measured,
          ' Caps walk and the block splits: four-bolt caps or a girdle.',
        )
      : said`${figureOf(measured.value, 'power')}${atSpeed(measured.engineSpeedRpm)}; the short block is trusted with ${figureOf(measured.threshold, 'power')} on the sheet.${isPassed(measured) ? ' Another short block, or less power.' : ''}`,
  missing: ({ parts }) =>
    parts.mainCaps === null
      ? `Block: the sheet does not tell what it is trusted with (${onSheet('shortBlock', 'powerLimit')}), nor its main caps (${onSheet('shortBlock', 'mainCaps')}).`
      : null,
};

/** Highest power over cylinders, against a power of each cylinder. */
function aCylinder(at: EngineAtLimits, from: string): Measured | null {
  const { cylinders } = at.parts;
  if (at.power === null || cylinders === null || !(cylinders > 0)) return null;
  const value = at.power.value / cylinders;
  return below({ value, threshold: at.limit(from), kind: 'power', rpm: at.power.rpm, from });
}

function tellOfCylinder(parts: string, measured: Measured, remedy: string): Said {
  const passed = isPassed(measured) ? remedy : '';
  return said`${figureOf(measured.value, 'power')} from each cylinder on ${parts}; many have failed above ${figureOf(measured.threshold, 'power')}. ${MANY_FAILED}${passed}`;
}
