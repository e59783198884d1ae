import type { RulesReport } from '@pullbook/workshop';
import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { table } from '../print/table.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withBookIfThere, withShared } from '../shared-options.ts';

export function addRulesCommand(program: Command, context: Context): void {
  withShared(program.command('rules [rule]'))
    .description('what figures are held against: every rule with its thresholds and where they come from')
    .option('--set <threshold=value>', 'the shop’s own threshold: "V17.duty=90 %"')
    .option('--reset <threshold>', 'a threshold as the catalogue has it')
    .addHelpText(
      'after',
      examples(
        'pullbook rules',
        'pullbook rules V13',
        'pullbook rules --set "V17.duty=90 %"',
        'pullbook rules --reset V17.duty --json',
      ),
    )
    .action(async (rule: string | undefined, options: { set?: string; reset?: string }, own: Command) => {
      const shared = context.shared(own);
      const { rulesReport, setRuleThreshold } = await import('@pullbook/workshop');
      const { view } = shared;
      const [id, ...text] = options.reset === undefined ? (options.set ?? '').split('=') : [options.reset];
      const report = id
        ? valueOrRefusal(
            await withBook(shared, { create: false }, (book) =>
              setRuleThreshold(book, id, options.reset === undefined ? text.join('=') : null, view),
            ),
          )
        : await withBookIfThere(shared, (book) => rulesReport(book, view));
      const wanted = rule?.trim().toUpperCase();
      const rules = report.rules.filter((one) => wanted === undefined || one.id === wanted);
      if (rules.length === 0)
        own.error(`error: there is no rule "${rule}". They go from V01 to ${report.rules.at(-1)!.id}.`);
      context.answer(shared, { ...report, rules }, () => rules.flatMap((one) => ruleLines(one, context)));
    });
}

function ruleLines(
  { id, title, level, places, statement, elsewhere, source, thresholds }: RulesReport['rules'][number],
  { colours: { bold, dim } }: Context,
): string[] {
  return [
    `${bold(`${id} ${title}`)}  ${dim(`${level}; ${places.join(', ')}`)}`,
    `  ${elsewhere ?? statement}`,
    ...table(
      [
        ['', '', '', ''],
        ...thresholds.map((one) => [
          one.id,
          one.label,
          one.text,
          one.isOwn ? `own, catalogue ${one.catalogueText}` : one.canBeSet ? '' : 'fixed',
        ]),
      ],
      '  ',
    ).slice(1),
    dim(`  ${source}`),
  ];
}
