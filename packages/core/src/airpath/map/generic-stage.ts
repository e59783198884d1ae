import { MAP_GAS, pressureRatioOfRise } from './map-gas.ts';

/**
 * A generic centrifugal stage for a compressor whose map is not at hand: dimensionless, from the ratio of diameters, the number of blades and their
 * backsweep, and scaled by one rated point. Its structure follows published algebraic map methods (four numbers at the design point; the shape
 * blended by a logistic in tip Mach number); the coefficients are our own, held against three measured stages in `checks/compressor-maps`. It is
 * made for vaneless diffusers: a vaned one chokes near vertically and is missed by a quarter.
 */
export interface GenericStage {
  /** Inducer's tip and hub over the exit diameter. */
  inletTip: number;
  inletHub: number;
  /** rad from radial */
  backsweep: number;
  blades: number;
  /** Tip Mach number of the design point. */
  designMach: number;
  /** Polytropic efficiency there. */
  designEfficiency: number;
  /** Flow over (density × tip speed × exit diameter²) there. */
  designFlow: number;
  /** On the work of the slip formula: what friction of the disc and recirculation add. */
  workFactor: number;
}

/** What is taken where the geometry is not known: a usual small stage, common practice, no source. */
export const USUAL_STAGE: Omit<GenericStage, 'designFlow'> = {
  inletTip: 0.7,
  inletHub: 0.28,
  backsweep: (35 * Math.PI) / 180,
  blades: 16,
  designMach: 1.05,
  designEfficiency: 0.78,
  workFactor: 1.04,
};

/** Design flow coefficient by the inducer's area alone, where no rated point says it: one standard deviation is a quarter of it. */
export const flowOfInducer = ({ inletTip, inletHub }: Pick<GenericStage, 'inletTip' | 'inletHub'>): number =>
  0.42 * inletTip * (Math.PI / 4) * (inletTip ** 2 - inletHub ** 2);

/** Work coefficient (enthalpy rise over tip speed²) at a flow over the design flow: slip, and less whirl with more flow. */
export function genericWork(stage: GenericStage, flowOverDesign: number): number {
  const slip = 1 - Math.sqrt(Math.cos(stage.backsweep)) / stage.blades ** 0.7;
  return Math.max(0.05, stage.workFactor * (slip - 0.33 * Math.tan(stage.backsweep) * flowOverDesign));
}

/** The stage at one tip Mach number. */
export interface GenericLine {
  /** Largest flow coefficient, and that of the best efficiency. */
  largestFlow: number;
  bestFlow: number;
  bestEfficiency: number;
  /** Exponents of the efficiency left and right of its best, and the share of it that falls off at choke. */
  leftExponent: number;
  rightExponent: number;
  falling: number;
}

export function genericLine(stage: GenericStage, tipMach: number): GenericLine {
  const mach = Math.max(tipMach, 0.05);
  const blend = blendOf(mach);
  const largestFlow =
    ((stage.designFlow / bestShareOf(stage.designMach)) * chokeOf(stage, mach)) /
    chokeOf(stage, stage.designMach);
  const beyond = (value: number): number => Math.max(0, value - 0.9);
  return {
    largestFlow,
    bestFlow: bestShareOf(mach) * largestFlow,
    bestEfficiency: Math.min(
      stage.designEfficiency + 0.02,
      stage.designEfficiency - 0.08 * (beyond(mach) - beyond(stage.designMach)),
    ),
    leftExponent: 2.1 - 0.4 * blend,
    rightExponent: 2 + 1.5 * blend,
    falling: 2 - 1.7 * blend,
  };
}

/** Polytropic efficiency on a line; below 0 near choke at low speed, where the stage is a restriction. */
export function genericEfficiency(line: GenericLine, flow: number): number {
  const { largestFlow, bestFlow, bestEfficiency, leftExponent, rightExponent, falling } = line;
  if (flow <= bestFlow)
    return bestEfficiency * (1 - (1 - Math.max(0, flow) / bestFlow) ** leftExponent) ** (1 / leftExponent);
  const beyond = Math.min(1, (flow - bestFlow) / (largestFlow - bestFlow));
  return bestEfficiency * (1 - falling + falling * (1 - beyond ** rightExponent) ** (1 / rightExponent));
}

/** Pressure ratio for a work (enthalpy rise over inlet enthalpy) at a polytropic efficiency. */
export const pressureRatioOfWork = (workRise: number, polytropicEfficiency: number): number =>
  pressureRatioOfRise(workRise) ** polytropicEfficiency;

/** Low and high tip Mach number blended: 0 far below 0.95, 1 far above. */
const blendOf = (mach: number): number => 1 / (1 + Math.exp(-(mach - 0.95) / 0.13));

/** Flow of the best efficiency over the largest. */
const bestShareOf = (mach: number): number => 0.62 + 0.22 * blendOf(mach);

/** Largest flow over that at the design Mach number: bound by loss at low speed, by the choked inducer at high speed. */
export function chokeOf(
  { inletTip, inletHub, designMach }: Pick<GenericStage, 'inletTip' | 'inletHub' | 'designMach'>,
  mach: number,
): number {
  const inducer = (at: number): number =>
    (1 / at) * ((1 + 0.1 * (inletTip ** 2 + inletHub ** 2) * at * at) / 1.2) ** 3;
  return (1.4 ** -4 + (inducer(mach) / inducer(designMach)) ** -4) ** -0.25;
}

/** Work rise over inlet enthalpy of a work coefficient at a tip Mach number. */
export const workRiseOf = (work: number, mach: number): number => (MAP_GAS.ratio - 1) * work * mach * mach;
