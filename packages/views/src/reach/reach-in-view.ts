import type {
  EnquiryAsked,
  KeptAnswer,
  LeastRemedy,
  NearPull,
  ReachAnswer,
  ReachInput,
  ReachTarget,
  Rung,
  WhatIsLeft,
} from '@pullbook/core/reach';
import type { Remark } from '@pullbook/core/remark';
import type { ViewOptions } from '../model.ts';
import type { KeptEnquiry, NamedSource, ReachBundle, ReachPageInput } from '../reach-model.ts';
import { type Showing, showingIn } from '../showing.ts';
import { nearestOf } from './reach-words.ts';

/** A page of a target: searched here or kept, brought to one shape. */
export interface ReachInView {
  show: Showing;
  options: ViewOptions;
  /** Of the combination that is asked of. */
  name: string;
  combination: number;
  combinationId: string | null;
  isInvented: boolean;
  asked: EnquiryAsked;
  target: ReachTarget;
  standard: ReachInput['standard'];
  /** That it was reckoned in, Pa and K. */
  air: KeptAnswer['air'];
  answer: ReachAnswer | null;
  /** Cheapest first; of a search that is still on, as they stand. */
  rungs: Rung[];
  now: Rung | null;
  left: WhatIsLeft[];
  remedies: LeastRemedy[];
  chosen: Rung | null;
  /** What its line is called on a picture: its number in the ladder. */
  chosenKey: string;
  /** What was searched with; `null`: kept. */
  bundle: ReachBundle | null;
  kept: KeptEnquiry | null;
  /** Of a kept answer; of a search `near` of its bundle. */
  keptNear: NearPull[];
  sources: NamedSource[];
  remarks: Remark[];
}

/** `now`: the engine as it is, to be chosen like a rung. */
export const NOW = 'now';

export function reachInView(input: ReachPageInput, options: ViewOptions): ReachInView {
  const show = showingIn(options);
  const { answer, rungs, ...of } = 'kept' in input ? ofKept(input.kept) : ofSearch(input);
  const now = answer?.now ?? null;
  const chosen = input.rungId === NOW ? now : rungs.find(({ id }) => id === input.rungId);
  const first = answer === null || answer.feasible ? rungs[0] : (nearestOf(rungs) ?? rungs[0]);
  const opened = chosen ?? (now?.reaches ? now : first) ?? now;
  return {
    show,
    options,
    ...of,
    answer,
    rungs,
    now,
    left: answer?.left ?? [],
    remedies: answer?.remedies ?? [],
    chosen: opened,
    chosenKey: `${rungs.findIndex(({ id }) => id === opened?.id) + 1}`,
  };
}

function ofSearch({ bundle, answer, progress }: Extract<ReachPageInput, { bundle: ReachBundle }>) {
  const { name, combination, combinationId, isInvented, asked, input, sources } = bundle;
  return {
    name,
    combination,
    combinationId,
    isInvented,
    asked,
    target: input.target,
    standard: input.standard,
    air: (input.builds[0]?.match?.input ?? input.baseline).air,
    answer,
    rungs: answer?.rungs ?? progress?.rungs ?? [],
    bundle,
    kept: null,
    keptNear: [],
    sources,
    remarks: [...bundle.remarks, ...(answer?.remarks ?? [])],
  };
}

function ofKept(kept: KeptEnquiry) {
  const { enquiry, combination, isInvented, sources, remarks } = kept;
  const { combinationName, standard, air, answer, near } = enquiry.answer;
  return {
    name: combinationName,
    combination,
    combinationId: enquiry.combinationId,
    isInvented,
    asked: enquiry.asked,
    target: answer.target,
    standard,
    air,
    answer,
    rungs: answer.rungs,
    bundle: null,
    kept,
    keptNear: near,
    sources,
    remarks: [...remarks, ...answer.remarks],
  };
}
