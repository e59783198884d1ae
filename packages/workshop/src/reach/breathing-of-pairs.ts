import { type Baseline, type MatchCase, solveMatch, type ViewedPull } from '@pullbook/core/airpath';
import {
  type Combination,
  isSupercharged,
  type PartChange,
  sectionTitle,
  sheetValue,
} from '@pullbook/core/combination';
import { scaleBaseline } from '@pullbook/core/fit';
import { mean } from '@pullbook/core/numeric';
import type { CostClass, ReachBreathing, SheetEdit } from '@pullbook/core/reach';
import { type Remark, said } from '@pullbook/core/remark';
import { measuredPair } from '../match/choose-baseline.ts';
import { engineDifferences, isSameChange } from '../match/engine-alone.ts';
import { type EngineAtHand, pulledOf } from '../match/engine-at-hand.ts';

export interface PairsOf {
  combination: Combination;
  engine: EngineAtHand;
  baseline: Baseline;
  cost: CostClass;
  /** Pulls of a combination, all in one standard of correction. */
  viewed: (of: Combination) => Promise<ViewedPull[]>;
  /** The match of a supercharged combination of this engine; `null`: it has none. */
  matchOf: (of: Combination) => Promise<MatchCase | null>;
}

const TWO_SIDED_95 = 1.96;

/**
 * What changes of the engine itself did to its breathing, one for each that a pair of pulled combinations shows: heads, cam, intake,
 * exhaust. Without boost the air goes as indicated power. Under boost more air swallowed takes some of the boost away, so the gain in
 * power is led back through the match of the pair's first: what it would have to swallow more to gain what was measured. Of an engine
 * without a supercharger such a pair is taken as a scaled baseline takes it.
 */
export async function breathingOfPairs(
  from: PairsOf,
): Promise<{ breathing: ReachBreathing[]; remarks: Remark[] }> {
  const { combination, engine } = from;
  const pulled = pulledOf(engine);
  const changes: { after: Combination; change: PartChange[] }[] = [];
  for (const after of engine.combinations) {
    const change = engineDifferences(combination.sheet, after.sheet);
    if (change.length > 0 && !changes.some((one) => isSameChange(one.change, change)))
      changes.push({ after, change });
  }
  const breathing: ReachBreathing[] = [];
  const remarks: Remark[] = [];
  for (const { after, change } of changes) {
    const pair = measuredPair(change, pulled, combination);
    if (pair === null || fuelOf(pair.before) !== fuelOf(pair.after)) continue;
    const made = await breathingOf(pair, { after, change }, from);
    if ('breathing' in made) breathing.push(made.breathing);
    else remarks.push(...made.remarks);
  }
  return { breathing, remarks };
}

async function breathingOf(
  { before, after }: { before: Combination; after: Combination },
  { after: as, change }: { after: Combination; change: PartChange[] },
  { baseline, combination, cost, viewed, matchOf }: PairsOf,
): Promise<{ breathing: ReachBreathing } | { remarks: Remark[] }> {
  const what = `"${after.name}" against "${before.name}"`;
  const underBoost = isSupercharged(before.sheet);
  const pulls = { before: await viewed(before), after: await viewed(after) };
  // Without boost it is what a scaled baseline is, with its band, so that a search and a match say the same of such an engine.
  const match = underBoost && isSupercharged(combination.sheet) ? await matchOf(before) : null;
  // Led back through the match nothing of a gain under boost is left open but the pair's own scatter.
  const scaled = scaleBaseline({
    of: baseline,
    nearest: combination.name,
    pair: { ...pulls, what, underBoost: underBoost && match === null },
  });
  if (!scaled.ok) return { remarks: scaled.remarks.map((one) => ({ ...one, level: 'note' as const })) };
  const { baseline: after1, power } = scaled.value;
  const at = after1.engineSpeedRpm;
  const nodeOf = (speed: number) => baseline.engineSpeedRpm.indexOf(speed);
  const ofAir = at.map((speed, node) => after1.airFlow[node]! / baseline.airFlow[nodeOf(speed)]!);
  const ofPower = at.map((speed, node) => after1.brakePower[node]! / baseline.brakePower[nodeOf(speed)]!);
  const led = match === null ? null : ledBack(match, at, ofPower);
  const spreadOfPower = mean(
    at.map((_, node) => Math.log(power.high[node]! / power.low[node]!) / (2 * TWO_SIDED_95)),
  );
  const pullIds = [...pulls.before, ...pulls.after].map(({ pull }) => pull.id);
  const isItself = before.id === combination.id && !underBoost;
  return {
    breathing: {
      id: `as ${as.id}`,
      name: nameOf(change),
      engineSpeedRpm: at,
      factor: led?.factor ?? ofAir,
      spread: spreadOfPower / (led?.sensitivity ?? 1),
      ground: isItself ? 'measured by you' : 'scaled from your data',
      from: said`${what}, ${pullIds.length} pulls${underBoost ? ' under boost' : ''}: ${led === null ? 'air as indicated power' : 'what had to be swallowed more, led back through the match'}`,
      edits: editsOf(change, as),
      cost,
      pullIds,
    },
  };
}

