import {
  type Baseline,
  type MatchCase,
  type MatchReady,
  matchInputOf,
  withDriveOf,
} from '../airpath/index.ts';
import type { CombinationSheet } from '../combination/index.ts';
import { asAnotherSetUp, assumedBesideFit, fittedInput, withFit } from '../fit/index.ts';
import type { FuelSupply } from '../fuel/index.ts';
import type { Remark, Result } from '../remark/index.ts';
import { breathed, breathingAt } from './breathing.ts';
import { changesFor } from './changes-for.ts';
import type { ReachBuild, ReachChange } from './model.ts';
import { type Following, NOTHING_FOLLOWS, type Picked } from './picked.ts';
import type { SearchGround } from './search-ground.ts';
import { supplyOf } from './supply-of-rung.ts';

/** The engine with changes, as it stands on a sheet and as it is matched. */
export interface MadeEngine {
  build: ReachBuild;
  changes: ReachChange[];
  sheet: CombinationSheet;
  supply: FuelSupply;
  baseline: Baseline;
  /** On the air swallowed at each node; `null`: as it is. */
  breathing: number[] | null;
  /** Before another fuel. `null`: naturally aspirated. */
  match: MatchCase | null;
  assumptions: Remark[];
}

/**
 * The engine of a set of changes: its sheet written, the match made of it as of any sheet, the fit of its build taken in, and what breathes better
 * on top. `null`: the changed sheet cannot be matched.
 */
export function madeEngine(ground: SearchGround, picked: Picked, follows: Following): MadeEngine | null {
  const { input } = ground;
  const build = input.builds[picked.build]!;
  const baseline = ground.baselines[picked.build]!;
  const breathing = breathingAt(input, picked, baseline.engineSpeedRpm);
  const engine = { build, ...onPaper(ground, picked, follows), baseline, breathing };
  const { madeOf, fit } = build;
  if (madeOf === null) return { ...engine, match: null, assumptions: build.assumptions };
  const ready = readyBeforeDrive(ground, picked);
  if (!ready.ok) return null;
  const asOnSheet = withDriveOf(ready.value, engine.sheet, madeOf.stated);
  if (!asOnSheet.ok) return null;
  const taken = fittedTo(ground, asOnSheet.value, fit);
  // Another cam, heads or fuel is another set-up, even on the pulley that was pulled.
  const isTakenApart = picked.breathing.length > 0 || picked.fuel !== null;
  const fitted =
    isTakenApart && fit !== null && !ground.isRough ? asAnotherSetUp(taken, asOnSheet.value, fit) : taken;
  return {
    ...engine,
    match: breathing === null ? fitted : breathed(fitted, breathing, input, picked),
    assumptions: ground.once(`assumptions ${nameBeforeDrive(picked)}`, () =>
      onceEach([...build.assumptions, ...assumedBesideFit(ready.value.assumptions, fit)]),
    ),
  };
}

/** A made engine with parts that follow of themselves: of its match they change no more than what the belt holds. `null`: as above. */
export function withParts(
  ground: SearchGround,
  made: MadeEngine,
  picked: Picked,
  follows: Following,
): MadeEngine | null {
  const engine = { ...made, ...onPaper(ground, picked, follows) };
  const { match, build, sheet } = engine;
  if (match === null || follows.beltRibs === null) return engine;
  const onSheet = withDriveOf(match, sheet, build.madeOf?.stated);
  if (!onSheet.ok) return null;
  const { ribs } = onSheet.value.input.drive;
  return { ...engine, match: { ...match, input: { ...match.input, drive: { ...match.input.drive, ribs } } } };
}

/** What is changed, as told, on the sheet and between tank and cylinder. */
function onPaper(
  ground: SearchGround,
  picked: Picked,
  follows: Following,
): Pick<MadeEngine, 'changes' | 'sheet' | 'supply'> {
  const { sheet, change } = ground.input.builds[picked.build]!;
  const changes = changesFor(ground, picked, follows);
  return {
    changes,
    sheet: ground.write(sheet, change === null ? changes : changes.slice(1)),
    supply: supplyOf(ground.input, picked, follows),
  };
}

/** With the fit taken in; what a rough look finds has no spread, for nothing is drawn of it. */
function fittedTo({ isRough }: SearchGround, match: MatchCase, fit: ReachBuild['fit']): MatchCase {
  if (isRough) return { input: fit === null ? match.input : fittedInput(match.input, fit), spread: [] };
  return fit === null ? match : withFit(match, fit);
}

/** The match of a set of changes at any ratio from crankshaft to impeller, whatever its pulleys; before another fuel. `null`: none. */
export function matchAtRatio(ground: SearchGround, picked: Picked, ratio: number): MatchCase | null {
  const { input } = ground;
  const { fit } = input.builds[picked.build]!;
  const ready = readyBeforeDrive(ground, picked);
  if (!ready.ok) return null;
  const { drive } = ready.value.input;
  const turned = {
    input: { ...ready.value.input, drive: { ...drive, pulleyRatio: ratio / drive.stepUp } },
    spread: ready.value.spread,
  };
  const fitted = fittedTo(ground, turned, fit);
  const breathing = breathingAt(input, picked, turned.input.baseline.engineSpeedRpm);
  return breathing === null ? fitted : breathed(fitted, breathing, input, picked);
}

/** What a match is made of but for its drive. */
export const nameBeforeDrive = ({ build, cooler, fuel, breathing, speedLimit }: Picked): string =>
  [build, cooler, fuel, breathing.join('+'), speedLimit].join(' ');

/** The match as the sheet has it, with all that is changed but the drive: that of every size is its own. */
function readyBeforeDrive(ground: SearchGround, picked: Picked): Result<MatchReady> {
  return ground.once(`ready ${nameBeforeDrive(picked)}`, () => {
    const build = ground.input.builds[picked.build]!;
    const { stated = {}, tune = {}, ...from } = build.madeOf!;
    const { cooler: _, ...otherwise } = stated;
    const { coolerWater: __, ...notes } = tune;
    const changes = changesFor(ground, { ...picked, drive: null }, NOTHING_FOLLOWS);
    const isOtherCooler = picked.cooler !== null;
    return matchInputOf({
      ...from,
      baseline: ground.baselines[picked.build]!,
      sheet: ground.write(build.sheet, build.change === null ? changes : changes.slice(1)),
      stated: isOtherCooler ? otherwise : stated,
      tune: isOtherCooler ? notes : tune,
    });
  });
}

/** The same thing may be assumed by the build and by its match. */
export const onceEach = (remarks: readonly Remark[]): Remark[] =>
  remarks.filter((one, place) => remarks.findIndex((other) => other.message === one.message) === place);
