import type { PullDetailsText } from '@pullbook/workshop';
import { type Command, Option } from 'commander';
import type { Context } from '../context.ts';
import { examples } from '../examples.ts';
import { erratumLines } from '../print/stale.ts';
import { type PullOptions, pullDetailsOf, withPullOptions } from '../pull-options.ts';
import { valueOrRefusal } from '../refusal.ts';
import { withBook, withShared } from '../shared-options.ts';
import { type TreatmentOptions, treatmentOf, withTreatmentOptions } from '../treatment-options.ts';

/** What can be cleared, by the name of its option. */
const CLEARED = {
  combination: { combinationId: null },
  'set-up': { setUp: null },
  cell: { cell: null },
  operator: { operator: null },
  'recorded-at': { recordedAt: null },
  weather: { weather: null },
  inertia: { momentOfInertia: null },
  spark: { tune: { sparkAdvance: null } },
  'target-lambda': { tune: { targetLambda: null } },
  jets: { tune: { jets: null } },
  'fuel-pressure': { tune: { fuelPressure: null } },
  'cooler-water': { tune: { coolerWater: null } },
  'fuel-batch': { tune: { fuelBatch: null } },
  'boost-tap': { places: { boostTap: null } },
  'charge-probe': { places: { chargeProbe: null } },
  'inlet-probe': { places: { inletProbe: null } },
} as const satisfies Record<string, PullDetailsText>;
type Clearable = keyof typeof CLEARED;

/** What was said, with what is to be cleared. */
function cleared(said: PullDetailsText, names: readonly Clearable[]): PullDetailsText {
  let result = said;
  for (const name of names) {
    const change: PullDetailsText = CLEARED[name];
    result = {
      ...result,
      ...change,
      ...(change.tune ? { tune: { ...result.tune, ...change.tune } } : {}),
      ...(change.places ? { places: { ...result.places, ...change.places } } : {}),
    };
  }
  return result;
}

interface AmendOptions extends PullOptions, TreatmentOptions {
  reason: string;
  clear?: Clearable[];
}

export function addAmendCommand(program: Command, context: Context): void {
  const command = withShared(program.command('amend <pull>'))
    .description(
      'mend what was written down about a pull, or how it is read; what was measured never changes',
    )
    .requiredOption('--reason <text>', 'what was entered wrong, or what became known')
    .addOption(
      new Option('--clear <what...>', 'what was written down and is not known after all').choices(
        Object.keys(CLEARED),
      ),
    );
  withTreatmentOptions(withPullOptions(command))
    .addHelpText(
      'after',
      examples(
        'pullbook amend 3f2a --combination "Longer cam" --reason "was filed under the base cam"',
        'pullbook amend 3f2a --pressure 98.2kPa --temperature 30C --humidity 45% --reason "weather found on the sheet"',
        'pullbook amend 3f2a --lag "lambda=0.3s" --reason "the probe sits far down the pipe"',
        'pullbook amend 3f2a --clear cell spark --reason "written down for another pull"',
        'pullbook amend 3f2a --window found --bin adapted --reason "read as it comes again"',
      ),
    )
    .action(async (id: string, options: AmendOptions, own: Command) => {
      const shared = context.shared(own);
      const { amendPull, pullDetailsFromText, staleAfter } = await import('@pullbook/workshop');
      const said = {
        ...cleared(pullDetailsOf(options), options.clear ?? []),
        treatment: treatmentOf(options),
      };
      const details = valueOrRefusal(pullDetailsFromText(said, new Date().toISOString()));
      const { amended, errata } = await withBook(shared, { create: false }, async (book) => {
        const done = valueOrRefusal(await amendPull(book, id, details, options.reason));
        const stale = await staleAfter(book, { pullIds: [done.id] }, shared.view);
        return { amended: done, errata: stale };
      });
      context.answer(shared, { ...amended, errata }, () => [
        `Amended pull ${amended.id.slice(0, 8)}.`,
        ...erratumLines(errata, context),
      ]);
    });
}
