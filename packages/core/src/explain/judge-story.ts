import { sectionTitle } from '../combination/index.ts';
import { joined, said } from '../remark/index.ts';
import { canBeMeasured } from './measurements.ts';
import type { Evidence, Story } from './model.ts';
import type { About, ExplainInput, Observation } from './observation.ts';
import { BOOST_ALONG_LINE, type Facts, type StoryEntry } from './story.ts';

/** These say what is to be explained: they agree with too many stories to count as evidence. */
const NOT_EVIDENCE: readonly About[] = ['power', 'crossover'];

/** A story held against what was seen. */
export interface JudgedStory {
  entry: StoryEntry;
  story: Story;
  /** Agreeing observations beyond power itself and the parts. */
  beyondPower: number;
  /** One of the observations that decide it was made and agrees. */
  isDecided: boolean;
  /** Something moved the way it foretells, beyond what merely stayed the same. */
  tells: boolean;
}

/** `null`: not a story of this engine and these parts, or ended by an observation that decides it. */
export function judgeStory(told: StoryEntry, input: ExplainInput, facts: Facts): JudgedStory | null {
  const entry = alongTheLine(told, input);
  if (entry.charger !== undefined && !entry.charger.includes(input.charger)) return null;
  const parts = partsOf(entry, input);
  if (parts === null) return null;
  const abouts = Object.keys(entry.foretells) as About[];
  const made = abouts.flatMap((about) => facts.of(about) ?? []);
  const agreeing = made.filter(({ about, state }) => entry.foretells[about]!.agrees.includes(state));
  const against = made.filter(({ about, state }) => entry.foretells[about]!.contradicts.includes(state));
  if (against.some(({ about }) => entry.decidedBy.includes(about))) return null;
  if (against.length > 0 && entry.beside === undefined) return null;
  const unmeasured = abouts.filter(
    (about) => facts.of(about) === undefined && canBeMeasured(about) && isAskedFor(about, input),
  );
  return {
    entry,
    story: {
      id: entry.id,
      text: entry.text(facts),
      evidence: [
        ...agreeing.map((one) => evidence(one, 'for')),
        ...parts,
        ...against.map((one) => evidence(one, 'against')),
      ],
      agree: agreeing.length + parts.length,
      disagree: against.length,
      unmeasured,
    },
    beyondPower: agreeing.filter(({ about }) => !NOT_EVIDENCE.includes(about)).length,
    isDecided: agreeing.some(({ about }) => entry.decidedBy.includes(about)),
    tells: agreeing.some(({ about, state }) => state !== 'same' && !NOT_EVIDENCE.includes(about)),
  };
}

/** With a match at hand a story of more air foretells boost by the slope of the speed line, in place of either way. */
function alongTheLine(entry: StoryEntry, { lineRuns }: ExplainInput): StoryEntry {
  if (entry.boostFollowsLine === undefined || lineRuns === undefined || lineRuns === null) return entry;
  return { ...entry, foretells: { ...entry.foretells, boost: BOOST_ALONG_LINE[lineRuns] } };
}

/** The changed parts the story is about, as evidence; `null`: it needs one that did not change. */
function partsOf({ parts }: StoryEntry, { changes }: ExplainInput): Evidence[] | null {
  if (parts === undefined || changes === null) return [];
  const changed = parts.filter((part) => changes.some(({ section }) => section === part));
  if (changed.length === 0) return null;
  const titles = joined(
    changed.map((part) => sectionTitle(part)),
    ', ',
  );
  return [{ about: 'parts', text: said`Changed by the sheets: ${titles}.`, speaks: 'for' }];
}

const evidence = ({ about, text }: Observation, speaks: Evidence['speaks']): Evidence => ({
  about,
  text,
  speaks,
});

/** Nobody asks for boost, charge or shaft speed of an engine without a supercharger. */
function isAskedFor(about: About, { charger }: ExplainInput): boolean {
  if (about === 'slip' || about === 'impellerSpeed' || about === 'pulleyRatio')
    return charger === 'mechanical';
  return charger !== 'none' || !['boost', 'chargeTemperature', 'chargeTrend'].includes(about);
}
