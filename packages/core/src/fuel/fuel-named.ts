import { accepted, type Remark, type Result, refused, remark } from '../remark/index.ts';
import { blendOf } from './blend.ts';
import type { Fuel, FuelPart, SubstanceId } from './model.ts';
import { NAMED_FUELS } from './named-fuels.ts';
import { nearestFuel } from './nearest-fuel.ts';
import { SUBSTANCES } from './substances.ts';

/** What a gasoline's motor octane usually stands below its research octane (common practice, no source). */
const SENSITIVITY = 10;

/**
 * The fuel of that name. Read are the named fuels, `E30` and `M50` (per cent of alcohol by volume in gasoline), a gasoline by its
 * octane (`gasoline 102 RON`, `93 AKI`), and blends by volume, whose rest is gasoline where less than all is told:
 * `70 % ethanol, 30 % gasoline`. Refused with the nearest name and the list: an unknown one; shares above 100 %.
 *
 * @example fuelNamed('e85') // E85 as labelled: stoichiometric 9.80, with the caution that the pump's is 51 to 83 %
 */
export function fuelNamed(text: string): Result<Fuel> {
  const wanted = plain(text);
  const found = NAMED_FUELS.find(
    ({ fuel, spellings }) => plain(fuel.name) === wanted || spellings.some((one) => plain(one) === wanted),
  );
  if (found !== undefined) return accepted(found.fuel, cautionOf(found.caution));
  return byShortName(text, wanted) ?? byOctane(wanted) ?? byParts(text) ?? refused(notKnown(text));
}

/** Forgives capitals, spaces, hyphens and the place of the sign: `E85 Winter` is `e85winter`. */
const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[\s_-]+/gu, '')
    .replace('%', '');

const cautionOf = (caution: string): Remark[] =>
  caution === '' ? [] : [remark('caution', 'fuel-differs', caution)];

/** `e30`, `m50` */
function byShortName(text: string, wanted: string): Result<Fuel> | null {
  const [, letter, number] = /^([em])(\d{1,3}(?:[.,]\d+)?)$/u.exec(wanted) ?? [];
  if (letter === undefined) return null;
  const percent = Number(number!.replace(',', '.'));
  const substance = letter === 'e' ? 'ethanol' : 'methanol';
  return percent > 100
    ? refused(over100(text, percent))
    : accepted(filledUp([[substance, percent]], 'gasoline'));
}

/** `gasoline102ron`, `98ron`, `93aki` */
function byOctane(wanted: string): Result<Fuel> | null {
  const [, , octane, way] =
    /^(gasoline|petrol)?(\d{2,3}(?:[.,]\d+)?)(ron|aki|\(r\+m\)\/2)$/u.exec(wanted) ?? [];
  if (octane === undefined) return null;
  const told = Number(octane.replace(',', '.'));
  const research = way === 'ron' ? told : told + SENSITIVITY / 2;
  if (research < 60 || research > 130)
    return refused(
      remark(
        'refusal',
        'octane-impossible',
        `An octane number of ${told} cannot be of a gasoline; 60 to 130 is allowed. Write for example "gasoline 98 RON".`,
      ),
    );
  const fuel = blendOf([{ substance: 'gasoline', volumeShare: 1 }], `gasoline ${research} RON`);
  const octaneFrom = {
    kind: 'common practice',
    source: `research octane as told${way === 'ron' ? '' : ' as a mean of both'}; motor octane ${SENSITIVITY} below it, common practice, no source`,
  } as const;
  return accepted({
    ...fuel,
    researchOctane: research,
    motorOctane: research - SENSITIVITY,
    from: { ...fuel.from, octane: octaneFrom },
  });
}

/** `70 % ethanol, 30 % gasoline`; `30 % methanol in ethanol`; `70 % ethanol`, the rest gasoline. */
function byParts(text: string): Result<Fuel> | null {
  const [told = '', ...behind] = text.toLowerCase().split(/\bin\b/u);
  const found = [...told.matchAll(/(\d+(?:[.,]\d+)?)\s*(?:%|percent|per cent)\s*([a-z][a-z -]*[a-z])/gu)];
  if (found.length === 0) return null;
  const rest = behind.length === 0 ? 'gasoline' : substanceOf(behind.join(' '));
  if (rest === null) return refused(notKnown(behind.join(' ').trim()));
  const parts: [SubstanceId, number][] = [];
  for (const [, number, words] of found) {
    const substance = substanceOf(words!);
    if (substance === null) return refused(notKnown(words!.trim()));
    parts.push([substance, Number(number!.replace(',', '.'))]);
  }
  const whole = parts.reduce((sum, [, percent]) => sum + percent, 0);
  if (whole > 100 + ROUNDED) return refused(over100(text, whole));
  const isWhole = whole >= 100 - ROUNDED;
  if (!isWhole && behind.length === 0 && parts.some(([substance]) => substance === rest))
    return refused(
      remark(
        'refusal',
        'shares-not-whole',
        `The shares of "${text}" add up to ${+whole.toFixed(1)} %, not to 100 %. Give all of them, such as "70 % ethanol, 30 % gasoline".`,
      ),
    );
  return accepted(filledUp(parts, rest));
}

/** Per cent by which shares may miss 100, for they are rounded; it is shared out. */
const ROUNDED = 0.5;

/** Parts in per cent; `rest` is what lacks to 100. */
function filledUp(parts: readonly [SubstanceId, number][], rest: SubstanceId): Fuel {
  const percents = new Map<SubstanceId, number>();
  const add = (substance: SubstanceId, percent: number) =>
    percents.set(substance, (percents.get(substance) ?? 0) + percent);
  for (const [substance, percent] of parts) add(substance, percent);
  const told = [...percents.values()].reduce((sum, percent) => sum + percent, 0);
  const isWhole = Math.abs(told - 100) <= ROUNDED;
  if (!isWhole) add(rest, 100 - told);
  const whole = isWhole ? told : 100;
  return blendOf(
    [...percents].map(([substance, percent]): FuelPart => ({ substance, volumeShare: percent / whole })),
  );
}

function substanceOf(words: string): SubstanceId | null {
  const wanted = words.replace(/\b(by volume|and|with)\b.*$/u, '').trim();
  const found = Object.values(SUBSTANCES).find(({ spellings }) => spellings.includes(wanted));
  return found?.id ?? null;
}

const over100 = (text: string, percent: number): Remark =>
  remark(
    'refusal',
    'shares-over-100',
    `"${text}" makes ${+percent.toFixed(1)} % of a fuel; its shares by volume add up to 100 % at most. Write for example "70 % ethanol, 30 % gasoline".`,
  );

function notKnown(text: string): Remark {
  const names = NAMED_FUELS.map(({ fuel }) => fuel.name);
  const nearest = nearestFuel(plain(text), plain);
  const hint = nearest === null ? '' : ` Did you mean ${nearest}?`;
  return remark(
    'refusal',
    'fuel-not-known',
    `"${text}" is not a fuel that is known.${hint} Known are ${names.join(', ')}; E30 or M50 (per cent of alcohol by volume); "gasoline 102 RON"; and blends such as "70 % ethanol, 30 % gasoline".`,
  );
}
