import type { Fuel, SubstanceId } from '../fuel/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';

/** Share by volume from which a fuel is handled as an alcohol is. */
const HANDLED_AS = 0.4;

/** What somebody who goes over to a fuel has to know before it is in the cell; common practice, no source. */
export function fuelCautions({ name, parts }: Fuel): Remark[] {
  const shareOf = (substance: SubstanceId): number =>
    parts.reduce((sum, part) => sum + (part.substance === substance ? part.volumeShare : 0), 0);
  const methanol = shareOf('methanol');
  const isAlcohol = methanol + shareOf('ethanol') >= HANDLED_AS;
  return [
    ...(methanol >= HANDLED_AS
      ? [
          remark(
            'caution',
            'methanol-on-rung',
            said`${name} burns with a flame that is not seen by daylight and is poisonous by skin, breath and mouth: gloves, water at hand, and the fuel system flushed after the run.`,
          ),
        ]
      : []),
    ...(isAlcohol
      ? [
          remark(
            'caution',
            'alcohol-on-rung',
            said`Hoses, seals, pump and injectors must be rated for ${name}. Measure the alcohol in what the drum holds, and begin rich.`,
          ),
        ]
      : []),
  ];
}
