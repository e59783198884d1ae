/**
 * Friction of a motored engine with its exchange of gas at full throttle, W: 0.97 + 0.15 n + 0.05 n² bar, n in 1,000 r/min (Barnes-Moss;
 * Heywood, Internal Combustion Engine Fundamentals, eq. 13.6, from memory). Of four-cylinder spark-ignition engines of 0.85 to 2 litres, 1,000 to
 * 6,000 r/min; larger engines with larger bores lie somewhat lower.
 *
 * @example motoredFriction(0.002, 3000) // 187 kPa × 50 × 1/2 litres: 9350
 */
export const motoredFriction = (displacement: number, engineSpeedRpm: number): number => {
  const thousands = engineSpeedRpm / 1000;
  const meanPressure = 1e5 * (0.97 + 0.15 * thousands + 0.05 * thousands ** 2);
  return (meanPressure * displacement * engineSpeedRpm) / 120;
};
