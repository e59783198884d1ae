import { GUESSED_SURGE } from './map-generic.ts';
import { fitHead, offLine, type PlainPoint } from './map-lines-head.ts';
import { type LineTerms, type MachSpan, riseOfHead, termsAt } from './map-lines-model.ts';
import { fitWork, workAt } from './map-lines-work.ts';
import { machNodes, neverFalling } from './map-table.ts';

/** A point further off its line in flow or pressure ratio says nothing of the work either. */
const FAR_OFF = 0.05;

/** Fits lines to dimensionless points and lays them down as columns over tip Mach number. */
export function linesColumns(
  points: readonly PlainPoint[],
  lineEnds: readonly LineEnds[],
  leftEnd: 'surge' | 'not known',
): Record<string, number[]> {
  const machs = points.map(({ mach }) => mach);
  const span: MachSpan = { low: Math.min(...machs), high: Math.max(...machs) };
  const coefficients = fitHead(points, span);
  const termsOf = (mach: number): LineTerms => termsAt(coefficients, span, mach);
  const near = points.filter((point) => Math.abs(offLine(termsOf(point.mach), point)) < FAR_OFF);
  const work = fitWork(near, span, termsOf);
  const nodes = machNodes(Math.max(1.6, 1.35 * span.high));
  const terms = nodes.map((mach) => termsOf(Math.max(mach, 1e-3)));
  const column = (of: (line: LineTerms, node: number) => number): number[] => terms.map(of);
  const choke = neverFalling(column(({ chokeFlow }, node) => (node === 0 ? 0 : chokeFlow)));
  const top = neverFalling(column(({ topFlow, chokeFlow }, node) => (topFlow / chokeFlow) * choke[node]!));
  const surgeShare = surgeShares(lineEnds, leftEnd, nodes, termsOf);
  const works = nodes.map((mach) => workAt(work, span, mach));
  const told = points.flatMap(({ efficiency }) => (efficiency === null ? [] : [efficiency]));
  return {
    machStep: [nodes[1]!],
    choke,
    top,
    surge: neverFalling(choke.map((flow, node) => flow * surgeShare[node]!)),
    head: headsNeverFalling(terms, nodes),
    flowExponent: column(({ flowExponent }) => flowExponent),
    headExponent: column(({ headExponent }) => headExponent),
    droop: column(({ droop }) => droop),
    work: works.map(([level]) => level),
    workSlope: works.map(([, slope]) => slope),
    workCurve: works.map(([, , curve]) => curve),
    mostEfficiency: [told.length === 0 ? 0.85 : Math.min(0.95, Math.max(...told))],
  };
}

/** Heads with which the pressure ratio at the top never falls with speed. */
function headsNeverFalling(terms: readonly LineTerms[], nodes: readonly number[]): number[] {
  const rises = neverFalling(terms.map(({ head }, node) => riseOfHead(head, nodes[node]!)));
  return rises.map((rise, node) => (node === 0 ? terms[0]!.head : rise / riseOfHead(1, nodes[node]!)));
}

/** Flows of a measured line's ends, dimensionless. */
export interface LineEnds {
  mach: number;
  low: number;
  high: number;
}

/** Surge flow over choke flow at each node: through the lines' left ends where these are surge, else by the guess, and never right of a point. */
function surgeShares(
  lines: readonly LineEnds[],
  leftEnd: 'surge' | 'not known',
  nodes: readonly number[],
  termsOf: (mach: number) => LineTerms,
): number[] {
  const ends = lines.map(({ mach, low }) => ({ mach, share: low / termsOf(mach).chokeFlow }));
  const measured = (mach: number): number => {
    const above = ends.findIndex((end) => end.mach >= mach);
    if (above === 0) return ends[0]!.share;
    if (above === -1) return ends.at(-1)!.share;
    const [low, high] = [ends[above - 1]!, ends[above]!];
    const part = (mach - low.mach) / (high.mach - low.mach);
    return low.share + part * (high.share - low.share);
  };
  return nodes.map((mach) => {
    if (leftEnd === 'surge') return Math.min(0.98, measured(mach));
    const { topFlow, chokeFlow } = termsOf(Math.max(mach, 1e-3));
    return Math.min(measured(mach), (GUESSED_SURGE * topFlow) / chokeFlow);
  });
}
