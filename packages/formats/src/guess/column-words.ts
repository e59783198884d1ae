import type { ChannelMeaning } from '@pullbook/core/pull';

/** What the words of a column's name say. */
export interface NameSays {
  meaning: ChannelMeaning;
  /** The name says that a correction is inside, or that none is. */
  correction: 'corrected' | 'observed' | null;
}

/** Whether a power or torque is told to be read behind the gearbox. */
export const isBehindGears = (name: string): boolean => ROUND_PARTS.test(plainWords(name));

/** Lower case, without accents, words parted by single spaces: `ÖlTemperatur_1` → `ol temperatur 1`. */
export function plainWords(name: string): string {
  return name
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .replace(/(\p{L})(\d+)$/u, '$1 $2')
    .replace(/[^\p{L}\d/]+/gu, ' ')
    .trim();
}

// English first, then German, French, Spanish, Italian. Common practice, no source.
const TEMPERATURE = /temp|\bt\b|\b[ebi]gt|\bect\b|\bclt\b|\biat\b|\bmat\b|\bact\b/;
const PRESSURE = /press|druck|presion|\bp\b|\bvac(uum)?\b/;
const FLOW = /flow|rate|mass|consum|durchfluss|verbrauch|strom|debit|caudal|menge|portata/;
const OIL = /\boil|\bol ?(temp|druck)|\boel|huile|aceite|\bolio/;
const COOLANT =
  /coolant|water|\bect\b|\bclt\b|kuhl(wasser|mittel)|wasser|refroidissement|\beau\b|\bagua|\bacqua|refrigerante/;
const WATER = /water|coolant|wasser|\beau\b|\bagua|\bacqua/;
/** Not of the engine: what carries its power away, and the brake that takes it. */
const BESIDE_THE_ENGINE =
  /\b(gear ?box|transmission|diff(erential)?|axle|brake|dyno|absorber|hub|frein|freno)\b|getriebe|bremse|boite de vitesse/;
const ROUND_PARTS =
  /\b(wheel|roller|drum|road|vehicle|ground|fan|alternator|hub|((drive|prop|output|input) ?shaft)|gear ?box|rad(?![ /]?s\b)|rolle|roue|rouleau|ruota|rueda)s?\b/;
const FUEL = /fuel|kraftstoff|benzin|carburant|essence|combustible|gasolina|benzina/;
const EXHAUST = /exhaust|\begt|abgas|echappement|\bescape\b|\bexh\b|scarico/;
const MACHINE =
  '(?:impeller|blower|compressor|supercharger|turbo|turbine|lader|verdichter|compresseur|compresor)';
const DISCHARGE = new RegExp(
  `discharge|refoulement|nach (?:dem )?(?:lader|verdichter)|${MACHINE}( air)? (?:out|outlet|exit|austritt|sortie|salida)`,
);
const CHARGE =
  /charge\b|manifold|plenum|after ?cooler|inter ?cooler|\bmat\b|\bact\b|ladeluft|saugrohr|suralimentation|collecteur|colector/;
const INLET =
  /inlet|intake|\biat\b|ambient|\bair\b|\bcell\b|\broom\b|ansaug|lufttemp|umgebung|admission|aspiration|admision|\baire\b/;

