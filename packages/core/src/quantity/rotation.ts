/**
 * Torque, power and inertia at a shaft. Each of the first two is the other turned round, so both are `ω = 2π n / 60` and nothing else.
 */

/** rad/s from r/min. */
function angularSpeed(speedRpm: number): number {
  return (2 * Math.PI * speedRpm) / 60;
}

/**
 * Power, W, from torque, N·m, and speed, r/min: `P = T ω`.
 *
 * @example powerFromTorque(542.327, 5000) // 283 961 W: 400 lb-ft at 5000 r/min is 380.8 hp
 */
export function powerFromTorque(torqueNm: number, engineSpeedRpm: number): number {
  return torqueNm * angularSpeed(engineSpeedRpm);
}

/** Torque, N·m, from power, W, and speed, r/min: `T = P / ω`. At standstill NaN: no torque can be told from power there. */
export function torqueFromPower(powerW: number, engineSpeedRpm: number): number {
  return engineSpeedRpm === 0 ? Number.NaN : powerW / angularSpeed(engineSpeedRpm);
}

/**
 * Torque, N·m, that a sweep takes to speed up what turns, hidden from the brake's load cell: `T = I dω/dt`.
 * Positive while the speed rises (the brake reads low by it), negative while it falls.
 *
 * @param momentOfInertia   kg·m², of all that turns at engine speed
 * @param sweepRateRpmPerS  r/min per second
 * @example inertiaTorque(0.4, 300) // 12.57 N·m
 */
export function inertiaTorque(momentOfInertia: number, sweepRateRpmPerS: number): number {
  return momentOfInertia * angularSpeed(sweepRateRpmPerS);
}
