import type { CombinationSheet } from '@pullbook/core/combination';
import type { KeptAnswer } from '@pullbook/core/reach';
import type { MergeKind } from './kinds.ts';
import type { MergeState } from './state.ts';
import type { Row, Thing } from './things.ts';

/**
 * A newcomer as it is called here: a name of ours stays ours, so an engine, a cell or a compressor map of the same name
 * says where it is from, and the pulls, sessions and sheets that came with it follow. Trials, publications and
 * enquiries speak of our pull where both books have it.
 */
export function inOurWords(state: MergeState, kind: MergeKind, thing: Thing, own: Map<string, Thing>): Thing {
  switch (kind.kind) {
    case 'engine':
    case 'cell':
    case 'compressorMap':
      return underFreeName(state, kind, thing, own);
    case 'pull':
    case 'session':
      return inRenamedCell(state, kind, thing);
    case 'combination':
      return withRenamedMap(state, thing);
    case 'trial':
      return withOurPulls(state, kind, thing);
    case 'publication':
      return restingOnOurPulls(state, thing);
    case 'enquiry':
      return nearOurPulls(state, restingOnOurPulls(state, thing));
    default:
      return thing;
  }
}

/** Lines of a trial of theirs with the ids that its pulls have here, without those that did not come in. */
export function withOurPulls({ pullHere, dropped }: MergeState, kind: MergeKind, thing: Thing): Thing {
  if (kind.kind !== 'trial') return thing;
  const parts = thing.parts.map((lines, at) => {
    if (kind.parts[at]?.table !== 'trialPull') return lines;
    return lines
      .filter(({ pullId }) => !dropped.has(String(pullId)))
      .map((line) => ({ ...line, pullId: pullHere.get(String(line.pullId)) ?? line.pullId }));
  });
  return { ...thing, parts };
}

/** What was said rests on the pulls by the ids that they have here; one that did not come in is still named. */
function restingOnOurPulls({ pullHere }: MergeState, thing: Thing): Thing {
  const theirs = JSON.parse(String(thing.row.pullIds)) as string[];
  const pullIds = JSON.stringify(theirs.map((id) => pullHere.get(id) ?? id));
  return { ...thing, row: { ...thing.row, pullIds } };
}

/** The nearest measured pulls of an answer, by the ids that they have here. */
function nearOurPulls({ pullHere }: MergeState, thing: Thing): Thing {
  const theirs = JSON.parse(String(thing.row.answer)) as KeptAnswer;
  const near = theirs.near.map((one) => ({
    ...one,
    pullIds: one.pullIds.map((id) => pullHere.get(id) ?? id),
  }));
  return { ...thing, row: { ...thing.row, answer: JSON.stringify({ ...theirs, near }) } };
}

function underFreeName(state: MergeState, kind: MergeKind, thing: Thing, own: Map<string, Thing>): Thing {
  const taken = new Set([...own.values()].map(({ row }) => wording(row)));
  if (!taken.has(wording(thing.row))) return thing;
  const from = String(thing.row.name);
  const origin = state.sides.theirs.name;
  let to = `${from} (from ${origin})`;
  for (let count = 2; taken.has(wording({ ...thing.row, name: to })); count++)
    to = `${from} (from ${origin}, ${count})`;
  if (kind.kind === 'cell') state.cellNames.set(from.toLowerCase(), to);
  if (kind.kind === 'compressorMap') state.mapNames.set(wording({ name: from.trim() }), to);
  state.report.renamed.push({ kind: kind.kind, id: thing.key, from, to });
  noteRename(state, `${kind.kind} changed`, `${kind.kind} ${thing.key}`, { name: from }, { name: to });
  return { ...thing, row: { ...thing.row, name: to } };
}

/** Two engines of one name but of different builds are told apart by the build. */
const wording = ({ name, buildRevision = '' }: Row): string => `${name}\n${buildRevision}`.toLowerCase();

function inRenamedCell(state: MergeState, kind: MergeKind, thing: Thing): Thing {
  const from = thing.row.cell;
  const to = typeof from === 'string' ? state.cellNames.get(from.toLowerCase()) : undefined;
  if (to === undefined) return thing;
  const act = kind.kind === 'pull' ? 'pull amended' : 'session changed';
  noteRename(state, act, `${kind.kind} ${thing.key}`, { cell: from }, { cell: to });
  return { ...thing, row: { ...thing.row, cell: to } };
}

/** A sheet that came with a renamed map names it as it is called here, or it would mean ours of the old name. */
function withRenamedMap(state: MergeState, thing: Thing): Thing {
  const before = JSON.parse(String(thing.row.sheet)) as CombinationSheet;
  const map = before.sections.supercharger?.map;
  const to = map && state.mapNames.get(wording({ name: map.text.trim() }));
  if (!to) return thing;
  const supercharger = { ...before.sections.supercharger, map: { ...map, text: to } };
  const after: CombinationSheet = { ...before, sections: { ...before.sections, supercharger } };
  const { name } = thing.row;
  const subject = `combination ${thing.key}`;
  noteRename(state, 'combination amended', subject, { name, sheet: before }, { name, sheet: after });
  return { ...thing, row: { ...thing.row, sheet: JSON.stringify(after) } };
}

function noteRename({ entries }: MergeState, act: string, subject: string, before: unknown, after: unknown) {
  entries.push({ act, subject, before, after });
}