/** In this order; the first that fits wins. `other` names what looks like one of ours and is not. */
const RULES: readonly [ChannelMeaning, (words: string) => boolean][] = [
  [
    'other',
    (w) =>
      /\b(target|soll|setpoint|set point|demand|request(ed)?|desired|commanded|consigne|limit|error|duty|loss(es)?|drag|friction)\b|bsfc|specific|efficien|wirkungsgrad|rendement|\b[ib]mep\b|\bve\b|inertia|verlust|schlepp|reibung|\bpertes?\b|\bperdit[ae]\b|\bperdidas?\b/.test(
        w,
      ),
  ],
  ['other', (w) => BESIDE_THE_ENGINE.test(w) && (OIL.test(w) || WATER.test(w))],
  [
    'correctionFactor',
    (w) => /corr?\w* ?(factor|fact\b|faktor|facteur|coef)|korrekturfaktor|factor de corr|^cf$/.test(w),
  ],
  ['relativeHumidity', (w) => /humid|\brh\b|feucht|humedad|umidita/.test(w)],
  [
    'barometer',
    (w) => /\bbaro|atmos[pf]|\bluftdruck|umgebungsdruck|^(ambient|cell|room) (p\b|press)/.test(w),
  ],
  [
    'impellerSpeed',
    (w) => new RegExp(`${MACHINE} ?(shaft |wheel )?(speed|rpm|drehzahl|regime|n\\b)`).test(w),
  ],
  ['other', (w) => ROUND_PARTS.test(w) && /\brpm\b|speed|\brevs?\b|drehzahl|\bregime\b|\bgiri\b/.test(w)],
  ['lambda', (w) => /lambda|λ|\blam\b/.test(w)],
  ['airFuelRatio', (w) => /\bafr\b|air.{0,5}fuel|\ba ?\/ ?f\b|^a f\b/.test(w)],
  ['dischargeTemperature', (w) => DISCHARGE.test(w) && TEMPERATURE.test(w)],
  ['dischargePressure', (w) => DISCHARGE.test(w) && PRESSURE.test(w)],
  ['crankcasePressure', (w) => /crank ?case|kurbelgehause|\bcarter\b/.test(w)],
  ['oilTemperature', (w) => OIL.test(w) && TEMPERATURE.test(w)],
  ['oilPressure', (w) => OIL.test(w) && PRESSURE.test(w)],
  ['coolantTemperature', (w) => COOLANT.test(w) && !/cooler/.test(w) && TEMPERATURE.test(w)],
  ['fuelTemperature', (w) => FUEL.test(w) && TEMPERATURE.test(w)],
  ['fuelPressure', (w) => FUEL.test(w) && PRESSURE.test(w)],
  ['fuelFlow', (w) => FUEL.test(w) && FLOW.test(w)],
  ['exhaustTemperature', (w) => EXHAUST.test(w) && TEMPERATURE.test(w)],
  ['boost', (w) => /boost|ladedruck|suralimentation|sobrealimentacion/.test(w) && !/temp|duty|valve/.test(w)],
  [
    'manifoldPressure',
    (w) =>
      /\bmap\b/.test(w) ||
      (/manifold|plenum|saugrohr|collecteur|colector|intake|inlet|admission|admision/.test(w) &&
        PRESSURE.test(w)),
  ],
  ['chargeTemperature', (w) => CHARGE.test(w) && !WATER.test(w) && TEMPERATURE.test(w)],
  [
    'inletAirTemperature',
    (w) => INLET.test(w) && !WATER.test(w) && !/cooling air|kuhlluft/.test(w) && TEMPERATURE.test(w),
  ],
  [
    'airFlow',
    (w) =>
      /\bair ?(mass ?)?flow|\bmaf\b|mass air|luftmasse|luftdurchsatz|debit d ?air|caudal de aire/.test(w),
  ],
  [
    'sparkAdvance',
    (w) => /spark|ignition|\btiming\b|zund|avance|encendido|allumage|\bbtdc\b|anticipo/.test(w),
  ],
  ['throttle', (w) => /throttle|\btps\b|drosselklappe|papillon|mariposa|farfalla/.test(w)],
  ['batteryVoltage', (w) => /\bbatt|\bvbat|bordspannung|^volt(s|age)?$|bateria/.test(w)],
  [
    'torque',
    (w) =>
      /torque|\btq\b|drehmoment|\bmoment\b|\bcouple\b|\bpar\b|coppia|^md$|^n ?m$|^(lbf?|ft) ?(ft|lbs?)$/.test(
        w,
      ),
  ],
  [
    'power',
    (w) => /power|\bpwr\b|leistung|puissance|potencia|potenza|\b[bw]?hp\b|\bk ?w\b|\bps\b|\bcv\b/.test(w),
  ],
  [
    'engineSpeed',
    (w) =>
      /\brpm\b|\brevs?\b|drehzahl|\bregime\b|umdrehung|\bgiri\b|(engine|motor|crank|crankshaft|brake|dyno) (speed|n$)|^(engine |test )?speed( \d)?$|^n( mot(or)?)?$|^[ut]r? ?\/ ?min$|^velocidad$|velocidad (del |de )?(motor|giro)/.test(
        w,
      ),
  ],
  [
    'time',
    (w) =>
      /^(elapsed|run|log|pull|test|sample|unix|epoch)? ?time\b|\bepoch\b|^(zeit|uhrzeit|messzeit|temps|tiempo|tempo|heure|hora|elapsed|sec|seconds?|sekunden?|clock|timestamp)\b|^t$/.test(
        w,
      ),
  ],
]; // prettier-ignore

/**
 * What the name of a column says it is; `null`: nothing known.
 *
 * @example meaningFromName('Drehmoment korrigiert') // { meaning: 'torque', correction: 'corrected' }
 */
export function meaningFromName(name: string): NameSays | null {
  const words = plainWords(name);
  const rule = RULES.find(([, fits]) => fits(words));
  if (!rule) return null;
  return { meaning: rule[0], correction: correctionFromName(words) };
}

function correctionFromName(words: string): NameSays['correction'] {
  if (/\bobs(erved)?\b|\braw\b|\buncorr|unkorr|gemessen|\bbrut\b|non corr/.test(words)) return 'observed';
  if (/\bcorr|\bkorr|corrig|\bstd\b|\bsae\b|\bdin\b|\bnorm/.test(words)) return 'corrected';
  return null;
}
