import { resolve } from 'node:path';
import { reachPage } from '@pullbook/views/reach';
import { type Command, Option } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { countValue } from '../option-values.ts';
import { enquiryLines } from '../print/enquiry-lines.ts';
import { remarkLines } from '../print/remarks.ts';
import { counted } from '../print/table.ts';
import { Refusal, valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';

/** `enquiries`: what was asked before; `enquiry show`, `plan`, `card`. */
export function addEnquiryCommands(program: Command, context: Context): void {
  addListCommand(program, context);
  const enquiry = program
    .command('enquiry')
    .description('a power that was asked of a combination, with its kept answer');
  addShowCommand(enquiry, context);
  addPlanCommand(enquiry, context);
  addCardCommand(enquiry, context);
}

interface ListOptions {
  find?: string;
  combination?: string;
  page?: number;
}

function addListCommand(program: Command, context: Context): void {
  withShared(program.command('enquiries'))
    .description('powers that were asked before, with their answers, the last first')
    .option('--find <words>', 'only those with all of these words: of question, combination, target, ways')
    .option('--combination <combination>', 'only of this combination')
    .option('--page <number>', 'from 1', countValue)
    .addHelpText('after', examples('pullbook enquiries', 'pullbook enquiries --find "520 hp" --json'))
    .action(async (options: ListOptions, own: Command) => {
      const shared = context.shared(own);
      const { enquiriesPage } = await import('@pullbook/workshop');
      const found = valueOrRefusal(
        await withBook(shared, { create: false }, (book) => enquiriesPage(book, shared.view, options)),
      );
      const { rows, ...where } = found;
      const enquiries = rows.map(({ sentence, chips, became, ...row }) => ({
        ...row,
        answer: sentence.map(({ text }) => text).join(''),
        marks: chips.map(({ text }) => text),
        became,
      }));
      const { bold, dim } = context.colours;
      context.answer(shared, { schemaVersion: 1, enquiries, ...where }, () =>
        enquiries.length === 0
          ? [
              where.all === 0
                ? 'Nothing was asked yet: pullbook reach --keep.'
                : 'Nothing that was asked fits.',
            ]
          : [
              ...enquiries.flatMap((one) => [
                bold(`${one.id.slice(0, 8)}  ${one.question}`),
                `  ${one.answer}`,
                dim(`  ${[one.facts, ...one.marks, ...one.became.map(({ text }) => text)].join(' · ')}`),
              ]),
              ...(where.pages > 1 ? [`Page ${where.page} of ${where.pages}.`] : []),
            ],
      );
    });
}

function addShowCommand(enquiry: Command, context: Context): void {
  withShared(enquiry.command('show <enquiry>'))
    .description('an answer as it was given, what is no longer so, and what became of it')
    .option('--rung <rung>', 'the rung to lay open, by its number or id (default: the first); 0: as it is')
    .addHelpText(
      'after',
      examples('pullbook enquiry show 7c01', 'pullbook enquiry show 7c01 --rung 2 --json'),
    )
    .action(async (given: string, { rung }: { rung?: string }, own: Command) => {
      const shared = context.shared(own);
      const { enquiryOf, enquiryReport, rungNamed } = await import('@pullbook/workshop');
      const kept = valueOrRefusal(
        await withBook(shared, { create: false }, (book) => enquiryOf(book, given)),
      );
      const { enquiry: one, remarks } = kept;
      const at =
        rung === undefined
          ? null
          : rung === '0'
            ? 'now'
            : valueOrRefusal(rungNamed(one.answer.answer.rungs, rung)).rung.id;
      context.answer(shared, enquiryReport(one, remarks, shared.wordsIn()), () =>
        enquiryLines(reachPage({ kept, rungId: at }, shared.view), one, context),
      );
    });
}

function addPlanCommand(enquiry: Command, context: Context): void {
  withShared(enquiry.command('plan <enquiry> <rung>'))
    .description(
      'make a rung, by its number or id, a combination of a trial with its plan and what is foretold of it',
    )
    .option('--question <text>', 'of the trial (default: worked out of the rung)')
    .addHelpText(
      'after',
      examples(
        'pullbook enquiry plan 7c01 1',
        'pullbook enquiry plan 7c01 2 --question "Is the smaller pulley enough?" --json',
      ),
    )
    .action(async (given: string, rung: string, { question }: { question?: string }, own: Command) => {
      const shared = context.shared(own);
      const { edgeRemarks, planRung } = await import('@pullbook/workshop');
      const result = await withBook(shared, { create: false }, (book) =>
        planRung(book, given, rung, { question }),
      );
      const planned = valueOrRefusal(result);
      const remarks = edgeRemarks(result.remarks, null, shared.wordsIn());
      const { combination, trial, pulls, predictions } = planned;
      context.answer(shared, { schemaVersion: 1, ...planned, remarks }, () => [
        `Added ${combination.wasThere ? '' : `the combination "${combination.name}" and `}the trial "${trial.question}" (${trial.id.slice(0, 8)}).`,
        `Kept ${counted(predictions, 'prediction')} of it; ${pulls.length === 0 ? 'no plan of its pulls' : `pulls planned, those made among them: ${pulls.join(' ')}`}.`,
        ...remarkLines(remarks, context),
        `All of it is taken back by "pullbook undo". The pulls to make: pullbook plan --trial ${trial.id.slice(0, 8)}`,
      ]);
    });
}

interface CardOptions {
  out: string;
  rung?: string;
  curves?: boolean;
  format: 'png' | 'svg' | 'pdf';
  size: string;
  theme: 'light' | 'dark';
  transparent?: boolean;
  privateToo?: boolean;
  draft?: boolean;
}

function addCardCommand(enquiry: Command, context: Context): void {
  withShared(enquiry.command('card <enquiry>'))
    .description('the answer as a picture to show, computed and saying so; noted as having left the shop')
    .option('--out <folder>', 'folder for the file, made where it is missing', 'published')
    .option('--rung <rung>', 'of one rung, by its number or id (default: the answer)')
    .option('--curves', 'the curves of the rung in place of words')
    .addOption(new Option('--format <format>', 'of the file').choices(['png', 'svg', 'pdf']).default('png'))
    .option('--size <size>', '1080p, 4k, tall (9:16), square, thumbnail', '1080p')
    .addOption(new Option('--theme <theme>', 'of the card').choices(['light', 'dark']).default('light'))
    .option('--transparent', 'without a ground, to lay over a film')
    .option('--private-too', 'although it rests on pulls that are not for everyone')
    .option('--draft', 'to look at only: not noted')
    .addHelpText(
      'after',
      examples(
        'pullbook enquiry card 7c01 --out answers',
        'pullbook enquiry card 7c01 --rung 2 --curves --size tall --theme dark --json',
      ),
    )
    .action(async (given: string, options: CardOptions, own: Command) => {
      const shared = context.shared(own);
      const { edgeRemarks, leaveCard, SIZE_NAMES } = await import('@pullbook/workshop');
      const size = SIZE_NAMES.find((one) => one === options.size.trim().toLowerCase());
      if (size === undefined)
        throw new Refusal(
          'unknown-size',
          `"${options.size}" is not a size. Accepted: ${SIZE_NAMES.join(', ')}.`,
        );
      const { out, draft, rung, format, theme } = options;
      const wanted = {
        ...{ rung, format, size, theme },
        shows: options.curves ? ('curves' as const) : ('words' as const),
        ground: options.transparent !== true,
        privateToo: options.privateToo === true,
      };
      const result = await withBook(shared, { create: false }, (book) =>
        leaveCard(book, given, shared.view, wanted, { folder: resolve(out), draft }),
      );
      const card = valueOrRefusal(result);
      const remarks = edgeRemarks(result.remarks, null, shared.wordsIn());
      context.answer(shared, { schemaVersion: 1, ...card, remarks }, () => [
        `Made ${card.path} (${card.width} x ${card.height})${card.isNoted ? ', and noted that it left the shop' : ''}.`,
        ...remarkLines(remarks, context),
      ]);
    });
}
