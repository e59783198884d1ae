import type { OrderChange, ShownRunningOrder } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { numberValue, parted, textsValue, wordsValue } from '../option-values.ts';
import { table } from '../print/table.ts';
import { Refusal, valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

interface OrderOptions {
  show?: string[];
  hide?: string[];
  first?: string[];
  title?: string[];
  seconds?: string[];
  speed?: number;
  afresh?: boolean;
  reason?: string;
}

export function addOrderCommand(parent: Command, context: Context): void {
  withShared(parent.command('order <trial>'))
    .description('how a clip and a presentation tell it: see the steps, change them')
    .option(
      '--show <steps>',
      'steps that are shown: asked, combination, baseline, changed, gain, boost, why, caveat',
      wordsValue,
    )
    .option('--hide <steps>', 'steps that are left out', wordsValue)
    .option('--first <steps>', 'steps in this order before the others', wordsValue)
    .option(
      '--title <step=text>',
      'its own title; nothing after the sign: as worked out (repeat)',
      textsValue,
    )
    .option('--seconds <step=s>', 'how long; nothing after the sign: as worked out (repeat)', textsValue)
    .option('--speed <times>', '2 is twice as fast', numberValue)
    .option('--afresh', 'everything as worked out, before what else is said')
    .option('--reason <text>', 'why, for the log')
    .addHelpText(
      'after',
      examples(
        'pullbook trial order 12ab',
        'pullbook trial order 12ab --hide why --title "gain=What it gave" --seconds gain=6 --speed 1.5',
        'pullbook trial order 12ab --first asked,gain --json',
      ),
    )
    .action(async (id: string, options: OrderOptions, own: Command) => {
      const shared = context.shared(own);
      const { changeRunningOrder, runningOrderOf } = await import('@pullbook/workshop');
      const change = changeFrom(options);
      const order = await withBook(shared, { create: false }, async (book) => {
        if (change !== null) valueOrRefusal(await changeRunningOrder(book, id, change, options.reason ?? ''));
        return valueOrRefusal(await runningOrderOf(book, id, shared.view));
      });
      context.answer(shared, { schemaVersion: 1, ...order }, () => orderLines(order));
    });
}

function changeFrom({ reason: _, title, seconds, ...rest }: OrderOptions): OrderChange | null {
  const change: OrderChange = {
    ...rest,
    titles: title && Object.fromEntries(title.map(parted)),
    seconds: seconds && Object.fromEntries(seconds.map(secondsOf)),
  };
  return Object.values(change).every((said) => said === undefined) ? null : change;
}

function secondsOf(word: string): [step: string, seconds: number | null] {
  const [step, text] = parted(word);
  const value = text === '' ? null : Number(text.replace(',', '.').replace(/\s*s$/u, ''));
  if (Number.isNaN(value))
    throw new Refusal('seconds-not-read', `"${text}" is no time. Give seconds, such as gain=6.`);
  return [step, value];
}

function orderLines({ steps, seconds, speed }: ShownRunningOrder): string[] {
  return [
    `${seconds.toFixed(1)} s in all, speed ${speed}`,
    ...table(
      [
        ['step', 'shown', 'seconds', 'title'],
        ...steps.map((step) => [
          step.id,
          step.whyNot === '' ? (step.isShown ? 'yes' : 'no') : `no: ${step.whyNot}`,
          step.seconds.toFixed(1),
          step.title,
        ]),
      ],
      '  ',
    ),
  ];
}
