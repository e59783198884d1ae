import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { makeDemoBook } from '@pullbook/workshop';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { capturedJson } from '../../apps/cli/src/testing/captured.ts';
import { readSvg, type SvgElement } from './read-svg.ts';

/**
 * Pictures of the demo that a person looked at and found good; each in `reviewed/`. A picture that changed is drawn anew by
 * `PULLBOOK_RENEW_PICTURES=1 npx vitest run --project unit checks/publish/reviewed.test.ts`, then each changed file is opened and
 * looked at (nothing cut, crowded, on one another; the words true of the curves) before it is kept.
 */
const REVIEWED = join(import.meta.dirname, 'reviewed');
const RENEW = process.env.PULLBOOK_RENEW_PICTURES === '1';
/** px; machines round a tenth of a pixel either way. */
const ALIKE = 0.3;

const CAM = 'What does the longer cam add at the same pulley?';
const PULLEY = 'What does the smaller pulley add?';
const WANTED: [name: string, trial: string, picture: string, size: string, theme: 'light' | 'dark'][] = [
  ['answer-wide', CAM, 'answer', '1080p', 'dark'],
  ['answer-tall', CAM, 'answer', 'tall', 'light'],
  ['power-square', CAM, 'power', 'square', 'dark'],
  ['gain-wide', CAM, 'gain', '1080p', 'light'],
  ['temperatures-wide', CAM, 'temperatures', '1080p', 'dark'],
  ['table-wide', CAM, 'table', '1080p', 'light'],
  ['combination-tall', CAM, 'combination:B', 'tall', 'dark'],
  ['badges-square', CAM, 'badges', 'square', 'light'],
  ['why-wide', CAM, 'why', '1080p', 'dark'],
  ['thumbnail', CAM, 'thumbnail', 'thumbnail', 'dark'],
  ['likely-wide', PULLEY, 'answer', '1080p', 'light'],
  ['reply-square', PULLEY, 'reply', 'square', 'dark'],
];

const folder = mkdtempSync(join(tmpdir(), 'pullbook-reviewed-'));
beforeAll(() => makeDemoBook(join(folder, 'demo')), 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test.each(WANTED)(
  '%s',
  async (name, trial, picture, size, theme) => {
    const argv = ['publish', trial, '--draft', '--kind', 'still', '--format', 'svg', '--picture', picture];
    const where = ['--out', join(folder, name), '--book', join(folder, 'demo')];
    const { json } = await capturedJson([...argv, '--size', size, '--theme', theme, ...where]);
    expect(json.files).toHaveLength(1);
    const now = withoutNumbers(readFileSync(json.files[0].path, 'utf8'));
    const path = join(REVIEWED, `${name}.svg`);
    if (RENEW) writeFileSync(path, now);
    expect(differences(readSvg(readFileSync(path, 'utf8')), readSvg(now))).toEqual([]);
  },
  30_000,
);

test('nothing lies there that no test looks at', () => {
  expect(readdirSync(REVIEWED).sort()).toEqual(WANTED.map(([name]) => `${name}.svg`).sort());
});

/** The carried figures are held elsewhere, and name pulls by ids that every demo book has its own of. */
const withoutNumbers = (svg: string): string => svg.replace(/<metadata\b.*?<\/metadata>/su, '');

/** Where two drawings differ: other elements, other words, or a number that is off. */
function differences(kept: SvgElement, now: SvgElement): string[] {
  const here = `<${now.tag}> ${now.text || JSON.stringify(now.attributes).slice(0, 120)}`;
  if (kept.tag !== now.tag || kept.text !== now.text) return [`<${kept.tag}> ${kept.text} became ${here}`];
  const names = new Set([...Object.keys(kept.attributes), ...Object.keys(now.attributes)]);
  const changed = [...names].filter((name) => !isAlike(kept.attributes[name], now.attributes[name]));
  if (kept.children.length !== now.children.length)
    return [`${here}: ${kept.children.length} elements became ${now.children.length}`];
  return [
    ...changed.map((name) => `${here}: ${name} was ${kept.attributes[name]?.slice(0, 80)}`),
    ...now.children.flatMap((child, index) => differences(kept.children[index]!, child)),
  ];
}

function isAlike(one: string | undefined, other: string | undefined): boolean {
  if (one === other) return true;
  if (one === undefined || other === undefined) return false;
  const [ours, theirs] = [one, other].map((value) => value.match(/-?[\d.]+/gu)?.map(Number) ?? []);
  const bare = (value: string) => value.replaceAll(/-?[\d.]+/gu, '#');
  return (
    bare(one) === bare(other) &&
    !one.startsWith('#') &&
    ours!.every((value, index) => Math.abs(value - theirs![index]!) <= ALIKE)
  );
}
