import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject } from 'vitest';
import { serve } from '../../.config/serve.js';
import { SMALL_DRAWING } from '../support/shipped-graph.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const QUIET = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];

/** A page of the editor, and what it must never have: complaints on the console, requests to elsewhere. */
export interface OpenPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Fails if the console had an error or warning, something was thrown, or a request left the loopback address. */
  readonly expectCalm: () => void;
}

export interface EditorServer {
  /** Opens the editor as a person with an empty browser would; `as` gives that browser's size, theme and the like. */
  readonly open: (as?: BrowserContextOptions) => Promise<OpenPage>;
  /** The same, but the recipe that comes with the page draws the small sign. */
  readonly openSmall: (as?: BrowserContextOptions) => Promise<OpenPage>;
  /** Opens another page in the same browser profile. */
  readonly openIn: (context: BrowserContext) => Promise<OpenPage>;
  readonly address: () => string;
  readonly stop: () => Promise<void>;
}

/** Serves the editor as setup.ts built it and starts a browser for the tests of one file. */
export function editorServer(): EditorServer {
  let served: { readonly address: string; readonly close: () => Promise<void> } | undefined;
  let browser: Browser | undefined;
  beforeAll(async () => {
    served = await serve({ port: 0 });
    browser = await chromium.launch({ executablePath: inject('chromium'), args: QUIET });
  });
  const stop = async () => {
    await served?.close();
    served = undefined;
  };
  afterAll(async () => {
    await browser?.close();
    await stop();
  });
  const address = () => served!.address;
  const openIn = (context: BrowserContext) => openPage(context, address());
  const newContext = (as: BrowserContextOptions = {}) => browser!.newContext({ acceptDownloads: true, ...as });
  const openSmall = async (as?: BrowserContextOptions) => {
    const context = await newContext(as);
    // The page loads what comes with it as a module whose value is the recipe's text.
    await context.route('**/assets/drawn-strokes-*.js', (route) => route.fulfill({ contentType: 'text/javascript', body: `export default ${JSON.stringify(smallGraph())}` }));
    return openIn(context);
  };
  return { address, stop, openIn, openSmall, open: async (as) => openIn(await newContext(as)) };
}

async function openPage(context: BrowserContext, address: string): Promise<OpenPage> {
  const page = await context.newPage();
  // Nobody sits before this browser to choose a place: without pickers, saving gives a download.
  await page.addInitScript(() => { for (const name of ['showSaveFilePicker', 'showOpenFilePicker']) Reflect.deleteProperty(globalThis, name); });
  const complaints: string[] = [];
  const foreign: string[] = [];
  page.on('console', (message) => { if (['error', 'warning'].includes(message.type())) complaints.push(message.text()); });
  page.on('pageerror', (error) => complaints.push(error.stack ?? error.message));
  page.on('request', (request) => { if (!/^(?:blob|data):/.test(request.url()) && new URL(request.url()).origin !== new URL(address).origin) foreign.push(request.url()); });
  await page.goto(address);
  await page.bringToFront();
  return { page, context, expectCalm: () => { expect({ complaints, foreign }).toEqual({ complaints: [], foreign: [] }); } };
}

/** The shipped recipe's text. */
export const shippedGraph = (): string => readFileSync(`${ROOT}/graphs/drawn-strokes.json`, 'utf8');

/** The shipped recipe on a small drawing and a sheet just large enough: every step and every check, sooner done. */
export function smallGraph(): string {
  const graph = JSON.parse(shippedGraph()) as { nodes: { id: string; params?: object }[] };
  const set: Readonly<Record<string, object>> = { artwork: { artwork: SMALL_DRAWING }, sheet: { width: 340, height: 200 }, proof: { cell: 1 } };
  return JSON.stringify({ ...graph, nodes: graph.nodes.map((node) => (node.id in set ? { ...node, params: { ...node.params, ...set[node.id] } } : node)) });
}

/** How many steps it has. */
export const shippedSteps = (): number => (JSON.parse(shippedGraph()) as { nodes: unknown[] }).nodes.length;

/** Puts a file on the page as if it had been dragged there, at the middle of an element. */
export async function dropFile(page: Page, selector: string, file: { readonly name: string; readonly type: string; readonly text: string }): Promise<void> {
  await page.locator(selector).first().evaluate((target, { name, type, text }) => {
    const carried = new DataTransfer();
    carried.items.add(new File([text], name, { type }));
    const { left, top, width, height } = target.getBoundingClientRect();
    const init = { bubbles: true, cancelable: true, dataTransfer: carried, clientX: left + width / 2, clientY: top + height / 2 };
    for (const kind of ['dragenter', 'dragover', 'drop']) target.dispatchEvent(new DragEvent(kind, init));
  }, file);
}
