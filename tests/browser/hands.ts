import axeSource from 'axe-core/axe.min.js?raw';
import { readFile } from 'node:fs/promises';
import type { BrowserContextOptions, Download, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { EditorServer, OpenPage } from './editor.ts';

/** How long the page may take to show what is waited for, ms: evaluations among it. */
const PATIENCE = 20_000;
export const soon = { timeout: PATIENCE };

export const KEYS = { undo: 'Control+z', redo: 'Control+Shift+z', save: 'Control+s', group: 'Control+g', delete: 'Delete' };

/** A page whose tour is over and whose saving gives downloads, once the small sign is computed. */
export async function ready(server: EditorServer, as?: BrowserContextOptions): Promise<OpenPage> {
  return toured(await server.openSmall(as));
}

/** The same with the recipe as it is shipped, whole. */
export async function shippedReady(server: EditorServer): Promise<OpenPage> {
  return toured(await server.open());
}

async function toured(opened: OpenPage): Promise<OpenPage> {
  await computed(opened.page);
  await opened.page.getByRole('button', { name: 'Leave the tour' }).click();
  return opened;
}

/** Waits until nothing is being computed. */
export async function computed(page: Page): Promise<void> {
  await page.locator('[data-node]').first().waitFor();
  await expect.poll(() => page.locator('.files-words').innerText(), { timeout: 120_000 }).toMatch(/ s$| ms$/);
}

export const says = (page: Page, node: string) => page.locator(`[data-node="${node}"] .bench-says`).innerText();

export async function expectSays(page: Page, node: string, words: string): Promise<void> {
  await expect.poll(() => says(page, node), { timeout: 60_000 }).toContain(words);
}

/** A cross of two strokes, scaled, then repaired. */
export function repairGraph(): string {
  const text = '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100" fill="none" stroke="black" stroke-width="8"><path d="M0 50H100"/><path d="M50 0V100"/></svg>';
  const step = (id: string, type: string, x: number, params = {}) => ({ id, type, position: [x, 0], params });
  return JSON.stringify({
    format: 'groovewright-graph', version: 1, title: 'Repair', notes: '', inputs: [], groups: [],
    nodes: [step('artwork', 'import-strokes', 0, { artwork: { name: 'cross.svg', text } }), step('fit', 'fit-width', 372, { finishedWidth: 100 }), step('repair', 'repair-strokes', 744)],
    wires: [{ from: 'artwork.strokes', to: 'fit.strokes' }, { from: 'fit.strokes', to: 'repair.strokes' }],
  });
}

/** Tells where a place of the sheet, mm, is on the screen: by what the sheet says of two places under the pointer. */
export async function sheetPlaces(page: Page): Promise<(x: number, y: number) => [number, number]> {
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

export const editsIn = async (page: Page) =>
  ((JSON.parse(await documentText(page)) as { nodes: { id: string; params: { edits?: { act: string; places: unknown[] }[] } }[] }).nodes.find(({ id }) => id === 'repair')!.params.edits ?? []);

/** Metres of stroke that a card says came out. */
export const strokesLength = async (page: Page, node: string): Promise<number> => Number(/, ([\d.]+) m/.exec(await says(page, node))?.[1]);

export async function openCard(page: Page, node: string): Promise<void> {
  await page.locator(`[data-node="${node}"]`).focus();
  await page.keyboard.press('Enter');
  await page.locator(`[data-node="${node}"] form, [data-node="${node}"] .form`).first().waitFor();
}

export async function chooseCard(page: Page, node: string, more = false): Promise<void> {
  const card = page.locator(`[data-node="${node}"]`);
  await card.focus();
  if (more) await page.keyboard.press('Space');
  else await card.locator('.bench-says').click();
}

export async function runCommand(page: Page, label: string): Promise<void> {
  await page.keyboard.press('F1');
  await page.getByRole('dialog').getByRole('textbox').or(page.getByRole('dialog').getByRole('combobox')).or(page.getByRole('dialog').getByRole('searchbox')).first().fill(label);
  await page.keyboard.press('Enter');
}

/** The document's text, as saving gives it. */
export async function documentText(page: Page): Promise<string> {
  return (await downloaded(page, () => page.keyboard.press(KEYS.save))).text;
}

export async function downloaded(page: Page, act: () => Promise<void>): Promise<{ name: string; text: string }> {
  const [download] = await Promise.all([page.waitForEvent('download') as Promise<Download>, act()]);
  return { name: download.suggestedFilename(), text: await readFile((await download.path())!, 'utf8') };
}

export const wiresOf = (text: string) => (JSON.parse(text) as { wires: { from: string; to: string }[] }).wires;

/** Pulls a wire from the word of one port to that of another; the ports as `side node.port`. */
export async function pull(page: Page, from: string, to: string, { release = true } = {}): Promise<void> {
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
export async function faultsOf(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  return page.evaluate(async () => {
    const axe = (globalThis as unknown as { axe: { run: (context: unknown, options: unknown) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }).axe;
    const { violations } = await axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] });
    return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
  });
}
