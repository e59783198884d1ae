import { figureOf, percentFigure } from '../../quantity/index.ts';
import { said } from '../../remark/index.ts';
import type { EngineAtLimits } from './engine-at-limits.ts';
import { above, atSpeed, below, isPassed, type LimitKind, type Measured, tighter } from './limit-kind.ts';
import { onSheet } from './on-sheet.ts';

/** V51: the boost that was asked not to be passed. */
export const boostCapLimit: LimitKind = {
  label: 'Boost that was asked for',
  ruleId: 'V51',
  bindsUsually: true,
  measure: (at) => (at.boostCap === null ? null : boostBelow(at, at.boostCap, null)),
  tell: (measured) =>
    said`${figureOf(measured.value, 'gaugePressure')} of boost${atSpeed(measured.engineSpeedRpm)}; not more than ${figureOf(measured.threshold, 'gaugePressure')} was asked for.${isPassed(measured) ? ' A larger pulley, or an engine that breathes better.' : ''}`,
  missing: () => null,
};

/** V50: what the shop trusts the parts with, which binds; and hollow floats of a carburettor that is blown through. */
export const boostLimit: LimitKind = {
  label: 'Boost that parts stand',
  ruleId: 'V50',
  bindsUsually: true,
  measure: (at) => {
    const { boostLimit: trusted, isBlowThrough, floats } = at.parts;
    const own =
      trusted === null ? null : boostBelow(at, trusted, { section: 'shortBlock', field: 'boostLimit' });
    const ofFloats =
      isBlowThrough && floats === 'hollow' ? boostBelow(at, at.limit('V50.floats'), 'V50.floats') : null;
    return tighter(own, ofFloats === null ? null : { ...ofFloats, binds: false });
  },
  tell: (measured) =>
    measured.from === 'V50.floats'
      ? said`${figureOf(measured.value, 'gaugePressure')} of boost on the floats of the carburettor; hollow ones have collapsed above ${figureOf(measured.threshold, 'gaugePressure')}.${isPassed(measured) ? ' Solid floats: one that sinks floods the engine.' : ''}`
      : said`${figureOf(measured.value, 'gaugePressure')} of boost; the short block is trusted with ${figureOf(measured.threshold, 'gaugePressure')} on the sheet.${isPassed(measured) ? ' Less boost, or another short block.' : ''}`,
  missing: (at) =>
    at.input === null
      ? null
      : `Boost that parts stand: the sheet does not tell what the short block is trusted with (${onSheet('shortBlock', 'boostLimit')}).`,
};

/** V22: the top ring's gap for its bore, above the boost from which it is looked at. */
export const ringGapLimit: LimitKind = {
  label: 'Ring gap',
  ruleId: 'V22',
  bindsUsually: false,
  measure: ({ parts, boost, limit }) => {
    const { topRingGap: value, bore } = parts;
    if (value === null || bore === null || boost === null || boost.value <= limit('V22.ringBoost'))
      return null;
    const from = 'V22.ringGap';
    return above({ value, threshold: limit(from) * bore, kind: 'length', rpm: null, from });
  },
  tell: (measured, { boost }) =>
    said`The top ring gap is ${figureOf(measured.value, 'length')} at ${figureOf(boost!.value, 'gaugePressure')} of boost; for this bore at least ${figureOf(measured.threshold, 'length')} is asked for.${isPassed(measured) ? ' Rings that butt lift the land off the piston.' : ''}`,
  missing: ({ parts, boost, limit }) =>
    boost !== null && boost.value > limit('V22.ringBoost') && parts.topRingGap === null
      ? `Ring gap: it is not on the sheet (${onSheet('shortBlock', 'topRingGap')}).`
      : null,
};

/** V22: plug gap for the boost; hard-charged plugs misfire. */
export const plugGapLimit: LimitKind = {
  label: 'Plug gap',
  ruleId: 'V22',
  bindsUsually: false,
  measure: ({ parts, boost, limit }) => {
    if (parts.plugGap === null || boost === null || boost.value <= 0) return null;
    const from =
      boost.value > limit('V22.plugBoostHigh')
        ? 'V22.plugGapHigh'
        : boost.value > limit('V22.plugBoost')
          ? 'V22.plugGapBoost'
          : 'V22.plugGap';
    const measured = below({ value: parts.plugGap, threshold: limit(from), kind: 'length', rpm: null, from });
    // A gap is set with a gauge of whole hundredths of a millimetre.
    return measured.value <= measured.threshold + GAUGE
      ? { ...measured, margin: Math.max(0, measured.margin) }
      : measured;
  },
  tell: (measured, { boost }) =>
    said`The plug gap is ${figureOf(measured.value, 'length')} at ${figureOf(boost!.value, 'gaugePressure')} of boost; ${figureOf(measured.threshold, 'length')} or less is usual.${isPassed(measured) ? ' Too wide a gap breaks up as boost rises: swinging lambda, torque like a saw.' : ''}`,
  levelPassed: () => 'note',
  missing: ({ parts, boost }) =>
    boost !== null && boost.value > 0 && parts.plugGap === null
      ? `Plug gap: it is not on the sheet (${onSheet('ignition', 'plugGap')}).`
      : null,
};

