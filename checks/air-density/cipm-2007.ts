/**
 * CIPM-2007, written down independently of core: A. Picard, R. S. Davis, M. Gläser, K. Fujii, "Revised formula for the density of moist
 * air (CIPM-2007)", Metrologia 45 (2008) 149-155, eq. 1 and appendix A.1, with 400 µmol/mol of carbon dioxide.
 * Constants read in several public implementations that agree. Stated relative uncertainty 22e-6, for 60 to 110 kPa and 15 to 27 °C.
 */
const GAS_CONSTANT = 8.314472;
const DRY_AIR_MOLAR_MASS = 28.96546e-3;
const WATER_MOLAR_MASS = 18.01528e-3;

export interface DensityOfMoistAir {
  /** kg/m³ */
  density: number;
  compressibility: number;
  /** mol of water vapour per mol of moist air */
  waterMoleFraction: number;
}

export function densityCipm2007(air: {
  celsius: number;
  pascal: number;
  relativeHumidity: number;
}): DensityOfMoistAir {
  const { celsius: t, pascal: p, relativeHumidity } = air;
  const kelvin = t + 273.15;
  const saturation = Math.exp(
    1.2378847e-5 * kelvin ** 2 - 1.9121316e-2 * kelvin + 33.93711047 - 6.3431645e3 / kelvin,
  );
  const enhancement = 1.00062 + 3.14e-8 * p + 5.6e-7 * t ** 2;
  const x = (relativeHumidity * enhancement * saturation) / p;
  const compressibility =
    1 -
    (p / kelvin) *
      (1.58123e-6 -
        2.9331e-8 * t +
        1.1043e-10 * t ** 2 +
        (5.707e-6 - 2.051e-8 * t) * x +
        (1.9898e-4 - 2.376e-6 * t) * x ** 2) +
    (p / kelvin) ** 2 * (1.83e-11 - 0.765e-8 * x ** 2);
  const density =
    ((p * DRY_AIR_MOLAR_MASS) / (compressibility * GAS_CONSTANT * kelvin)) *
    (1 - x * (1 - WATER_MOLAR_MASS / DRY_AIR_MOLAR_MASS));
  return { density, compressibility, waterMoleFraction: x };
}
