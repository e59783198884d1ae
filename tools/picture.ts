// Takes the pictures in README and docs from the real program with the demo book: `npm run picture`, after a build.
import { writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { launch } from '../apps/web/browser/launch.ts';
import { startPullbook } from '../apps/web/browser/start.ts';

const outAt = (name: string) => fileURLToPath(new URL(`../docs/${name}`, import.meta.url));
const pullbook = await startPullbook('demo');
const browser = await launch();
const page = await browser.newPage({ viewport: { width: 1280, height: 960 }, colorScheme: 'light' });
await page.goto(pullbook.address);
await page.getByRole('link').filter({ hasText: 'It adds 15 hp' }).click();
await page.getByText('Power and torque by').waitFor();
await page.waitForLoadState('networkidle');
await page.screenshot({ path: outAt('trial.png') });
const trial = new URL(page.url()).pathname.split('/').at(-1)!;
const still = await fetch(
  `${pullbook.address}/api/trials/${trial}/still?picture=answer&size=1080p&theme=dark&ground=true&format=png`,
);
if (!still.ok) throw new Error(`No still: ${await still.text()}`);
await writeFile(outAt('still.png'), new Uint8Array(await still.arrayBuffer()));
await page.goto(`${page.url()}/match`);
await page.getByRole('heading', { level: 2, name: 'On the compressor' }).waitFor();
await page.waitForLoadState('networkidle');
await page.screenshot({ path: outAt('match.png') });
const combinations = (await (await fetch(`${pullbook.address}/api/combinations`)).json()) as {
  id: string;
  name: string;
}[];
const base = combinations.find(({ name }) => name === 'Supercharged, base cam')!;
await page.setViewportSize({ width: 1280, height: 1440 });
await page.goto(`${pullbook.address}/combinations/${base.id}/reach?power=520+hp`);
await page.getByRole('button', { name: 'Keep this answer' }).waitFor();
await page.waitForLoadState('networkidle');
await page.screenshot({ path: outAt('reach.png') });
await browser.close();
await pullbook.stop();
