import { type MatchBundle, matchPage } from '@pullbook/views/match';

/** A page of a match, each time with another pulley tried on its last combination, as its page works it out while somebody types. */
export function pageTried(bundle: MatchBundle): () => void {
  const { key, input } = bundle.combinations.at(-1)!;
  const { blowerPulleyDiameter } = input.drive;
  if (blowerPulleyDiameter === null) throw new Error('the match has no pulley to try another for');
  let tried = 0;
  return () => {
    tried += 1;
    const whatIf = { key, blowerPulleyDiameter: blowerPulleyDiameter * (1 - tried / 1000) };
    matchPage({ bundle, whatIf, bands: null }, { units: 'us', decimalMark: '.' });
  };
}
