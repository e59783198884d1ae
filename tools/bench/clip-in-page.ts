import { performance } from 'node:perf_hooks';
import { launch } from '../../apps/web/browser/launch.ts';
import { startPullbook } from '../../apps/web/browser/start.ts';

interface Told {
  seconds: number;
  steps: { id: string; isShown: boolean; seconds: number }[];
}

/** Clips of ten seconds of the demo trial that asks so, 1080p at 60, made by the page of the built program, s. */
export async function clipsInPage(asked: string): Promise<{ opaque: number; clear: number }> {
  const pullbook = await startPullbook('demo');
  const browser = await launch();
  const page = await browser.newPage();
  const ask = async (path: string) => (await fetch(`${pullbook.address}/api/trials${path}`)).json();
  const { rows } = (await ask('')) as { rows: { id: string; question: string }[] };
  const { id } = rows.find(({ question }) => question === asked)!;
  const { runningOrder } = (await ask(`/${id}/publish`)) as { runningOrder: Told };
  const share = 10 / runningOrder.seconds;
  const steps = runningOrder.steps.map(({ id, isShown, seconds }) => ({
    id,
    isShown,
    title: null,
    seconds: share * seconds,
  }));
  const { ok } = await fetch(`${pullbook.address}/api/trials/${id}`, {
    method: 'PATCH',
    headers: { 'content-type': 'application/json', origin: pullbook.address },
    body: JSON.stringify({ runningOrder: { steps, speed: 1 }, reason: 'ten seconds' }),
  });
  if (!ok) throw new Error('The running order was not taken.');
  const made = async (format: string, isTransparent: boolean) => {
    await page.goto(`${pullbook.address}/trials/${id}/publish`);
    const group = page.getByRole('group', { name: 'By this page' });
    await group.getByLabel('Format').selectOption(format);
    if (isTransparent) await group.getByLabel('Transparent').check();
    const start = performance.now();
    await page.getByRole('button', { name: 'Make the clip' }).click();
    await page.getByText('Made and saved').waitFor({ timeout: 300_000 });
    return (performance.now() - start) / 1000;
  };
  const times = { opaque: await made('mp4', false), clear: await made('webm', true) };
  await browser.close();
  await pullbook.stop();
  return times;
}
