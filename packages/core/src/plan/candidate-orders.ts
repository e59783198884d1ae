/** Some pulls of one combination one after another. */
export interface Stay {
  key: string;
  count: number;
}

/** `continued`: only more of what is fitted. `blocks`: each once. `return`: back to the first. `twice`: round again. `in turn`: A B B A. */
export type OrderName = 'continued' | 'blocks' | 'return' | 'twice' | 'in turn';

export interface CandidateOrder {
  name: OrderName;
  stays: Stay[];
}

/** What is fitted and what was made already decide which orders make sense. */
export interface OrderQuestion {
  /** The baseline first. */
  keys: readonly string[];
  /** What is on the brake; `null`: nothing, the baseline is fitted first. */
  onTheBrake: string | null;
  made: ReadonlyMap<string, number>;
  /** Whether going from one to the other takes no spanner to the engine: then they can be pulled in turn. */
  inTurn: boolean;
  maximumPulls: number;
}

/** Fewest counted pulls of a combination in a plan: one alone cannot show that it went wrong. Common practice, no source. */
const FEWEST = 2;
/** More pulls than this one after another are worth less than a return. */
const MOST_A_STAY = 8;

/** Every order worth weighing, each with every count of pulls up to the most. */
export function candidateOrders(question: OrderQuestion): CandidateOrder[] {
  const { keys, onTheBrake, made, maximumPulls } = question;
  const first = onTheBrake ?? keys[0]!;
  const others = keys.filter((key) => key !== first);
  const areMade = others.every((key) => (made.get(key) ?? 0) > 0);
  const found: CandidateOrder[] = [];
  const add = (name: OrderName, stays: Stay[]) => {
    const kept = stays.filter(({ count }) => count > 0);
    const total = kept.reduce((sum, { count }) => sum + count, 0);
    if (total > 0 && total <= maximumPulls && keys.every((key) => isEnough(key, kept, made)))
      found.push({ name, stays: kept });
  };
  if (question.inTurn) {
    for (let each = 1; each <= MOST_A_STAY; each += 1) add('in turn', inTurn([first, ...others], each));
    return found;
  }
  const fewest = (made.get(first) ?? 0) > 0 ? 0 : 1;
  for (let start = fewest; start <= MOST_A_STAY; start += 1) {
    const stayed = { key: first, count: start };
    if (areMade) add('continued', [stayed]);
    for (const each of nearTo(start, made)) {
      const once = others.map((key) => ({ key, count: each }));
      add('blocks', [stayed, ...once]);
      for (const back of nearTo(start, made)) {
        if (back <= each) add('return', [stayed, ...once, { key: first, count: back }]);
      }
      if (start === each) add('twice', [stayed, ...once, stayed, ...once]);
    }
  }
  return found;
}

/** Counts worth weighing beside this one: about as many and up to twice; any where pulls were made already. */
function nearTo(count: number, made: ReadonlyMap<string, number>): number[] {
  const [low, high] = made.size > 0 ? [1, MOST_A_STAY] : [Math.max(1, count - 1), 2 * count];
  return Array.from({ length: high - low + 1 }, (_, place) => low + place).filter(
    (one) => one <= MOST_A_STAY,
  );
}

function isEnough(key: string, stays: readonly Stay[], made: ReadonlyMap<string, number>): boolean {
  const planned = stays.reduce((sum, stay) => sum + (stay.key === key ? stay.count : 0), 0);
  return planned + (made.get(key) ?? 0) >= FEWEST;
}

/** A B B A A B …: a drift cancels, whatever its size. */
function inTurn(keys: readonly string[], each: number): Stay[] {
  const order = Array.from({ length: each }, (_, round) =>
    round % 2 === 0 ? keys : keys.toReversed(),
  ).flat();
  const stays: Stay[] = [];
  for (const key of order) {
    const last = stays.at(-1);
    if (last?.key === key) last.count += 1;
    else stays.push({ key, count: 1 });
  }
  return stays;
}
