const DEGREE = Math.PI / 180;

/** rad at 5,000 r/min: from the spark to where burning shows, and from there to its end; a usual two-valve chamber at full load (common practice, no source). */
const LAG = 9 * DEGREE;
const DURATION = 55 * DEGREE;
const AT_RPM = 5000;
/** Turbulence rises with speed, so that burning takes only so much more crank angle. */
const SPEED_EXPONENT = 0.3;
/** Of Wiebe's function `1 - exp(-a y^(m+1))`, as Heywood has them for spark ignition (from memory). */
const EFFICIENCY = 5;
const FORM = 3;
/** rad after top dead centre at which half is burnt at best torque: 8 to 10° (common practice, no source). */
const HALF_BURNT_AT_BEST = 9 * DEGREE;

/** When a charge burns, in rad of crank. */
export interface Burn {
  lag: number;
  duration: number;
}

/** Lag and duration at an engine speed, r/min: they grow with its power of 0.3. */
export function burnAt(engineSpeedRpm: number): Burn {
  const by = (engineSpeedRpm / AT_RPM) ** SPEED_EXPONENT;
  return { lag: LAG * by, duration: DURATION * by };
}

/**
 * Share of its crank angles in which the quickest of many cycles burns, against their mean: the angles scatter by some 8 % from cycle to cycle and from
 * cylinder to cylinder, and knock is heard when one cycle in twenty knocks (1.6 standard deviations; common practice, no source). Its pressure then stands
 * some 10 to 20 % above that of the mean, as cycles of real engines do.
 */
const QUICKEST = 0.87;

/** How the quickest of cycles burns that burn like this in the mean: the one that knocks first, and so sets the spark. */
export const quickestOf = ({ lag, duration }: Burn): Burn => ({
  lag: QUICKEST * lag,
  duration: QUICKEST * duration,
});

/** Share burnt when a share `along` of the duration has gone by. */
export const burntShare = (along: number): number =>
  along <= 0 ? 0 : 1 - Math.exp(-EFFICIENCY * along ** FORM);

/** rad before top dead centre for most torque, were there no knock: half is burnt 9° after it. */
export function sparkForBestTorque({ lag, duration }: Burn): number {
  return lag + duration * alongWhenBurnt(0.5) - HALF_BURNT_AT_BEST;
}

/** Share of the duration after which a share is burnt: the other way round. */
export const alongWhenBurnt = (share: number): number =>
  (Math.log(1 / (1 - share)) / EFFICIENCY) ** (1 / FORM);
