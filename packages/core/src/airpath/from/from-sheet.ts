import type { AirState } from '../../air/index.ts';
import { type CombinationSheet, deriveFigures, sheetNumber } from '../../combination/index.ts';
import { type Fuel, fuelOfSheet } from '../../fuel/index.ts';
import type { Places, Tune } from '../../pull/index.ts';
import { figureOf, numberFigure, percentFigure } from '../../quantity/index.ts';
import { accepted, type Remark, type Result, refused, remark, said } from '../../remark/index.ts';
import { inputRemarks } from '../match/input-remarks.ts';
import { troubleOfInput } from '../match/input-trouble.ts';
import type {
  Baseline,
  Bypass,
  FittedMap,
  MatchCase,
  MatchInput,
  MatchReady,
  StatedModel,
} from '../model.ts';
import { airFlowFigure } from '../way/air-flow-figure.ts';
import { chargeOfSheet, tapOf } from './from-sheet-charge.ts';
import { coolerOfSheet } from './from-sheet-cooler.ts';
import { driveOfSheet } from './from-sheet-drive.ts';
import { lossesOfSheet } from './from-sheet-losses.ts';
import { gasOfAir } from './gas-of-air.ts';
import { flowSpread, headSpread, priorSpread } from './prior-spread.ts';
import { wordsOf } from './sheet-words.ts';
import { Taken } from './taken.ts';

export interface SheetToMatch {
  sheet: CombinationSheet;
  baseline: Baseline;
  map: FittedMap;
  /** The air of the match. */
  air: AirState;
  /** What a person states of the model himself; goes before the sheet. */
  stated?: StatedModel;
  /** Of the pull that is matched: its cooler water, its taps. */
  tune?: Tune;
  places?: Places;
  /** On which the pulls behind the baseline were made; missing: that of the sheet. See `withOtherFuel`. */
  fuelBehind?: Fuel;
}

/** Exhaust over ambient pressure of an engine on a brake with open pipes, at full power (common practice, no source). */
const USUAL_EXHAUST_RATIO = 1.05;
/** Ratio of specific heats of the gas that is left in a cylinder, in the pressure term (Taylor, from memory). */
const PRESSURE_TERM_RATIO = 1.4;
/** Manifold temperature's exponent: the same root as in the standards of power correction. */
const HEAT_EXPONENT = 0.5;
/** Pa of friction for each Pa of manifold pressure: 0.005 of peak pressure (Chen and Flynn, from memory), which rises by some 40. */
const FRICTION_RISE = 0.2;
/** Share of the compressor's air past a bypass that leaks, where nobody said how much (common practice, no source). */
const USUAL_LEAK = 0.03;

/**
 * A match made ready from a combination's sheet. What is stated goes first, then the sheet, then an assumption, and each of
 * those is a remark with its figure and ground. Refused where something is missing that cannot be assumed: displacement, a pulley,
 * the step-up; or where the sheet contradicts itself.
 *
 * @example matchInputOf({ sheet, baseline, map, air }) // { ok: true, value: { input, spread, assumptions } }
 */
