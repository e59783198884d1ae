import { blendOf } from './blend.ts';
import type { Fuel } from './model.ts';

/** Usual pump gasoline without alcohol: what is taken where nothing is told. */
export const GASOLINE: Fuel = blendOf([{ substance: 'gasoline', volumeShare: 1 }]);
