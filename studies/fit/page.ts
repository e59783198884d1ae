import { heldBy, meanOf, rmsOf } from './tally.ts';
import { type Judged, SPEEDS, type World } from './world.ts';

const PASCAL_PER_KILOPASCAL = 1000;
const WATT_PER_KILOWATT = 1000;

/** The study's page, docs/fit.md. */
export function fitPage(worlds: readonly World[], failed: readonly string[]): string {
  const boost = ({ nextPulley }: World) => nextPulley.boost;
  const power = ({ nextPulley }: World) => nextPulley.power;
  const camBoost = ({ cam }: World) => cam.boost;
  const camPower = ({ cam }: World) => cam.power;
  return `# How well the next pulley is foretold, and the difference of two cams

Written by \`npm run study:fit\`. Each world is a demo book from a seed of its own: another boost, another slip, head, efficiency and heat, a map off by another share,
spark taken back by another amount, other noise, from a generator that uses nothing of the match (packages/demo, \`hiddenTruthOf\`). The match is fitted to the pulls
of the first pulley alone and foretells the second, 5 % faster, by the acts that the program's own pages use. The widths of what is open in a fit were set on the worlds of
seeds 1 to 30; the worlds below were looked at once, when they were set. Worlds of one generator share its formulas: they tell how the fit
meets engines of this kind and no others. They also differ less from each other than the match's stated spreads allow, so that its bands hold more than 95 of 100 of them; on
engines that differ as stated they are held against [docs/next-pulley.md](next-pulley.md).

Asked for: boost and power of the next pulley, and the differences of the cams, within the 95 % band at 90 of 100 speeds or more. ${
    failed.length === 0 ? 'All meet it.' : `**Missed by ${failed.join(', ')}.**`
  }

## In one look: ${worlds.length} worlds, ${SPEEDS.length} speeds each from ${SPEEDS[0]} to ${SPEEDS.at(-1)} rpm

| figure | within the band | root mean square off | half the band, mean |
|---|---:|---:|---:|
| boost of the next pulley | ${perCent(heldBy(worlds, boost), 1)} | ${perCent(rmsOf(all(worlds, boost, 'off')))} | ${perCent(meanOf(all(worlds, boost, 'half')))} |
| power of the next pulley | ${perCent(heldBy(worlds, power), 1)} | ${perCent(rmsOf(all(worlds, power, 'off')))} | ${perCent(meanOf(all(worlds, power, 'half')))} |
| boost, longer cam less base cam | ${perCent(heldBy(worlds, camBoost), 1)} | ${kilopascal(rmsOf(all(worlds, camBoost, 'off')))} | ${kilopascal(meanOf(all(worlds, camBoost, 'half')))}; of the longer cam by itself ${kilopascal(meanOf(worlds.flatMap(({ cam }) => cam.boostAlone)))} |
| power, longer cam less base cam | ${perCent(heldBy(worlds, camPower), 1)} | ${kilowatt(rmsOf(all(worlds, camPower, 'off')))} | ${kilowatt(meanOf(all(worlds, camPower, 'half')))}; of the longer cam by itself ${kilowatt(meanOf(worlds.flatMap(({ cam }) => cam.powerAlone)))} |

## Over engine speed, next pulley

| rpm | boost off, mean | root mean square | half the band | power off, mean | root mean square | half the band |
|---:|---:|---:|---:|---:|---:|---:|
${SPEEDS.map((speed, place) => {
  const at = (of: (world: World) => Judged, what: keyof Judged) =>
    worlds.map((world) => of(world)[what][place]!);
  const cells = [boost, power].flatMap((of) => [
    perCent(meanOf(at(of, 'off'))),
    perCent(rmsOf(at(of, 'off'))),
    perCent(meanOf(at(of, 'half'))),
  ]);
  return `| ${speed} | ${cells.join(' | ')} |`;
}).join('\n')}

At the top the belt of most worlds begins to slip on the second pulley, which nothing in the pulls of the first one shows: the foretold boost is high there, and power with it.

## World by world, next pulley

| seed | boost, farthest off | power on average | power at ${SPEEDS.at(-1)} rpm |
|---:|---:|---:|---:|
${worlds
  .map(({ seed, nextPulley }) => {
    const farthest = nextPulley.boost.off.reduce(
      (most, one) => (Math.abs(one) > Math.abs(most) ? one : most),
      0,
    );
    return `| ${seed} | ${perCent(farthest)} | ${perCent(meanOf(nextPulley.power.off))} | ${perCent(nextPulley.power.off.at(-1)!)} |`;
  })
  .join('\n')}
`;
}

const all = (worlds: readonly World[], of: (world: World) => Judged, what: keyof Judged): number[] =>
  worlds.flatMap((world) => of(world)[what]);

const perCent = (share: number, decimals = 2): string => `${(100 * share).toFixed(decimals)} %`;
const kilopascal = (pascal: number): string => `${(pascal / PASCAL_PER_KILOPASCAL).toFixed(2)} kPa`;
const kilowatt = (watt: number): string => `${(watt / WATT_PER_KILOWATT).toFixed(2)} kW`;
