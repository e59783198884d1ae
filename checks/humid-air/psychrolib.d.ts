/** The few functions of the package that the checks call; it ships no types. Temperatures °C, pressures Pa, ratios 1. */
declare module 'psychrolib' {
  const psychrolib: {
    SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(temperature: number): number;
    GetHumRatioFromRelHum(temperature: number, relativeHumidity: number, pressure: number): number;
    GetTDewPointFromRelHum(temperature: number, relativeHumidity: number): number;
    GetTWetBulbFromRelHum(temperature: number, relativeHumidity: number, pressure: number): number;
    GetVapPresFromHumRatio(humidityRatio: number, pressure: number): number;
    GetHumRatioFromTWetBulb(temperature: number, wetBulb: number, pressure: number): number;
    GetMoistAirDensity(temperature: number, humidityRatio: number, pressure: number): number;
    GetStandardAtmPressure(altitude: number): number;
  };
  export default psychrolib;
}
