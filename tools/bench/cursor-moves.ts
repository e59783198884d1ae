import type { ChartDescription } from '@pullbook/charts';
import type { CursorTable, TrialPage } from '@pullbook/views';
import { launch } from '../../apps/web/browser/launch.ts';
import { startPullbook } from '../../apps/web/browser/start.ts';

const MOVES = 200;

/** A table as long as the chart's lines: two columns and two rows for each panel. */
function tableFor({ panels }: ChartDescription): CursorTable {
  const at = panels[0]!.lines[0]!.x;
  return {
    at,
    columns: [
      { key: 'A', combination: 0 },
      { key: 'B', combination: 1 },
    ],
    rows: panels.flatMap(({ id, title, unit }) =>
      ['', ' again'].map((more) => ({
        id: `${id}${more}`,
        name: `${title}${more}`,
        unit,
        cells: [0, 1].map((line) => at.map((speed) => (speed + line).toFixed(1))),
      })),
    ),
    start: 0,
  };
}

/**
 * What one move of the mouse over a trial's chart costs the browser's main thread, from the browser's own counters: the
 * page of the demo's first trial, with this chart in place of its own.
 */
export async function cursorMoves(chart: ChartDescription): Promise<{ scriptMs: number; taskMs: number }> {
  const pullbook = await startPullbook('demo');
  const browser = await launch();
  const page = await browser.newPage({ baseURL: pullbook.address, viewport: { width: 1440, height: 1000 } });
  await page.route(/\/api\/trials\/[^/?]+(\?|$)/, async (route) => {
    const answer = await route.fetch();
    const shown = (await answer.json()) as TrialPage;
    await route.fulfill({ response: answer, json: { ...shown, chart, cursor: tableFor(chart) } });
  });
  await page.goto('/');
  await page.getByRole('listitem').getByRole('link').first().click();
  const cursor = page.getByRole('slider', { name: /^Cursor/ });
  await cursor.waitFor();
  const box = (await cursor.boundingBox())!;
  const across = async (from: number, moves: number) => {
    for (let move = 0; move < moves; move += 1) {
      await page.mouse.move(box.x + from + ((box.width - 2 * from) * move) / moves, box.y + 100);
      await page.evaluate(() => new Promise((frame) => requestAnimationFrame(frame)));
    }
  };
  await across(10, 40);
  const counters = await page.context().newCDPSession(page);
  await counters.send('Performance.enable');
  const read = async () =>
    new Map((await counters.send('Performance.getMetrics')).metrics.map(({ name, value }) => [name, value]));
  const before = await read();
  await across(12, MOVES);
  const after = await read();
  await browser.close();
  await pullbook.stop();
  const perMove = (name: string) => (1000 * (after.get(name)! - before.get(name)!)) / MOVES;
  return { scriptMs: perMove('ScriptDuration'), taskMs: perMove('TaskDuration') };
}