export function matchInputOf(from: SheetToMatch): Result<MatchReady> {
  const { sheet, baseline, map, air, stated = {}, tune = {}, places = {} } = from;
  const type = wordsOf(sheet, 'supercharger', 'type');
  if (type !== '' && !/centrifugal/.test(type)) return refused(notCentrifugal(type));
  const refusal = refusalOfBaseline(baseline);
  if (refusal !== null) return refused(refusal);

  const figures = deriveFigures(sheet);
  const figure = (id: 'displacement' | 'compressionRatio') => figures.find((one) => one.id === id)!;
  const displacement = stated.displacement ?? figure('displacement').value;
  if (displacement === null) return refused(noDisplacement(figure('displacement').missing ?? ''));
  if (!(displacement > 0)) return refused(noDisplacement(`it is ${displacement}`));

  const taken = new Taken();
  const drive = driveOfSheet(sheet, stated, taken);
  if (!drive.ok) return drive;
  const cooler = coolerOfSheet(sheet, { baseline, stated, tune }, taken);
  if (!cooler.ok) return cooler;
  if (map.isDiameterAssumed) taken.assumptions.push(diameterAssumed(map.wheelExitDiameter));
  if (map.form === 'rated') taken.assumptions.push(mapAssumed(map));

  const input: MatchInput = {
    baseline,
    displacement,
    compressionRatio: stated.compressionRatio ?? figure('compressionRatio').value,
    air,
    gas: { ...gasOfAir(air), ...gasStated(stated) },
    compressor: {
      map,
      headScale: stated.headScale ?? 1,
      flowScale: stated.flowScale ?? 1,
      efficiencyShift: stated.efficiencyShift ?? 0,
      constantEfficiency: stated.constantEfficiency ?? null,
    },
    drive: drive.value,
    ...lossesOfSheet(sheet, baseline, stated, taken),
    bypass: bypassOf(sheet, stated, taken),
    cooler: cooler.value,
    tap: tapOf(places, stated),
    charge: chargeOfSheet(from.fuelBehind ?? fuelOfSheet(sheet).fuel, from, taken),
    swallowing: {
      scale: stated.swallowingScale ?? 1,
      exhaustPressureRatio: exhaustRatioOf(sheet, baseline, stated, taken),
      pressureTermRatio:
        stated.pressureTermRatio === undefined ? PRESSURE_TERM_RATIO : stated.pressureTermRatio,
      heatExponent: stated.heatExponent ?? HEAT_EXPONENT,
      breathing: breathingOf(baseline, stated),
    },
    work: {
      factor: workFactorOf(cooler.value, stated, taken),
      gasExchange: stated.gasExchange ?? true,
      frictionRise: stated.frictionRise ?? FRICTION_RISE,
    },
  };
  const [trouble, ...more] = troubleOfInput(input);
  if (trouble !== undefined) return refused(trouble, ...more);
  const spread = priorSpread(input, {
    stated,
    isEffectivenessKnown: stated.cooler != null || sheetNumber(sheet, 'cooler', 'effectiveness') !== null,
    isSlipKnown: stated.slip !== undefined || sheetNumber(sheet, 'drive', 'slip') !== null,
  });
  return accepted({ input, spread, assumptions: [...inputRemarks(input), ...taken.assumptions] });
}

/**
 * A match that was made of a sheet, with the drive of another that differs in its drive or step-up alone: all else is as it was, to the last bit. A search asks
 * it once a pulley.
 *
 * @example withDriveOf(ready, otherPulley).input.drive.pulleyRatio
 */
export function withDriveOf(
  { input, spread }: MatchCase,
  sheet: CombinationSheet,
  stated: StatedModel = {},
): Result<MatchCase> {
  const drive = driveOfSheet(sheet, stated, new Taken());
  return drive.ok ? accepted({ input: { ...input, drive: drive.value }, spread }) : drive;
}

function gasStated({ specificHeat, gasConstant }: StatedModel): Partial<MatchInput['gas']> {
  return {
    ...(specificHeat === undefined ? {} : { specificHeat }),
    ...(gasConstant === undefined ? {} : { gasConstant }),
  };
}

function bypassOf(sheet: CombinationSheet, stated: StatedModel, taken: Taken): Bypass {
  if (stated.bypass !== undefined) return stated.bypass;
  const words = wordsOf(sheet, 'supercharger', 'bypassAtFullThrottle');
  const leak = sheetNumber(sheet, 'supercharger', 'bypassLeak');
  if (words === 'open') return { state: 'open', leak: 0 };
  if (words !== 'leaking' && !(words === '' && leak !== null && leak > 0)) return { state: 'shut', leak: 0 };
  return {
    state: 'leaking',
    leak: taken.first([leak], () => ({
      value: USUAL_LEAK,
      because: remark(
        'note',
        'leak-assumed',
        said`The bypass leaks and nobody said how much: ${percentFigure(USUAL_LEAK)} of the compressor's air is taken (common practice, no source).`,
      ),
    })),
  };
}