/** V44: what boost takes of the load that the intake spring has on its seat: `boost · π/4 · d²`. */
export const valveSpringLimit: LimitKind = {
  label: 'Valve springs',
  ruleId: 'V44',
  bindsUsually: false,
  measure: ({ parts, boost, limit }) => {
    if (parts.intakeValve === null || parts.springSeatLoad === null || boost === null) return null;
    const value = valveForce(boost.value, parts.intakeValve) / parts.springSeatLoad;
    const from = 'V44.share';
    return below({ value, threshold: limit(from), kind: 'ratio', rpm: boost.rpm, from });
  },
  tell: (measured, { parts, boost }) => {
    const force = valveForce(boost!.value, parts.intakeValve!);
    return said`${figureOf(boost!.value, 'gaugePressure')} of boost pushes an intake valve open with ${figureOf(force, 'force')}, ${percentFigure(measured.value)} of the ${figureOf(parts.springSeatLoad!, 'force')} on its seat; up to ${percentFigure(measured.threshold)} is usual.${isPassed(measured) ? ' Raise the seat load by that force, or the valve floats and meets the piston: torque that falls raggedly at one speed.' : ''}`;
  },
  missing: ({ parts, boost }) => {
    if (boost === null || boost.value <= 0) return null;
    return parts.springSeatLoad === null
      ? `Valve springs: their load is not on the sheet (${onSheet('heads', 'springSeatLoad')}).`
      : `Valve springs: the size of the valve is not on the sheet (${onSheet('heads', 'intakeValveDiameter')}).`;
  },
};

/** V45: production bolts by boost, a composition gasket by power of each cylinder. */
export const headClampingLimit: LimitKind = {
  label: 'Head clamping',
  ruleId: 'V45',
  bindsUsually: false,
  measure: (at) => {
    const { fasteners, gasket, cylinders } = at.parts;
    const bolts = fasteners === 'bolts' ? boostBelow(at, at.limit('V45.bolts'), 'V45.bolts') : null;
    const composition =
      gasket === 'composition' && at.power !== null && cylinders !== null
        ? below({
            value: at.power.value / cylinders,
            threshold: at.limit('V45.composition'),
            kind: 'power',
            rpm: at.power.rpm,
            from: 'V45.composition',
          })
        : null;
    return tighter(bolts, composition);
  },
  tell: (measured) =>
    measured.kind === 'power'
      ? said`${figureOf(measured.value, 'power')} from each cylinder on a composition gasket; they are told to serve up to ${figureOf(measured.threshold, 'power')} (of V8 engines).${isPassed(measured) ? ' A gasket of multi-layer steel, and a face that is flat and smooth enough for it.' : ''}`
      : said`${figureOf(measured.value, 'gaugePressure')} of boost on production head bolts; they are told to serve up to ${figureOf(measured.threshold, 'gaugePressure')}.${isPassed(measured) ? ' Studs: a head that lifts puts coolant into the cylinder, so bar the engine over by hand before cranking.' : ''}`,
  missing: (at) => {
    const { fasteners, gasket } = at.parts;
    if (at.input === null || (fasteners !== null && gasket !== null)) return null;
    return `Head clamping: the sheet does not tell both fasteners and gasket (${onSheet('heads', 'headFasteners')}; ${onSheet('heads', 'headGasket')}).`;
  },
};

/** N with which boost, Pa, pushes on the back of a valve, m. `valveForce(103e3, 0.0513)`: 213 N, 48 lbf */
const valveForce = (boost: number, diameter: number): number => boost * (Math.PI / 4) * diameter ** 2;

/** Half a step of the gauge, m. */
const GAUGE = 5e-6;

function boostBelow({ boost }: EngineAtLimits, threshold: number, from: Measured['from']): Measured | null {
  return boost === null
    ? null
    : below({ value: boost.value, threshold, kind: 'gaugePressure', rpm: boost.rpm, from });
}
