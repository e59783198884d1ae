import { rootInBracket } from '../numeric/index.ts';
import { enthalpyOf, entropyFunctionOf, gasConstantOf, type Mixture } from './mixture.ts';

/**
 * Compression of an ideal gas whose heat capacity varies with temperature. Pressures and temperatures are total; efficiencies adiabatic, total
 * to total. Holds from 200 K, without condensation.
 */
export interface Compression {
  /** K */
  inletTemperature: number;
  outletTemperature: number;
  /** Outlet over inlet, absolute. */
  pressureRatio: number;
}

/** K at the outlet of a compression without loss. `isentropicTemperature(DRY_AIR, 300, 2)`: 365.6 */
export function isentropicTemperature(gas: Mixture, inletTemperature: number, pressureRatio: number): number {
  const asked = entropyFunctionOf(gas, inletTemperature) + gasConstantOf(gas) * Math.log(pressureRatio);
  return rootInBracket((temperature) => entropyFunctionOf(gas, temperature) - asked, {
    low: 150,
    high: 6000,
  });
}

/** Isentropic enthalpy rise over the real one. */
export function isentropicEfficiency(
  gas: Mixture,
  { inletTemperature, outletTemperature, pressureRatio }: Compression,
): number {
  const ideal = isentropicTemperature(gas, inletTemperature, pressureRatio);
  const from = enthalpyOf(gas, inletTemperature);
  return (enthalpyOf(gas, ideal) - from) / (enthalpyOf(gas, outletTemperature) - from);
}

/** W that the gas takes up: flow in kg/s of the whole mixture times its enthalpy rise. */
export const compressionPower = (
  gas: Mixture,
  flow: number,
  { inletTemperature, outletTemperature }: Pick<Compression, 'inletTemperature' | 'outletTemperature'>,
): number => flow * (enthalpyOf(gas, outletTemperature) - enthalpyOf(gas, inletTemperature));