function exhaustRatioOf(
  sheet: CombinationSheet,
  { air }: Baseline,
  stated: StatedModel,
  taken: Taken,
): number {
  const backPressure = sheetNumber(sheet, 'exhaust', 'backPressure');
  const onSheet = backPressure === null ? null : 1 + backPressure / air.pressure;
  return taken.first([stated.exhaustPressureRatio, onSheet], () => ({
    value: USUAL_EXHAUST_RATIO,
    because: remark(
      'note',
      'exhaust-pressure-assumed',
      said`The back pressure of the exhaust is not on the sheet: ${percentFigure(USUAL_EXHAUST_RATIO - 1)} above ambient at full power is taken (open pipes; common practice, no source).`,
    ),
  }));
}

/** Spark is taken back under boost; the colder the charge, the less (common practice, no source). */
function workFactorOf(cooler: MatchInput['cooler'], stated: StatedModel, taken: Taken): number {
  return taken.first([stated.workFactor], () => {
    const value = cooler === null ? 0.96 : cooler.by === 'ice water' ? 1 : 0.98;
    return {
      value,
      because: remark(
        'note',
        'work-factor-assumed',
        said`Under boost the spark is taken back: ${numberFigure(value, 2)} of the work of the air without boost is taken (common practice, no source). A boosted pull tells it.`,
      ),
    };
  });
}

function breathingOf({ engineSpeedRpm }: Baseline, { breathing }: StatedModel): number[] | null {
  if (breathing === undefined) return null;
  const { fromRpm, toRpm, share } = breathing;
  return engineSpeedRpm.map((speed) => (speed >= fromRpm && speed <= toRpm ? 1 + share : 1));
}

function refusalOfBaseline({ engineSpeedRpm, brakePower, airFlow }: Baseline): Remark | null {
  if (engineSpeedRpm.length < 2) return tooFewNodes(engineSpeedRpm.length);
  const odd = engineSpeedRpm.findIndex((_, node) => !(brakePower[node]! > 0 && airFlow[node]! > 0));
  return odd < 0 ? null : nothingSwallowed(engineSpeedRpm[odd]!, brakePower[odd]!, airFlow[odd]!);
}

const tooFewNodes = (count: number) =>
  remark(
    'refusal',
    'baseline-too-short',
    `The pull without the supercharger has ${count} engine speeds; at least two are needed.`,
  );

const nothingSwallowed = (speed: number, power: number, flow: number) =>
  remark(
    'refusal',
    'baseline-not-above-zero',
    said`At ${figureOf(speed, 'engineSpeed')} the engine without supercharger makes ${figureOf(power, 'power')} on ${airFlowFigure(flow)} of air; both must be above zero. Leave that speed out.`,
  );

const notCentrifugal = (type: string) =>
  remark(
    'refusal',
    'not-centrifugal',
    `The supercharger on the sheet is ${type}; the match is for centrifugal ones, whose boost follows from a compressor map. If it is one, write "centrifugal" under supercharger, type.`,
  );

const noDisplacement = (why: string) =>
  remark(
    'refusal',
    'no-displacement',
    `The displacement is not known (${why}), so what the engine swallows is not either. Enter bore, stroke and cylinders, or the displacement, under short block.`,
  );

const diameterAssumed = (diameter: number) =>
  remark(
    'note',
    'wheel-diameter-assumed',
    said`The wheel's exit diameter is not known: ${figureOf(diameter, 'length')} is taken, which fits its rating. Measure it and enter it on the sheet.`,
  );

const mapAssumed = (map: FittedMap) =>
  remark(
    'note',
    'map-assumed',
    said`${map.name} has no measured map: a generic stage is scaled to it, ±${percentFigure(2 * headSpread(map))} of head and ±${percentFigure(2 * flowSpread(map))} of flow in the band of 95 of 100. A map of points, or one boosted pull, makes it narrower.`,
  );
