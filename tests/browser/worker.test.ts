import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { ResultFile } from '../../src/values/index.ts';
import { buildEvaluation, commandLineFiles, expectSameFiles, shippedWork, SMALL_DRAWING } from '../support/shipped-graph.ts';

const QUIET = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];

const WORKER = `
  import { evaluateGraph } from './evaluation.js';
  onmessage = async ({ data }) => postMessage(await evaluateGraph(data));
`;

/** Serves the page, the worker and the bundle on loopback. */
function serve(bundle: string): Promise<Server> {
  const pages = new Map([
    ['/', ['text/html', '<!doctype html><title>Groovewright</title>']],
    ['/worker.js', ['text/javascript', WORKER]],
    ['/evaluation.js', ['text/javascript', readFileSync(bundle, 'utf8')]],
  ]);
  const server = createServer(({ url }, response) => {
    const [type, text] = pages.get(url ?? '') ?? [];
    response.writeHead(text === undefined ? 404 : 200, { 'content-type': `${type ?? 'text/plain'}; charset=utf-8` }).end(text);
  });
  return new Promise((resolve) => { server.listen(0, '127.0.0.1', () => { resolve(server); }); });
}

describe.skipIf(!inject('chromium'))('in a browser', () => {
  let server: Server;
  let browser: Browser;

  beforeAll(async () => {
    server = await serve(await buildEvaluation('test-browser'));
    browser = await chromium.launch({ executablePath: inject('chromium'), args: QUIET });
  });
  afterAll(async () => {
    await browser?.close();
    server?.close();
  });

  // The shipped drawing is computed by the page itself in editor-work.test.ts.
  it('a dedicated worker makes the same files as the command line, byte for byte', async () => {
    const page = await browser.newPage();
    await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
    const files = await page.evaluate((work) => new Promise<readonly ResultFile[]>((resolve, reject) => {
      const worker = new Worker('/worker.js', { type: 'module' });
      worker.onmessage = ({ data }) => { resolve(data as readonly ResultFile[]); };
      worker.onerror = ({ message }) => { reject(new Error(message)); };
      worker.postMessage(work);
    }), shippedWork(SMALL_DRAWING));
    expect(files.length).toBeGreaterThan(0);
    expectSameFiles(files, await commandLineFiles('test-browser-cli', SMALL_DRAWING));
  });
});
