import { extentOf } from '../numeric/index.ts';
import type { Pull, PullView } from '../pull/index.ts';
import { beltAndImpeller } from './belt-and-impeller.ts';
import { compressorHeat } from './compressor-heat.ts';
import { curveShape } from './curve-shape.ts';
import { exhaust } from './exhaust.ts';
import { factor } from './factor.ts';
import { fuelAndAir } from './fuel-and-air.ts';
import { fuelDelivery } from './fuel-delivery.ts';
import { hardwareFindings } from './hardware.ts';
import { manifold } from './manifold.ts';
import { meanPressure } from './mean-pressure.ts';
import type { Finding } from './model.ts';
import { oil } from './oil.ts';
import {
  finiteOrNull,
  observedPower,
  type PullAtHand,
  pullAtHand,
  type RuleContext,
} from './pull-at-hand.ts';
import { readOffPicture } from './read-off-picture.ts';
import { findingsOfRemarks } from './wrapped-remarks.ts';

/**
 * What the rules say of one pull, about `pull <id>`: its own channels, its view, and its parts at the speed and boost it reached.
 * Remarks of the view that say the same are findings here, and are left out where remarks are shown (`remarksBeside`).
 *
 * @example findingsOfPull(pull, viewPull(pull, recipe), { sheet: combination.sheet })
 */
export function findingsOfPull(pull: Pull, view: PullView, context: RuleContext): Finding[] {
  const at = pullAtHand(pull, view, context);
  const read = readOffPicture(at);
  // A factor that disagrees is said with the standard that fits best; a picture's axes explain power off torque × speed.
  const own = ['factor-is-not-the-weathers'];
  if (read.length > 0) own.push('power-is-not-torque-times-speed', 'unit-mix');
  const remarks = view.remarks.filter(({ code }) => !own.includes(code));
  return [
    ...findingsOfRemarks(remarks, at),
    ...factor(at),
    ...read,
    ...fuelAndAir(at),
    ...meanPressure(at),
    ...manifold(at),
    ...beltAndImpeller(at),
    ...compressorHeat(at),
    ...fuelDelivery(at),
    ...curveShape(at),
    ...exhaust(at),
    ...oil(at),
    ...hardwareFindings(
      at.sheet,
      { engineSpeedRpm: at.highestRpm, boost: at.highestBoost, power: highestPower(at) },
      at,
    ),
  ];
}

/** W, observed; `null`: no power, or what it carries is not known. */
function highestPower(at: PullAtHand): number | null {
  const power = observedPower(at);
  return power === null ? null : finiteOrNull(extentOf(power)[1]);
}
