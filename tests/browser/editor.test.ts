import { describe, expect, inject, it } from 'vitest';
import { dropFile, editorServer, shippedSteps } from './editor.ts';
import { chooseCard, documentText, expectSays, faultsOf, KEYS, openCard, pull, ready, runCommand, says, shippedReady, soon, wiresOf } from './hands.ts';

describe.skipIf(!inject('chromium'))('the editor in a browser', () => {
  const server = editorServer();

  it('opens a shipped recipe computed, with every check told and nothing asked of elsewhere', async () => {
    const { page, expectCalm } = await shippedReady(server);
    await expect.poll(() => page.title(), soon).toContain('Drawn strokes');
    expect(await page.locator('[data-node]').count()).toBe(shippedSteps());
    expect(await page.locator('[data-node="groove"] .bench-says').innerText()).toContain('10 mm wide');
    expect(await page.locator('.checks-line').count()).toBeGreaterThan(20);
    expectCalm();
    await page.close();
  });

  it.each(['light', 'dark'] as const)('has no fault an accessibility checker finds, %s, with cards and dialogs open', async (colorScheme) => {
    const { page, expectCalm } = await ready(server, { colorScheme, viewport: { width: 1280, height: 800 } });
    expect(await faultsOf(page)).toEqual([]);
    await openCard(page, 'groove');
    await page.getByRole('button', { name: 'Play the programs' }).click();
    expect(await faultsOf(page)).toEqual([]);
    for (const open of ['Open', 'Results', 'Take the programs', 'All commands']) {
      await page.getByRole('button', { name: open, exact: true }).click();
      expect([open, await faultsOf(page)]).toEqual([open, []]);
      await page.keyboard.press('Escape');
    }
    await page.locator('[data-node="groove"]').focus();
    await page.keyboard.press('a');
    expect(await faultsOf(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Form only' }).click();
    await page.getByRole('heading', { name: 'What it needs' }).waitFor();
    expect(await faultsOf(page)).toEqual([]);
    expectCalm();
    await page.close();
  });

  it('follows the slider of the groove’s width, moved by hand and by keys, each as one step', async () => {
    const { page, expectCalm } = await ready(server);
    await openCard(page, 'groove');
    const slider = page.locator('[data-node="groove"]').getByRole('slider', { name: 'Width' });
    await slider.focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await expectSays(page, 'groove', '10.2 mm wide');
    await page.waitForTimeout(1200);
    await slider.scrollIntoViewIfNeeded();
    const box = (await slider.boundingBox())!;
    const knob = box.x + box.width * await slider.evaluate((input: HTMLInputElement) => (input.valueAsNumber - Number(input.min)) / (Number(input.max) - Number(input.min)));
    await page.mouse.move(knob, box.y + box.height / 2);
    await page.mouse.down();
    for (let x = 1; x <= 20; x++) await page.mouse.move(knob + x, box.y + box.height / 2);
    await page.mouse.up();
    await expect.poll(() => says(page, 'groove'), soon).not.toContain('10.2 mm wide');
    await page.keyboard.press(KEYS.undo);
    await expectSays(page, 'groove', '10.2 mm wide');
    await page.keyboard.press(KEYS.undo);
    await expectSays(page, 'groove', '10 mm wide');
    expectCalm();
    await page.close();
  });

  it('wires by pulling and by keys, and says why a wire of the wrong kind is refused', async () => {
    const { page, expectCalm } = await ready(server);
    const before = await documentText(page);
    const wire = { from: 'place.outlines', to: 'drawing.outlines' };
    await pull(page, 'output machine.machine', 'input board.region', { release: false });
    await expect.poll(() => page.locator('.bench-refusal').innerText(), soon).toMatch(/machine.*region/s);
    await page.mouse.up();
    await page.keyboard.press('Escape');
    expect(await documentText(page)).toBe(before);
    await pull(page, 'output place.outlines', 'input drawing.outlines');
    expect(wiresOf(await documentText(page))).toContainEqual(wire);
    await page.keyboard.press(KEYS.undo);
    expect(await documentText(page)).toBe(before);
    await page.locator('[data-node="place"]').focus();
    await page.keyboard.press('w');
    await page.getByRole('button', { name: /^outlines output/ }).press('Enter');
    await page.getByRole('button', { name: /^Save drawing/ }).press('Enter');
    expect(wiresOf(await documentText(page))).toContainEqual(wire);
    expectCalm();
    await page.close();
  });

  it('takes 20 steps back and forth to the same document, byte for byte', async () => {
    const { page, expectCalm } = await ready(server);
    const before = await documentText(page);
    const cards = ['groove', 'board', 'cutter', 'sheet', 'place'];
    for (let k = 0; k < 20; k++) {
      await chooseCard(page, cards[k % cards.length]!);
      await page.keyboard.press(k % 4 === 3 ? 'Control+d' : k % 2 === 0 ? 'Alt+ArrowDown' : 'Alt+ArrowRight');
    }
    const after = await documentText(page);
    expect(after).not.toBe(before);
    for (let k = 0; k < 20; k++) await page.keyboard.press(KEYS.undo);
    expect(await documentText(page)).toBe(before);
    for (let k = 0; k < 20; k++) await page.keyboard.press(KEYS.redo);
    expect(await documentText(page)).toBe(after);
    expectCalm();
    await page.close();
  });

  it('puts a step into a wire, and groups steps into a card of their own', async () => {
    const { page, expectCalm } = await ready(server);
    const count = wiresOf(await documentText(page)).length;
    await page.evaluate(() => document.querySelector('[data-wire="groove.region board.region"], [data-wire*="groove.region"]')!.dispatchEvent(new MouseEvent('contextmenu', { bubbles: true, cancelable: true, clientX: 400, clientY: 700 })));
    await page.getByRole('menuitem', { name: 'Insert a step' }).click();
    await page.getByRole('combobox').fill('offset');
    await page.keyboard.press('Enter');
    await expect.poll(async () => wiresOf(await documentText(page)).length, soon).toBe(count + 1);
    await chooseCard(page, 'cable-holes');
    await chooseCard(page, 'mounting-holes', true);
    await page.keyboard.press(KEYS.group);
    await runCommand(page, 'Fold');
    await expect.poll(() => page.locator('[data-node="cable-holes"]').count(), soon).toBe(0);
    const { groups } = JSON.parse(await documentText(page)) as { groups: { nodes: string[]; collapsed: boolean }[] };
    expect(groups).toEqual([expect.objectContaining({ nodes: ['cable-holes', 'mounting-holes'], collapsed: true })]);
    const card = page.locator('.bench-card-group');
    expect(await card.getByRole('list', { name: 'Outputs' }).getByRole('button').count()).toBe(2);
    expectCalm();
    await page.close();
  });

  it('opens again what it saved', async () => {
    const { page, expectCalm } = await ready(server);
    await chooseCard(page, 'groove');
    await page.keyboard.press('Alt+ArrowDown');
    const text = await documentText(page);
    await chooseCard(page, 'board');
    await page.keyboard.press(KEYS.delete);
    await dropFile(page, '[data-room=bench]', { name: 'again.json', type: 'application/json', text });
    await page.getByRole('button', { name: 'Open without saving' }).click();
    await expect.poll(() => page.locator('[data-node="board"]').count(), soon).toBe(1);
    expect(await documentText(page)).toBe(text);
    expectCalm();
    await page.close();
  });
});
