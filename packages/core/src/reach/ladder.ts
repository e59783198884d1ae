import type { Said } from '../remark/index.ts';
import { unknownLimits } from '../rule/index.ts';
import { AS_IT_IS } from './as-it-is.ts';
import { changesFor } from './changes-for.ts';
import { chosenOf, costOf, type Way } from './chosen.ts';
import { judged, whatRan } from './judged.ts';
import type { LeastRemedy, ReachAnswer, ReachInput } from './model.ts';
import { remarksOf } from './remarks.ts';
import { reasonOf, remediesOf } from './remedies.ts';
import { rungId } from './rung-id.ts';
import type { Screened, ScreenedOne } from './screen.ts';
import { type SearchGround, searchGround } from './search-ground.ts';
import { type LadderRung, rungOf, wholeRung } from './whole-rung.ts';

/** A search put together, before its bands. */
export interface Ladder {
  now: LadderRung;
  rungs: LadderRung[];
  feasible: boolean;
  reason: Said | null;
  remedies: LeastRemedy[];
  searched: ReachAnswer['searched'];
  remarks: ReachAnswer['remarks'];
}

/**
 * The ladder of what was screened, in whatever parts it was: the ways worth showing, solved at all speeds, cheapest first. Why there is none and what would
 * make one is looked for only where `isWhole`: all parts are there.
 */
export function ladderOf(input: ReachInput, screened: readonly Screened[], isWhole = true): Ladder {
  const ground = searchGround(input);
  const present = judged(ground, AS_IT_IS);
  if (present === null) throw new Error('the engine as it is cannot be matched; troubleOfTarget says so');
  const found = foundIn(screened);
  const ways = found
    .filter(({ holds }) => holds)
    .map((one): Way & { one: ScreenedOne } => wayOf(ground, one))
    .filter(
      ({ changes, reaches, one }) =>
        changes.length > 0 && (reaches || one.figure > present.figure * (1 + MORE)),
    );
  const rungs = chosenWhole(ground, ways, input.mostRungs);
  const feasible = rungs.some(({ reaches }) => reaches);
  const isAsked = isWhole && !feasible;
  return {
    now: rungOf(ground, present),
    rungs,
    feasible,
    reason: isAsked ? reasonOf(input, found) : null,
    remedies: isAsked ? remediesOf(ground, found) : [],
    searched: {
      combinations: screened.reduce((sum, { combinations }) => sum + combinations, 0),
      solved: screened.reduce((sum, { solved }) => sum + solved, 0),
    },
    remarks: [...unknownLimits(present.at), ...remarksOf(input, present, whatRan(ground))],
  };
}

/** Share by which a way that does not reach the target must make more than there is now. */
const MORE = 0.002;
/** Times that a choice is made anew where a way chosen turned out otherwise. */
const MOST_ROUNDS = 4;

/** The ways worth showing, solved at all speeds: where a rough look said that one reaches and the whole one does not, or the other way round, they are chosen anew. */
function chosenWhole(
  ground: SearchGround,
  ways: readonly (Way & { one: ScreenedOne })[],
  most: number,
): LadderRung[] {
  const { power } = ground.input.target;
  const whole = new Map<string, LadderRung | null>();
  let known = ways;
  for (let round = 0; ; round++) {
    const chosen = chosenOf(known, most);
    const rungs = chosen.flatMap((way) => {
      if (!whole.has(way.id)) whole.set(way.id, wholeRung(ground, way.one.picked));
      return whole.get(way.id) ?? [];
    });
    const isOtherwise = chosen.some(({ id, reaches }) => whole.get(id)?.reaches !== reaches);
    if (!isOtherwise || round === MOST_ROUNDS) return rungs;
    known = known.flatMap((way) => {
      const rung = whole.get(way.id);
      if (rung === undefined) return [way];
      return rung === null ? [] : [{ ...way, reaches: rung.reaches, likely: rung.reached.value / power }];
    });
  }
}

/** In the order of the groups, so that parts give what the whole gives. */
const foundIn = (screened: readonly Screened[]): ScreenedOne[] =>
  screened
    .flatMap(({ groups }) => groups)
    .sort((a, b) => a.place - b.place)
    .flatMap((group) => group.found);

function wayOf(ground: SearchGround, one: ScreenedOne): Way & { one: ScreenedOne } {
  const changes = changesFor(ground, one.picked, one.follows);
  return {
    one,
    id: rungId(changes),
    changes,
    cost: costOf(changes),
    reaches: one.reaches,
    likely: one.figure / ground.input.target.power,
    margin: one.margin,
  };
}
