import axeSource from 'axe-core/axe.min.js?raw';
import { readFile } from 'node:fs/promises';
import type { Download, Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { commandLineFiles, shippedDrawing, SMALL_DRAWING } from '../support/shipped-graph.ts';
import { dropFile, editorServer, type OpenPage, shippedGraph } from './editor.ts';

/** How long the page may take to show what is waited for, ms: evaluations among it. */
const PATIENCE = 20_000;
const soon = { timeout: PATIENCE };

const KEYS = { undo: 'Control+z', redo: 'Control+Shift+z', save: 'Control+s', group: 'Control+g', delete: 'Delete' };

describe.skipIf(!inject('chromium'))('the editor in a browser', () => {
  const server = editorServer();

  /** A page whose tour is over and whose saving gives downloads, once the recipe is computed. */
  async function ready(as: Parameters<typeof server.open>[0] = {}): Promise<OpenPage> {
    const opened = await server.open(as);
    await computed(opened.page);
    await opened.page.getByRole('button', { name: 'Leave the tour' }).click();
    return opened;
  }

  it('opens a shipped recipe computed, with every check told and nothing asked of elsewhere', async () => {
    const { page, expectCalm } = await ready();
    await expect.poll(() => page.title(), soon).toContain('Drawn strokes');
    expect(await page.locator('[data-node]').count()).toBe(25);
    expect(await page.locator('[data-node="groove"] .bench-says').innerText()).toContain('10 mm wide');
    expect(await page.locator('.checks-line').count()).toBeGreaterThan(20);
    expectCalm();
    await page.close();
  });

  it.each(['light', 'dark'] as const)('has no fault an accessibility checker finds, %s, with cards and dialogs open', async (colorScheme) => {
    const { page, expectCalm } = await ready({ colorScheme, viewport: { width: 1280, height: 800 } });
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
    expectCalm();
    await page.close();
  });

  it('follows the slider of the groove’s width, moved by hand and by keys, each as one step', async () => {
    const { page, expectCalm } = await ready();
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
    const { page, expectCalm } = await ready();
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
    const { page, expectCalm } = await ready();
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
    const { page, expectCalm } = await ready();
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
    const { page, expectCalm } = await ready();
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

  it('opens a damaged recipe as far as it goes, and lists what is wrong with it', async () => {
    const { page, expectCalm } = await ready();
    const text = shippedGraph().replace('"type": "board-outline"', '"type": "board-of-tomorrow"');
    await dropFile(page, '[data-room=bench]', { name: 'damaged.json', type: 'application/json', text });
    await expect.poll(() => page.locator('[data-node="board"]').innerText(), soon).toMatch(/unknown/i);
    expect(await page.locator('[data-node]').count()).toBe(25);
    await dropFile(page, '[data-room=bench]', { name: 'broken.json', type: 'application/json', text: text.slice(0, 300) });
    await expect.poll(() => page.getByRole('dialog').innerText(), soon).toMatch(/expected/i);
    await page.keyboard.press('Escape');
    expect(await page.locator('[data-node]').count()).toBe(25);
    expectCalm();
    await page.close();
  });

  it('has the unsaved work again after the page crashed', async () => {
    const { page, context } = await ready();
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
    const [before, after] = [shippedGraph(), await documentText(again.page)].map((text) => JSON.parse(text) as { nodes: { id: string; position: [number, number] }[] });
    const moved = before!.nodes.map((node) => (node.id === 'groove' ? { ...node, position: [node.position[0], node.position[1] + 16] } : node));
    expect(after).toEqual({ ...before, nodes: moved });
    again.expectCalm();
    await context.close();
  });

  it('takes a dropped drawing, and hands out the programs the command line makes of it, byte for byte', async () => {
    const { page, expectCalm } = await ready();
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
    const { page, expectCalm } = await ready();
    const place = page.locator('.checks-line', { hasText: 'mm · ' }).first();
    await place.locator('.checks-subject').click();
    await expect.poll(() => place.getAttribute('data-here'), soon).toBe('true');
    await expect.poll(() => page.locator('.sheet-spot').count(), soon).toBeGreaterThan(0);
    expectCalm();
    await page.close();
  });

  it('plays the programs back: the cutter, its block and the sheet it leaves', async () => {
    const { page, expectCalm } = await ready();
    await page.getByRole('button', { name: 'Play the programs' }).click();
    await page.getByRole('button', { name: '300 ×' }).click();
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
    const { page, expectCalm, context } = await ready();
    await page.evaluate(async () => { await navigator.serviceWorker.ready; });
    await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null || navigator.serviceWorker.ready.then(() => true)), soon).toBe(true);
    await context.setOffline(true);
    await page.reload();
    await computed(page);
    expect(await page.locator('[data-node]').count()).toBe(25);
    expectCalm();
    await context.close();
  });

  it('computes the shipped drawing as the command line does', async () => {
    const { page } = await ready();
    await page.getByRole('button', { name: 'Take the programs' }).click();
    const taken = await downloaded(page, () => page.getByRole('dialog').getByRole('button', { name: 'Take the program', exact: true }).click());
    expect(taken.text).toBe((await commandLineFiles('test-editor-cli', shippedDrawing())).get('programs/set-up-1-cutter-1.ngc'));
    await page.close();
  });
});

/** Waits until nothing is being computed. */
async function computed(page: Page): Promise<void> {
  await page.locator('[data-node]').first().waitFor();
  await expect.poll(() => page.locator('.files-words').innerText(), { timeout: 120_000 }).toMatch(/ s$| ms$/);
}

const says = (page: Page, node: string) => page.locator(`[data-node="${node}"] .bench-says`).innerText();

async function expectSays(page: Page, node: string, words: string): Promise<void> {
  await expect.poll(() => says(page, node), { timeout: 60_000 }).toContain(words);
}

/** A cross of two strokes, scaled, then repaired. */
function repairGraph(): string {
  const text = '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100" fill="none" stroke="black" stroke-width="8"><path d="M0 50H100"/><path d="M50 0V100"/></svg>';
  const step = (id: string, type: string, x: number, params = {}) => ({ id, type, position: [x, 0], params });
  return JSON.stringify({
    format: 'groovewright-graph', version: 1, title: 'Repair', notes: '', inputs: [], groups: [],
    nodes: [step('artwork', 'import-strokes', 0, { artwork: { name: 'cross.svg', text } }), step('fit', 'fit-width', 372, { finishedWidth: 100 }), step('repair', 'repair-strokes', 744)],
    wires: [{ from: 'artwork.strokes', to: 'fit.strokes' }, { from: 'fit.strokes', to: 'repair.strokes' }],
  });
}

/** Tells where a place of the sheet, mm, is on the screen: by what the sheet says of two places under the pointer. */
async function sheetPlaces(page: Page): Promise<(x: number, y: number) => [number, number]> {
  const { x, y, width, height } = (await page.locator('.sheet-stage canvas').boundingBox())!;
  const read = async (across: number, down: number) => {
    await page.mouse.move(across, down);
    const [, mmX, mmY] = /x (\S+)\s+y (\S+) mm/.exec(await page.locator('.sheet-position').innerText()) ?? [];
    return { across, down, x: Number(mmX), y: Number(mmY) };
  };
  const [a, b] = [await read(x + 60, y + 60), await read(x + width - 60, y + height - 60)];
  const scale = (b.across - a.across) / (b.x - a.x);
  return (mmX, mmY) => [a.across + (mmX - a.x) * scale, a.down - (mmY - a.y) * scale];
}

const editsIn = async (page: Page) =>
  ((JSON.parse(await documentText(page)) as { nodes: { id: string; params: { edits?: { act: string; places: unknown[] }[] } }[] }).nodes.find(({ id }) => id === 'repair')!.params.edits ?? []);

/** Metres of stroke that a card says came out. */
const strokesLength = async (page: Page, node: string): Promise<number> => Number(/, ([\d.]+) m/.exec(await says(page, node))?.[1]);

async function openCard(page: Page, node: string): Promise<void> {
  await page.locator(`[data-node="${node}"]`).focus();
  await page.keyboard.press('Enter');
  await page.locator(`[data-node="${node}"] form, [data-node="${node}"] .form`).first().waitFor();
}

async function chooseCard(page: Page, node: string, more = false): Promise<void> {
  const card = page.locator(`[data-node="${node}"]`);
  await card.focus();
  if (more) await page.keyboard.press('Space');
  else await card.locator('.bench-says').click();
}

async function runCommand(page: Page, label: string): Promise<void> {
  await page.keyboard.press('F1');
  await page.getByRole('dialog').getByRole('textbox').or(page.getByRole('dialog').getByRole('combobox')).or(page.getByRole('dialog').getByRole('searchbox')).first().fill(label);
  await page.keyboard.press('Enter');
}

/** The document's text, as saving gives it. */
async function documentText(page: Page): Promise<string> {
  return (await downloaded(page, () => page.keyboard.press(KEYS.save))).text;
}

async function downloaded(page: Page, act: () => Promise<void>): Promise<{ name: string; text: string }> {
  const [download] = await Promise.all([page.waitForEvent('download') as Promise<Download>, act()]);
  return { name: download.suggestedFilename(), text: await readFile((await download.path())!, 'utf8') };
}

const wiresOf = (text: string) => (JSON.parse(text) as { wires: { from: string; to: string }[] }).wires;

/** Pulls a wire from the word of one port to that of another; the ports as `side node.port`. */
async function pull(page: Page, from: string, to: string, { release = true } = {}): Promise<void> {
  await page.keyboard.press('f');
  const middle = async (end: string) => {
    const { x, y, width, height } = (await page.locator(`[data-end="${end}"]`).boundingBox())!;
    return [x + width / 2, y + height / 2] as const;
  };
  await page.mouse.move(...await middle(from));
  await page.mouse.down();
  await page.mouse.move(...await middle(to), { steps: 8 });
  if (release) await page.mouse.up();
}

/** What axe-core finds against WCAG 2.2 A and AA: rule and first element of each. */
async function faultsOf(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  return page.evaluate(async () => {
    const axe = (globalThis as unknown as { axe: { run: (context: unknown, options: unknown) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }).axe;
    const { violations } = await axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] });
    return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
  });
}
