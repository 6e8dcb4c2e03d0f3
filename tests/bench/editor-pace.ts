import type { CDPSession, Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { dropFile, editorServer } from '../browser/editor.ts';

/** Prints how the editor keeps pace: ratios within one run, frame times, memory. Nothing here fails by being slow. */
describe.skipIf(!inject('chromium'))('pace of the editor', () => {
  const server = editorServer();

  it('of a slider, from input to new picture', async () => {
    const { page } = await server.open({ viewport: { width: 1440, height: 900 } });
    const whole = await evaluated(page);
    await page.getByRole('button', { name: 'Leave the tour' }).click();
    const delays = await slide(page, 40);
    expect(delays.length).toBeGreaterThan(20);
    const [median, p95] = [share(delays, 0.5), share(delays, 0.95)];
    say(`slider to new picture: median ${ms(median)}, 95th percentile ${ms(p95)}; ${percent(median / whole)} and ${percent(p95 / whole)} of a full evaluation (${ms(whole)})`);
    await page.close();
  });

  it('of panning, zooming and dragging with 300 cards', async () => {
    const { page } = await server.open({ viewport: { width: 1440, height: 900 } });
    await evaluated(page);
    await page.getByRole('button', { name: 'Leave the tour' }).click();
    const started = Date.now();
    await dropFile(page, '[data-room=bench]', { name: 'many.json', type: 'application/json', text: graphOf(300) });
    await expect.poll(() => page.locator('[data-node]').count(), { timeout: 60_000 }).toBe(300);
    say(`300 cards on the bench after ${ms(Date.now() - started)}`);
    await evaluated(page);
    const bench = (await page.locator('[data-room=bench]').boundingBox())!;
    const [x, y] = [bench.x + bench.width / 2, bench.y + bench.height - 12];
    const card = (await page.locator('[data-node]').first().boundingBox())!;
    await paced(page, 'pan', async () => {
      await page.mouse.move(x, y);
      await page.mouse.down();
      for (let k = 0; k < 60; k++) await page.mouse.move(x + 4 * Math.sin(k / 4) * 20, y - k);
      await page.mouse.up();
    });
    await paced(page, 'zoom', async () => {
      await page.keyboard.down('Control');
      for (let k = 0; k < 40; k++) await page.mouse.wheel(0, k % 20 < 10 ? -40 : 40);
      await page.keyboard.up('Control');
    });
    await paced(page, 'drag', async () => {
      const here = (await page.locator('[data-node]').first().boundingBox()) ?? card;
      await page.mouse.move(here.x + 20, here.y + 6);
      await page.mouse.down();
      for (let k = 0; k < 60; k++) await page.mouse.move(here.x + 20 + k, here.y + 6 + k / 2);
      await page.mouse.up();
    });
    await page.close();
  });

  it('of memory over 200 edits', async () => {
    const { page, context } = await server.open({ viewport: { width: 1440, height: 900 } });
    await evaluated(page);
    await page.getByRole('button', { name: 'Leave the tour' }).click();
    const client = await context.newCDPSession(page);
    await edits(page, 20);
    const before = await heap(client);
    await edits(page, 200);
    await page.waitForTimeout(1000);
    const after = await heap(client);
    say(`memory of the page after 200 edits: ${percent(after / before)} of before (${mega(before)} to ${mega(after)})`);
    await page.close();
  });
});

const say = (line: string) => { console.log(`- ${line}`); };
const ms = (value: number) => `${value.toFixed(value < 100 ? 1 : 0)} ms`;
const percent = (value: number) => `${(100 * value).toFixed(1)} %`;
const mega = (bytes: number) => `${(bytes / 1e6).toFixed(1)} MB`;

/** The value below which this share of the values lies. */
function share(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))]!;
}

/** Waits until all is computed; gives the milliseconds the page says it took. */
async function evaluated(page: Page): Promise<number> {
  await expect.poll(() => page.locator('.files-words').innerText(), { timeout: 180_000 }).toMatch(/ m?s$/);
  const [, number, unit] = / ([0-9.]+) (m?s)$/.exec(await page.locator('.files-words').innerText())!;
  return Number(number) * (unit === 's' ? 1000 : 1);
}

