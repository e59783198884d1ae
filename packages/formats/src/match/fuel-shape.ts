import { type Fuel, fuelNamed } from '@pullbook/core/fuel';
import { atPlace, refuse, type Shape, text } from './shape.ts';

/** A fuel by its name or its parts by volume. */
export function fuel(about: string): Shape<Fuel> {
  const named = text(
    `${about} By its name or by its parts: gasoline 98, E10, E85, methanol, "70 % ethanol, 30 % gasoline".`,
  );
  return {
    get schema() {
      return named.schema;
    },
    read: (value, path, reading) => {
      const name = named.read(value, path, reading);
      if (name === undefined) return undefined;
      const found = fuelNamed(name);
      if (!found.ok) return refuse(reading, path, 'fuel-not-known', found.remarks[0]?.message ?? name);
      reading.remarks.push(...found.remarks.map((one) => atPlace(reading, path, one)));
      return found.value;
    },
  };
}
