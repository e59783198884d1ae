import type { ChartPanel } from '@pullbook/charts';
import type { ChannelMeaning } from '@pullbook/core/pull';
import type { TrialInView } from '../trial-in-view.ts';
import { capitalised, listed } from '../wording.ts';
import { claimLine } from './claim-words.ts';
import { MOST_IN_HEADLINE, pictureOf } from './curve-stills.ts';
import type { Scale } from './one-scale.ts';
import { channelPanel, lastOf } from './panels.ts';
import type { NamedPicture } from './picture.ts';

/** Charge temperature and mixture, where they were read. */
export function temperaturesStill(view: TrialInView, scale: Scale | null): NamedPicture[] {
  const panels = temperaturePanels(view);
  const has = (id: string) => panels.some((panel) => panel?.id === id);
  const isMixed = has('lambda') || has('airFuelRatio');
  const what = [has('chargeTemperature') ? 'charge temperature' : '', isMixed ? 'mixture' : ''];
  const figures = view.combinations.length > MOST_IN_HEADLINE ? '' : endsText(view);
  const name = capitalised(listed(what.filter(Boolean)));
  return pictureOf(view, scale, 'temperatures', panels, {
    headline: figures === '' ? `${name} over engine speed` : figures,
    subline: claimLine(view),
  });
}

export const temperaturePanels = (view: TrialInView): (ChartPanel | null)[] => [
  channelPanel(view, 'chargeTemperature'),
  channelPanel(view, 'lambda') ?? channelPanel(view, 'airFuelRatio'),
];

/** `At the end: charge A 118 °F and B 121 °F, mixture λ 0.79`: the figures that stand at the lines' ends. */
function endsText(view: TrialInView): string {
  const charge = each(view, 'chargeTemperature', (value) =>
    view.show.quantity(value, 'temperature', { decimals: 0 }),
  );
  const mixture = each(
    view,
    'lambda',
    (value) => `λ\u00a0${view.show.number(value, 'ratio', { decimals: 2 })}`,
  );
  const said = [charge && `charge ${charge}`, mixture && `mixture ${mixture}`].filter(Boolean);
  return said.length === 0 ? '' : `At the end: ${said.join(', ')}`;
}

/** `A 118 °F and B 121 °F`; the figure alone where it is that of all. */
function each(
  { combinations }: TrialInView,
  meaning: ChannelMeaning,
  written: (value: number) => string,
): string {
  const figures = combinations.flatMap((item) => {
    const value = lastOf(item.figures, meaning);
    return value === undefined ? [] : [{ key: item.key, text: written(value) }];
  });
  const [first] = figures;
  if (first && figures.every(({ text }) => text === first.text)) return first.text;
  return listed(figures.map(({ key, text }) => `${key} ${text}`));
}