/** Drags the groove's width to and fro; milliseconds from each input event to the frame after its thumbnail changed. */
async function slide(page: Page, times: number): Promise<number[]> {
  const card = page.locator('[data-node="groove"]');
  await card.focus();
  await page.keyboard.press('Enter');
  const slider = card.getByRole('slider', { name: 'Width' });
  await slider.scrollIntoViewIfNeeded();
  const { x, y, width, height } = (await slider.boundingBox())!;
  const knob = x + width * await slider.evaluate((input: HTMLInputElement) => (input.valueAsNumber - Number(input.min)) / (Number(input.max) - Number(input.min)));
  await page.evaluate(() => {
    const shared = globalThis as unknown as { delays: number[]; waiting: number };
    Object.assign(shared, { delays: [], waiting: NaN });
    document.addEventListener('input', ({ timeStamp }) => { shared.waiting = timeStamp; }, true);
    new MutationObserver(() => {
      const from = shared.waiting;
      shared.waiting = NaN;
      if (!Number.isNaN(from)) requestAnimationFrame(() => { shared.delays.push(performance.now() - from); });
    }).observe(document.querySelector('[data-node="groove"] .bench-picture')!, { subtree: true, childList: true, attributes: true });
  });
  await page.mouse.move(knob, y + height / 2);
  await page.mouse.down();
  for (let k = 1; k <= times; k++) {
    await page.mouse.move(knob + (k % 8) * 3, y + height / 2);
    await page.waitForTimeout(400);
  }
  await page.mouse.up();
  return page.evaluate(() => (globalThis as unknown as { delays: number[] }).delays);
}

/** Frame times while something is done. */
async function paced(page: Page, what: string, act: () => Promise<void>): Promise<void> {
  await page.evaluate(() => {
    const shared = globalThis as unknown as { frames: number[]; pacing: boolean };
    Object.assign(shared, { frames: [], pacing: true });
    let last = performance.now();
    const tick = (now: number) => {
      shared.frames.push(now - last);
      last = now;
      if (shared.pacing) requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
  });
  await act();
  const frames = await page.evaluate(() => {
    const shared = globalThis as unknown as { frames: number[]; pacing: boolean };
    shared.pacing = false;
    return shared.frames.slice(1);
  });
  expect(frames.length).toBeGreaterThan(5);
  say(`${what} with 300 cards: frames of ${ms(share(frames, 0.5))} median, ${ms(share(frames, 0.95))} 95th percentile`);
}

async function edits(page: Page, count: number): Promise<void> {
  const card = page.locator('[data-node="sheet"]');
  for (let k = 0; k < count / 2; k++) {
    await card.focus();
    await page.keyboard.press('Space');
    await page.keyboard.press('Alt+ArrowDown');
    await page.keyboard.press('Control+z');
  }
}

async function heap(client: CDPSession): Promise<number> {
  for (let k = 0; k < 3; k++) await client.send('HeapProfiler.collectGarbage');
  return (await client.send('Runtime.getHeapUsage')).usedSize;
}

/** A graph of this many steps: drawings brought to a width, placed and grooved, in rows of five. */
function graphOf(count: number): string {
  const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="60mm" viewBox="0 0 100 60"><path d="M10 50C10 5 90 5 90 50" fill="none" stroke="black"/></svg>';
  const types = ['import-strokes', 'fit-width', 'fit-width', 'set-width', 'board-outline'];
  const nodes = Array.from({ length: count }, (_, i) => ({
    id: `n${i}`, type: types[i % 5], position: [(i % 5) * 320 + (Math.floor(i / 100) * 1700), (Math.floor(i / 5) % 20) * 240],
    params: i % 5 === 0 ? { artwork: { name: 'arch.svg', text: svg } } : i % 5 === 1 ? { finishedWidth: 100 + i } : {},
  }));
  const out = ['strokes', 'strokes', 'strokes', 'region'], into = ['strokes', 'strokes', 'strokes', 'region'];
  const wires = nodes.flatMap((_, i) => (i % 5 === 4 ? [] : [{ from: `n${i}.${out[i % 5]!}`, to: `n${i + 1}.${into[i % 5]!}` }]));
  return JSON.stringify({ format: 'groovewright-graph', version: 1, title: 'Many arches', notes: '', nodes, wires, inputs: [], groups: [] });
}
