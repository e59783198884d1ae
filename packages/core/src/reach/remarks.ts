import { figureOf, percentFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { LIMITS } from '../rule/index.ts';
import type { Judged } from './judged.ts';
import type { ReachInput } from './model.ts';
import type { Ran } from './what-ran.ts';

/** What there is to say of a search beside its rungs. */
export function remarksOf({ target, standard, builds }: ReachInput, present: Judged, ran: Ran): Remark[] {
  const remarks: Remark[] = [];
  if (ran.size > 0)
    remarks.push(
      remark(
        'caution',
        'pulled-past-what-is-usual',
        `As it was pulled the engine is past limits that rest on what is usual or assumed (${[...ran.keys()].map((id) => LIMITS[id].label).join(', ')}). It told more than the rule does: they bind only what goes further than that. Put what the parts stand on the sheet.`,
      ),
    );
  if (present.reaches && present.holds)
    remarks.push(
      remark(
        'note',
        'reaches-as-it-is',
        said`The engine as it is makes ${figureOf(present.figure, 'power', { decimals: 0 })} by its match and reaches the target already; rungs beyond it are not needed for it.`,
      ),
    );
  if (present.passed.length > 0)
    remarks.push(
      remark(
        'caution',
        'passes-limits-as-it-is',
        `The engine as it is passes limits that bind (${present.passed.map(({ id }) => LIMITS[id].label).join(', ')}); a rung keeps within them, so that some may ask for less than is there.`,
      ),
    );
  if (target.boostCap !== null)
    remarks.push(
      remark(
        'note',
        'boost-cap-by-value',
        said`The cap of ${figureOf(target.boostCap, 'gaugePressure')} is held by the boost as reckoned; its band may reach above it. A gauge and a relief valve hold it on the engine.`,
      ),
    );
  if (standard.factor !== 1 && builds.some(({ match }) => match !== null))
    remarks.push(
      remark(
        'note',
        'reach-in-standard',
        said`Powers stand in the target’s standard, ${percentFigure(standard.factor - 1, 1)} from what the brake shows in this air; limits are looked at as observed.`,
      ),
    );
  return remarks;
}
