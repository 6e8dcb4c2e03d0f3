import { describe, expect, inject, it } from 'vitest';
import { commandLineFiles, shippedDrawing, SMALL_DRAWING } from '../support/shipped-graph.ts';
import { dropFile, editorServer, shippedGraph, shippedSteps, smallGraph } from './editor.ts';
import { chooseCard, computed, documentText, downloaded, editsIn, expectSays, faultsOf, KEYS, openCard, ready, repairGraph, says, sheetPlaces, shippedReady, soon, strokesLength } from './hands.ts';

describe.skipIf(!inject('chromium'))('work in the editor in a browser: damaged, crashed, dropped, repaired, played, without a server', () => {
  const server = editorServer();

  it('opens a damaged recipe as far as it goes, and lists what is wrong with it', async () => {
    const { page, expectCalm } = await ready(server);
    const text = shippedGraph().replace('"type": "board-outline"', '"type": "board-of-tomorrow"');
    await dropFile(page, '[data-room=bench]', { name: 'damaged.json', type: 'application/json', text });
    await expect.poll(() => page.locator('[data-node="board"]').innerText(), soon).toMatch(/unknown/i);
    expect(await page.locator('[data-node]').count()).toBe(shippedSteps());
    await dropFile(page, '[data-room=bench]', { name: 'broken.json', type: 'application/json', text: text.slice(0, 300) });
    await expect.poll(() => page.getByRole('dialog').innerText(), soon).toMatch(/expected/i);
    await page.keyboard.press('Escape');
    expect(await page.locator('[data-node]').count()).toBe(shippedSteps());
    expectCalm();
    await page.close();
  });

  it('has the unsaved work again after the page crashed', async () => {
    const { page, context } = await ready(server);
    await chooseCard(page, 'groove');
    await page.keyboard.press('Alt+ArrowDown');
    await page.waitForTimeout(1500);
    const client = await context.newCDPSession(page);
    const crashed = page.waitForEvent('crash');
    void client.send('Page.crash').catch(() => undefined);
    await crashed;
    const again = await server.openIn(context);
    await expect.poll(() => again.page.getByText(/unsaved work/).first().isVisible(), soon).toBe(true);
    await computed(again.page);
    const [before, after] = [smallGraph(), await documentText(again.page)].map((text) => JSON.parse(text) as { nodes: { id: string; position: [number, number] }[] });
    const moved = before!.nodes.map((node) => (node.id === 'groove' ? { ...node, position: [node.position[0], node.position[1] + 16] } : node));
    expect(after).toEqual({ ...before, nodes: moved });
    again.expectCalm();
    await context.close();
  });

  it('takes a dropped drawing, and hands out the programs the command line makes of it, byte for byte', async () => {
    // Dropped while the recipe is still computed, as an impatient person would.
    const { page, expectCalm } = await server.open();
    await page.getByRole('button', { name: 'Leave the tour' }).click();
    await page.locator('[data-node="artwork"]').waitFor();
    await dropFile(page, '[data-room=bench]', { name: SMALL_DRAWING.name, type: 'image/svg+xml', text: SMALL_DRAWING.text });
    await expectSays(page, 'artwork', '2 strokes');
    await computed(page);
    await page.getByRole('button', { name: 'Take the programs' }).click();
    const taken = await downloaded(page, () => page.getByRole('dialog').getByRole('button', { name: 'Take the program', exact: true }).click());
    const expected = await commandLineFiles('test-editor-cli', SMALL_DRAWING);
    expect(taken.text).toBe(expected.get('programs/set-up-1-cutter-1.ngc'));
    await page.getByRole('button', { name: 'Results', exact: true }).click();
    const drawing = await downloaded(page, () => page.getByRole('dialog').getByRole('link', { name: 'drawing.svg' }).or(page.getByRole('dialog').getByRole('button', { name: /drawing\.svg/ })).first().click());
    expect(drawing.text).toBe(expected.get('drawing.svg'));
    expectCalm();
    await page.close();
  });

  it('flies to the place of a check', async () => {
    const { page, expectCalm } = await ready(server);
    const place = page.locator('.checks-line', { hasText: 'mm · ' }).first();
    await place.locator('.checks-subject').click();
    await expect.poll(() => place.getAttribute('data-here'), soon).toBe('true');
    await expect.poll(() => page.locator('.sheet-spot').count(), soon).toBeGreaterThan(0);
    expectCalm();
    await page.close();
  });

  it('sets a phrase in a typeface that comes along', async () => {
    const { page, expectCalm } = await server.open();
    await page.getByRole('button', { name: 'Leave the tour' }).click();
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page.getByRole('dialog').getByText('Typed phrase', { exact: true }).first().click();
    await expectSays(page, 'phrase', '4 outlines');
    expectCalm();
    await page.close();
  });

  it('plays the programs back: the cutter, its block and the sheet it leaves', async () => {
    const { page, expectCalm } = await ready(server);
    await page.getByRole('button', { name: 'Play the programs' }).click();
    await page.getByRole('button', { name: '300 ×' }).click();
    // On a small laptop's window the picture keeps its height: the playback stands beside it.
    expect((await page.locator('.sheet').boundingBox())!.height).toBeGreaterThan(0.9 * (await page.locator('.app-sheet').boundingBox())!.height);
    const time = page.locator('.playback').getByRole('slider');
    const before = await time.inputValue();
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await expect.poll(async () => Number(await time.inputValue()), soon).toBeGreaterThan(Number(before) + 60);
    await page.getByRole('button', { name: 'Pause' }).click();
    expect(await page.locator('.playback').innerText()).toMatch(/G[0-3]/);
    expectCalm();
    await page.close();
  });

  it('repairs strokes on the picture by hand and by keys, each as one step, and keeps that when the artwork is scaled', async () => {
    // Opened over the recipe while that is still computed, which takes longer than all of this.
    const { page, expectCalm } = await server.open();
    await page.getByRole('button', { name: 'Leave the tour' }).click();
    await dropFile(page, '[data-room=bench]', { name: 'repair.json', type: 'application/json', text: repairGraph() });
    await expectSays(page, 'repair', '2 strokes');
    await page.locator('[data-node="repair"] .bench-says').click();
    const ways = page.getByRole('toolbar', { name: 'Work by hand' });
    const mm = await sheetPlaces(page);
    await ways.getByRole('button', { name: 'Cut' }).click();
    await page.mouse.click(...mm(25, 50));
    await expectSays(page, 'repair', '3 strokes');
    await ways.getByRole('button', { name: 'Move' }).click();
    await page.mouse.move(...mm(75, 50));
    await page.mouse.down();
    await page.mouse.move(...mm(75, 65), { steps: 6 });
    await page.mouse.up();
    await expect.poll(() => strokesLength(page, 'repair'), soon).toBeGreaterThan(0.2);
    await computed(page);
    await ways.getByRole('button', { name: 'Lead on' }).click();
    await page.locator('.sheet-stage').focus();
    for (const key of ['n', 'Enter', 'Enter', 'Enter']) await page.keyboard.press(key);
    const edits = await editsIn(page);
    expect(edits.map(({ act, places }) => `${act} ${places.length}`)).toEqual(['split 1', 'move 2', 'pair 3']);
    expect(await faultsOf(page)).toEqual([]);
    await page.keyboard.press(KEYS.undo);
    expect(await editsIn(page)).toEqual(edits.slice(0, 2));
    const length = await strokesLength(page, 'repair');
    await openCard(page, 'fit');
    await page.locator('[data-node="fit"]').getByRole('textbox', { name: 'Finished width' }).fill('200');
    await page.keyboard.press('Enter');
    await expect.poll(() => strokesLength(page, 'repair'), soon).toBeCloseTo(2 * length, 2);
    expect(await says(page, 'repair')).toContain('3 strokes');
    expect(await page.locator('.checks-line[data-status="caution"]').count()).toBe(0);
    expect(await editsIn(page)).toEqual(edits.slice(0, 2));
    expectCalm();
    await page.close();
  });

  it('works on without its server once it was loaded', async () => {
    const { page, expectCalm, context } = await shippedReady(server);
    await page.evaluate(async () => { await navigator.serviceWorker.ready; });
    await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null || navigator.serviceWorker.ready.then(() => true)), soon).toBe(true);
    await context.setOffline(true);
    await page.reload();
    await computed(page);
    expect(await page.locator('[data-node]').count()).toBe(shippedSteps());
    expectCalm();
    await context.close();
  });

  it('computes the shipped drawing as the command line does', async () => {
    const { page } = await shippedReady(server);
    await page.getByRole('button', { name: 'Take the programs' }).click();
    const taken = await downloaded(page, () => page.getByRole('dialog').getByRole('button', { name: 'Take the program', exact: true }).click());
    expect(taken.text).toBe((await commandLineFiles('test-editor-cli', shippedDrawing())).get('programs/set-up-1-cutter-1.ngc'));
    await page.close();
  });
});
