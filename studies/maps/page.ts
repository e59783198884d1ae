import type { MapError } from '@pullbook/core/airpath';
import type { MapJudged } from './judge.ts';

/** The study's page, docs/maps.md. */
export function mapsPage(
  maps: readonly MapJudged[],
  asking: { line: number; point: number },
  failed: readonly string[],
): string {
  return `# How well a compressor map is known between its lines

Written by \`npm run study:maps\`. Measured stages with their sources: [checks/compressor-maps](../checks/compressor-maps/PROVENANCE.md). Each speed
line is left out in turn and met by a fit of the others. A point's error is its shortest distance to the predicted line, in shares of its own flow and pressure
ratio (where a line stands nearly vertical it is judged by its flow); its efficiency is held against the one at the nearest place. Beside it, in
the same table, straight interpolation between the neighbouring lines at equal relative flow. Outer lines are gone to beyond what is measured, and apart.
All figures are root mean squares.

Asked for: inner lines at most 1.2 % and 0.015 of efficiency, and less than half of what straight interpolation is off. ${
    failed.length === 0 ? 'All maps meet it.' : `**Missed by ${failed.join(', ')}.**`
  }

## Inner lines, left out

| stage | lines | points | fit | straight | fit, efficiency | straight, efficiency |
|---|---:|---:|---:|---:|---:|---:|
${maps.map(({ name, points, left }) => row([name, left.lines.length, points, share(left.inner.fit), share(left.inner.straight), efficiency(left.inner.fit), efficiency(left.inner.straight)])).join('\n')}

${straightIsBetter(maps)}

## Outer lines, left out, and the map's own points

| stage | outer lines | efficiency | own points, all lines in | efficiency |
|---|---:|---:|---:|---:|
${maps.map(({ name, left, fitted }) => row([name, share(left.outer.fit), efficiency(left.outer.fit), share(fitted.quality!), efficiency(fitted.quality!)])).join('\n')}

## Line by line

| stage | speed, r/min | | fit | straight | fit, efficiency | straight, efficiency |
|---|---:|---|---:|---:|---:|---:|
${maps.flatMap(({ name, left }) => left.lines.map(({ speedRpm, position, fit, straight }) => row([name, Math.round(speedRpm), position, share(fit), straight === null ? '' : share(straight), efficiency(fit), straight === null ? '' : efficiency(straight)]))).join('\n')}

## Time

Processor time, medians, on the machine that wrote this page.

| what | time |
|---|---:|
${maps.map(({ name, fitTime, leaveOutTime, points }) => `${row([`${name}, ${points} points: fit`, `${fitTime.toFixed(0)} ms`])}\n${row([`${name}: each line left out, all`, `${leaveOutTime.toFixed(0)} ms`])}`).join('\n')}
| one speed line made ready | ${asking.line.toFixed(2)} µs |
| pressure ratio and efficiency at one flow | ${asking.point.toFixed(2)} µs |
`;
}

/** Said where it is so: the table alone would hide it. */
function straightIsBetter(maps: readonly MapJudged[]): string {
  const names = maps
    .filter(({ left: { inner } }) => inner.straight.efficiencyRms! < inner.fit.efficiencyRms!)
    .map(({ name }) => name);
  return names.length === 0
    ? 'The fit is nearer in efficiency too, on each stage.'
    : `In efficiency straight interpolation is nearer than the fit on ${names.join(', ')}.`;
}

const row = (cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`;

const share = ({ pressureRatioRms }: MapError): string => `${(100 * pressureRatioRms).toFixed(2)} %`;

const efficiency = ({ efficiencyRms }: MapError): string => efficiencyRms?.toFixed(4) ?? '';
