import type { ChartDescription, PictureBody, StillDescription } from '@pullbook/charts';
import { heldBack } from '../audience.ts';
import { differenceName } from '../gain-panel.ts';
import { whatIsDrawn } from '../trial-chart.ts';
import type { TrialInView } from '../trial-in-view.ts';
import { capitalised, inSentence, listed } from '../wording.ts';
import { footer, shortFooter } from './footer.ts';
import type { NamedStill, PictureName } from './model.ts';

/** The shop's own name and mark on its pictures. */
export type Signature = StillDescription['signature'];

/** What one picture says and shows, before it is framed by what stands on every one. */
export interface Picture {
  headline: string;
  subline: string;
  body: PictureBody;
  alternative: string;
}

/** A picture with its place in the set. */
export interface NamedPicture extends Picture {
  name: PictureName;
  key: string | null;
  title: string;
}

/** A picture with what stands on every one: who and what was measured, what nobody may overlook, whose it is. */
export function framed(view: TrialInView, signature: Signature, picture: Picture): StillDescription {
  const { headline, subline, body, alternative } = picture;
  return {
    headline,
    subline,
    body,
    footer: body.kind === 'number' ? shortFooter(view) : footer(view),
    warning: heldBack(view.answer).length > 0 ? 'Not for publication' : null,
    signature,
    alternative,
  };
}

/** A picture of the set, framed. */
export const namedStill = (
  view: TrialInView,
  signature: Signature,
  { name, key, title, ...picture }: NamedPicture,
): NamedStill => ({ name, key, title, still: framed(view, signature, picture) });

/** A stack as a picture's body, with its words for a screen reader, which leave the sentence to the words round it. */
export function stackPicture(
  view: TrialInView,
  chart: ChartDescription,
  words: { headline: string; subline: string },
): Picture {
  const alternative = stackWords(view, chart);
  return { ...words, body: { kind: 'stack', chart: { ...chart, alternative } }, alternative };
}

/** What is drawn with the highest power; without power, with the figure at the end of each line. */
function stackWords(view: TrialInView, { panels, xRange }: ChartDescription): string {
  if (panels.some(({ id }) => id === 'power')) return whatIsDrawn(view, panels, xRange);
  const { show, gains, baseline } = view;
  const names = listed(panels.map(({ id, title }) => (id === 'gain' ? 'gain' : inSentence(title))));
  const signed = (watt: number) => show.quantity(watt, 'power', { decimals: 0, sign: true });
  const ends = panels.flatMap(({ id, lines }) =>
    id === 'gain'
      ? gains.map(
          ({ gain: { smallest, largest }, changed }) =>
            `${differenceName(changed.key, baseline.key)} from ${signed(smallest.power)} at ${show.speed(smallest.atRpm)} to ${signed(largest.power)} at ${show.speed(largest.atRpm)}`,
        )
      : lines.flatMap(({ label }) =>
          label?.value ? [`${[label.key, label.name].filter(Boolean).join(', ')}: ${label.value}`] : [],
        ),
  );
  const over = `${capitalised(names)} over engine speed from ${show.speedRange(xRange)}.`;
  return ends.length === 0 ? over : `${over} ${ends.join('; ')}.`;
}