/** Steps that come within 1e-4 of a gain of power. */
const STEPS = 12;
const NUDGE = 1.01;

/**
 * The air by which a match must breathe better for its power to rise by what was measured, a factor at each speed; and by how much of
 * a share of air its power rises, on average. `null`: the match has no solution there.
 */
function ledBack(
  { input }: MatchCase,
  speeds: readonly number[],
  ratio: readonly number[],
): { factor: number[]; sensitivity: number } | null {
  const nodes = speeds.map((speed) => input.baseline.engineSpeedRpm.indexOf(speed));
  if (nodes.some((node) => node < 0)) return null;
  const powerWith = (factor: readonly number[]): number[] => {
    const breathing = input.baseline.engineSpeedRpm.map((_, node) => {
      const place = nodes.indexOf(node);
      return (input.swallowing.breathing?.[node] ?? 1) * (place < 0 ? 1 : factor[place]!);
    });
    const { figures } = solveMatch({ ...input, swallowing: { ...input.swallowing, breathing } });
    return nodes.map((node) => figures.brakePower[node]!);
  };
  const asIs = powerWith(speeds.map(() => 1));
  let factor = [...ratio];
  for (let step = 0; step < STEPS; step++) {
    const power = powerWith(factor);
    factor = factor.map((one, place) => (one * ratio[place]! * asIs[place]!) / power[place]!);
  }
  const nudged = powerWith(factor.map((one) => one * NUDGE));
  const last = powerWith(factor);
  const sensitivity = mean(nudged.map((one, place) => Math.log(one / last[place]!) / Math.log(NUDGE)));
  return factor.every(Number.isFinite) && sensitivity > 0.1 ? { factor, sensitivity } : null;
}

const fuelOf = ({ sheet }: Combination): string =>
  sheetValue(sheet, 'fuel', 'name')?.text.trim().toLowerCase() ?? '';

/** Lines that say which part it is, and not how it is. */
const NAMING = ['profile', 'name', 'type'];

/** `12° longer cam`, `Cam: road grind`; of a part without a name its first line, `Cam: intake duration at 1 mm 236 deg and 3 more lines` */
function nameOf(change: readonly PartChange[]): string {
  const [{ section, field, label, after }, ...others] = change as [PartChange, ...PartChange[]];
  const part = sectionTitle(section);
  const text = after ?? 'not told';
  // `12° longer cam` says itself which part it is.
  if (NAMING.includes(field) && after !== null)
    return text.toLowerCase().includes(part.toLowerCase()) ? text : `${part}: ${text}`;
  const more =
    others.length === 0 ? '' : ` and ${others.length} more ${others.length === 1 ? 'line' : 'lines'}`;
  const line = label.startsWith(`${part}, `) ? label.slice(part.length + 2) : label;
  return `${part}: ${line} ${text}${more}`;
}

/** Lines as they are on the sheet of the other; a table is not a line that can be entered, and is told in the name alone. */
function editsOf(change: readonly PartChange[], { sheet }: Combination): SheetEdit[] {
  return change.flatMap(({ section, field }) => {
    const value = sheetValue(sheet, section, field);
    return value?.kind === 'table' ? [] : [{ section, field, text: value?.text ?? null }];
  });
}
