import { correctionById } from '../air/index.ts';
import { numberFigure } from '../quantity/index.ts';
import { type Said, said } from '../remark/index.ts';
import { type CountedPull, numberCondition, rangeText, textCondition } from './condition.ts';
import type { ConditionDifference } from './model.ts';
import { standardText } from './one-standard.ts';

/** Further than this from 1 a factor made for naturally aspirated engines is in doubt on a supercharged one. Common practice, no source. */
const FACTOR_SUPERCHARGED = [0.97, 1.03] as const;

/** Standard of the figures, what they carried, and how much the weather had to be corrected for. */
export function conditionsOfAir(pulls: readonly CountedPull[], boosted: boolean): ConditionDifference[] {
  return [
    textCondition(pulls, {
      id: 'standard',
      label: 'Standard of the figures',
      why: 'Between two standards alone lie up to 4 %, for the same pull on the same day (from their reference states): no difference is let pass.',
      read: ({ view }) => standardText(view.correction.standard),
    }),
    numberCondition(pulls, {
      id: 'weather-factor',
      label: 'Weather factor',
      why: 'A factor makes up for air, not for what the air does to charge and oil: more than 0.03 apart is in doubt (common practice, no source).',
      read: ({ view }) => view.correction.factor,
      text: rangeText((factor) => numberFigure(factor, 4)),
      differ: (low, high) => high - low > 0.03,
    }),
    ...factorSupercharged(pulls, boosted),
    carried(pulls),
  ];
}

/** Asked only where a counted pull is outside: nobody knows then how much of the factor holds. */
function factorSupercharged(pulls: readonly CountedPull[], boosted: boolean): ConditionDifference[] {
  const [low, high] = FACTOR_SUPERCHARGED;
  const isOutside = ({ view: { correction } }: CountedPull) =>
    correction.factor !== null && (correction.factor < low || correction.factor > high);
  if (!boosted || !pulls.some(isOutside)) return [];
  const condition = textCondition(pulls, {
    id: 'factor-supercharged',
    label: 'Weather factor on a supercharged engine',
    why: 'The factor was made for naturally aspirated engines: between 0.97 and 1.03 it is let pass, further out it may correct too much or too little (common practice, no source).',
    read: (counted) => {
      const { factor } = counted.view.correction;
      if (factor === null) return null;
      return said`${numberFigure(factor, 4)}, ${isOutside(counted) ? 'outside' : 'inside'} 0.97 to 1.03`;
    },
  });
  return [{ ...condition, state: 'unknown' }];
}

/** What the figures had in them when they came. A known factor is undone, so only an unknown one stands in the way. */
function carried(pulls: readonly CountedPull[]): ConditionDifference {
  const isOpen = ({ pull }: CountedPull) => pull.carried.factor === null;
  const condition = textCondition(pulls, {
    id: 'carried',
    label: 'Correction the figures came with',
    why: 'A known factor is undone first. Figures whose factor is not known cannot be brought to one air: up to 4 % either way (from memory of the trade).',
    read: carriedText,
  });
  return { ...condition, state: pulls.some(isOpen) ? 'unknown' : 'alike' };
}

function carriedText({ pull }: CountedPull): string | Said {
  const { standard, factor } = pull.carried;
  if (standard === 'observed') return 'observed';
  if (standard === 'not stated') return 'not stated, taken as observed';
  const name = correctionById(standard)?.name ?? 'corrected, by what is not known';
  return factor === null ? `${name}, factor not known` : said`${name}, factor ${numberFigure(factor, 4)}`;
}
