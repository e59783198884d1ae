import type { ChannelMeaning } from '@pullbook/core/pull';
import { toInside } from '@pullbook/core/quantity';
import { powerIdentity } from '../guess/power-identity.ts';
import type { ColumnMapping, FileReading } from '../model.ts';
import { unitOfMeaning } from '../pulls/unit-of-meaning.ts';

/**
 * Power divided by torque × angular speed under a mapping, 1 where all three are what they are said to be. `null` where a
 * column is missing or the ratio is not one constant.
 */
export function identityRatio(reading: FileReading, mapping: readonly ColumnMapping[]): number | null {
  const inside = (meaning: ChannelMeaning): Float64Array | null => {
    const said = mapping.find((one) => one.meaning === meaning);
    const column = said && reading.columns[said.index];
    const unit = said && unitOfMeaning(meaning, said.unit);
    return column && unit ? spread(column.values).map((value) => toInside(value, unit)) : null;
  };
  const [speed, torque, power] = [inside('engineSpeed'), inside('torque'), inside('power')];
  if (!speed || !torque || !power) return null;
  const answer = powerIdentity(speed, torque, power);
  return answer && answer.constant / ((2 * Math.PI) / 60);
}

const ROWS_LOOKED_AT = 1000;

/** Rows spread evenly over a column, the same for every column of one length. */
function spread(values: Float64Array): Float64Array {
  const step = Math.max(1, Math.floor(values.length / ROWS_LOOKED_AT));
  return step === 1 ? values : values.filter((_, row) => row % step === 0);
}
