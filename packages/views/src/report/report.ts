import type { TrialAnswer } from '@pullbook/core/trial';
import { audienceWords } from '../audience.ts';
import { daysText } from '../date.ts';
import { engineText, fuelText } from '../engine-line.ts';
import type { ViewOptions } from '../model.ts';
import type { ReportDescription, ReportSection } from '../publish/model.ts';
import type { Signature } from '../publish/picture.ts';
import { correctionName } from '../standard-name.ts';
import { countedPulls, isInvented, type TrialInView, trialInView } from '../trial-in-view.ts';
import { trialPage } from '../trial-page.ts';
import { capitalised, counted, listed } from '../wording.ts';
import { answerSection, gainsSection, whySection } from './answer-section.ts';
import { calibrationSection } from './calibration-section.ts';
import { cautionsSection } from './cautions-section.ts';
import { conditionsSection } from './conditions-section.ts';
import { curvesSection, moreFiguresSection, tableSection } from './figures-sections.ts';
import { limitsSection } from './limits-section.ts';
import { marginsSection } from './margins-section.ts';
import { nextSection } from './next-section.ts';
import { notMeasuredSection } from './not-measured-section.ts';
import { pullsSection } from './pulls-section.ts';
import type { ReportInView, ReportMore } from './report-in-view.ts';
import { changesSection, testedSection } from './tested-section.ts';

/**
 * A trial as its customer gets it: what was asked and the answer, what was tested, the curves, the figures, what is near a limit, what
 * comes next, the cautions; and as an appendix what all that rests on, and what nobody measured. Every sentence and figure is the trial
 * page's own.
 *
 * @example reportDescription(answer, options, signature, { cells, engine: engineOfPlan(answer), contact: '', match: null })
 */
export function reportDescription(
  answer: TrialAnswer,
  options: ViewOptions,
  signature: Signature,
  more: ReportMore,
): ReportDescription {
  const view = trialInView(answer, options);
  const page = trialPage(answer, options);
  const report: ReportInView = { view, page, more };
  const sections = [
    answerSection(report),
    testedSection(report),
    curvesSection(report),
    tableSection(report),
    marginsSection(report),
    limitsSection(report),
    nextSection(report),
    cautionsSection(report),
  ];
  const appendix = [
    gainsSection(report),
    whySection(report),
    notMeasuredSection(report),
    changesSection(report),
    pullsSection(report),
    moreFiguresSection(report),
    conditionsSection(report),
    calibrationSection(report),
  ];
  return {
    question: page.question,
    answer: page.sentence,
    verdicts: page.verdicts,
    facts: factsLine(view),
    combinations: page.combinations.map(({ key, name, combination }) => ({ key, name, combination })),
    signature,
    contact: more.contact,
    day: lastMoment(view),
    warnings: warningsOf(report),
    sections: told(sections),
    appendix: told(appendix),
  };
}

const told = (sections: readonly (ReportSection | null)[]): ReportSection[] =>
  sections.filter((one) => one !== null);

/** `3.8 L straight six · gasoline · SAE J1349 · 5 pulls · 14 March 2026` */
function factsLine(view: TrialInView): string {
  const sheets = view.combinations.flatMap(({ combination }) => combination?.sheet ?? []);
  const engines = [...new Set(sheets.map((sheet) => engineText(sheet, view.show.options)))].filter(Boolean);
  const fuels = [...new Set(sheets.map(fuelText))].filter(Boolean);
  const pulls = countedPulls(view);
  return [
    capitalised(listed(engines)),
    listed(fuels),
    correctionName(view.trial.correction),
    counted(pulls.length, 'counted pull'),
    daysText(pulls.map(({ pull }) => pull.recordedAt)),
  ]
    .filter(Boolean)
    .join(' · ');
}

/** When the last counted pull was made, ISO 8601: the report's own date, so that the same pulls give the same file. */
function lastMoment(view: TrialInView): string | null {
  const moments = countedPulls(view).flatMap(({ pull }) => pull.recordedAt ?? []);
  return moments.toSorted().at(-1) ?? null;
}

function warningsOf({ view, page }: ReportInView): string[] {
  return [
    ...(page.heldBack.length > 0 ? [`Not for publication: this may be seen by ${audienceOf(view)}.`] : []),
    ...(isInvented(view)
      ? ['Invented data: it shows how Pullbook works and says nothing of a real engine.']
      : []),
  ];
}

/** The strictest audience of what is in the report is not worked out: each is named. */
function audienceOf(view: TrialInView): string {
  const audiences = [view.trial.audience, ...countedPulls(view).map(({ pull }) => pull.audience)];
  const words = audiences.filter(({ who, notBefore }) => who !== 'everyone' || notBefore !== null);
  return listed([...new Set(words.map(audienceWords))], 'or');
}
