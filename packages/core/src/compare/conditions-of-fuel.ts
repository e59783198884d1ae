import type { CombinationSheet } from '../combination/index.ts';
import { figureOf, numberFigure } from '../quantity/index.ts';
import { joined, type Said, said } from '../remark/index.ts';
import { type CountedPull, textCondition } from './condition.ts';
import type { ComparedBeside, ConditionDifference } from './model.ts';

/** Name, octane and density of the fuel, as the sheets have it; the batch belongs to the pull and stands with the tune. */
export function conditionsOfFuel(
  pulls: readonly CountedPull[],
  { combinations }: ComparedBeside,
): ConditionDifference[] {
  return [
    textCondition(pulls, {
      id: 'fuel',
      label: 'Fuel',
      why: 'Another fuel, octane or density is a change of its own: it moves spark, mixture and what a flow meter reads (common practice, no source).',
      read: ({ pull }) => {
        const sheet = pull.combinationId === null ? null : combinations.get(pull.combinationId)?.sheet;
        return sheet == null ? null : fuelText(sheet);
      },
    }),
  ];
}

function fuelText({ sections: { fuel } }: CombinationSheet): Said | null {
  const known = (field: string) => (fuel?.[field]?.text === 'unknown' ? undefined : fuel?.[field]);
  const name = known('name')?.text;
  const octane = (field: string, word: string) => {
    const value = known(field)?.value;
    return value == null ? [] : [said`${word} ${numberFigure(value, 0)}`];
  };
  const [ethanol, methanol] = [known('ethanolShare')?.text, known('methanolShare')?.text];
  const density = known('density')?.value;
  const parts = [
    ...(name === undefined ? [] : [name]),
    ...octane('researchOctane', 'research octane'),
    ...octane('motorOctane', 'motor octane'),
    ...(ethanol === undefined ? [] : [`${ethanol} ethanol`]),
    ...(methanol === undefined ? [] : [`${methanol} methanol`]),
    ...(density == null
      ? []
      : [said`${figureOf(density, 'density', { units: { us: 'kg/m³', si: 'kg/m³' }, decimals: 0 })}`]),
  ];
  return parts.length === 0 ? null : joined(parts, ', ');
}
