import { mkdirSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { type Served, serve } from '../../.config/serve.js';
import { begin, root, scratch } from '../support/command-line.ts';

const open: Served[] = [];
afterEach(async () => { for (const served of open.splice(0)) await served.close(); });

async function served(): Promise<string> {
  const folder = join(scratch(), 'page');
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Page</title>');
  writeFileSync(join(folder, 'assets', 'main-a1b2.js'), 'export {};');
  writeFileSync(join(folder, '..', 'secret.txt'), 'not to be read');
  open.push(await serve({ port: 0, folder }));
  return open.at(-1)!.address;
}

interface Answer {
  readonly status: number | undefined;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

/** A request as it is written: fetch would not let a test choose its Host, nor keep dots in its path. */
function ask(address: string, { method = 'GET', path = '/', headers = {} }: { method?: string; path?: string; headers?: Record<string, string> } = {}): Promise<Answer> {
  const { hostname, port } = new URL(address);
  return new Promise((resolve, reject) => {
    request({ hostname, port, method, path, headers, agent: false }, (response) => {
      let text = '';
      response.setEncoding('utf8').on('data', (part: string) => { text += part; });
      response.on('end', () => { resolve({ status: response.statusCode, headers: response.headers, text }); });
    }).on('error', reject).end();
  });
}

describe('the server', () => {
  it('serves the page at its address, which is a loopback one', async () => {
    const address = await served();
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:[0-9]+\/$/);
    expect(await ask(address)).toMatchObject({ status: 200, text: expect.stringContaining('<title>Page</title>') as string });
  });

  it.each([['/', {}], ['/assets/main-a1b2.js', {}], ['/missing.js', {}], ['/', { host: 'sign.example' }]])('sends its safety headers with %s %o', async (path, headers) => {
    const answer = await ask(await served(), { path, headers });
    expect(answer.headers).toMatchObject({
      'cross-origin-opener-policy': 'same-origin', 'cross-origin-embedder-policy': 'require-corp',
      'x-content-type-options': 'nosniff', 'referrer-policy': 'no-referrer',
    });
    const policy = String(answer.headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval';");
    // Shaping of text is WebAssembly: compiling it is let through, evaluating text as code is not.
    expect(policy.replace("'wasm-unsafe-eval'", '')).not.toMatch(/unsafe|https?:|\*/);
  });

  it('lets hashed files be kept for ever, and the page be asked for each time', async () => {
    const address = await served();
    expect((await ask(address, { path: '/assets/main-a1b2.js' })).headers['cache-control']).toContain('immutable');
    const page = await ask(address);
    expect(page.headers['cache-control']).toBe('no-cache');
    expect((await ask(address, { headers: { 'if-none-match': String(page.headers['etag']) } })).status).toBe(304);
  });

  it.each(['sign.example', 'localhost.sign.example', '127.0.0.1.sign.example:80', '192.168.0.10', '0.0.0.0', 'localhost:80:80'])('refuses the host name "%s"', async (host) => {
    const answer = await ask(await served(), { headers: { host } });
    expect(answer.status).toBe(403);
    expect(answer.text).not.toContain('Page');
  });

  it.each(['localhost', 'localhost:9999', 'LOCALHOST', '127.0.0.1', '[::1]:80'])('answers to the host name %s', async (host) => {
    expect((await ask(await served(), { headers: { host } })).status).toBe(200);
  });

  it.each(['/../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt', '/assets/../../secret.txt', '/%00', '/%', '//etc/passwd'])('gives no file for %s', async (path) => {
    const answer = await ask(await served(), { path });
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.text).not.toContain('not to be read');
  });

  it('reads only', async () => {
    const answer = await ask(await served(), { method: 'POST' });
    expect(answer).toMatchObject({ status: 405, headers: { allow: 'GET, HEAD' } });
    expect(await ask(await served(), { method: 'HEAD' })).toMatchObject({ status: 200, text: '' });
  });

  it.each(['bytes=9-2', 'bytes=999999-', 'nonsense'])('gives the whole file when asked for the part %s', async (range) => {
    expect(await ask(await served(), { headers: { range } })).toMatchObject({ status: 200, text: expect.stringContaining('Page') as string });
  });

  it('serves what was built anew meanwhile', async () => {
    const folder = scratch();
    open.push(await serve({ port: 0, folder }));
    expect((await ask(open[0]!.address)).status).toBe(404);
    writeFileSync(join(folder, 'index.html'), 'first');
    expect((await ask(open[0]!.address)).text).toBe('first');
  });

  it('lets go of its port when it is closed, even of one in use', async () => {
    const address = await served();
    const { port } = new URL(address);
    await fetch(address);
    await open.pop()!.close();
    open.push(await serve({ port: Number(port), folder: scratch() }));
    expect(new URL(open[0]!.address).port).toBe(port);
  });
});

describe('npm start', () => {
  const start = (PORT: string) => begin(join(root, '.config/start.js'), [], { cwd: root, env: { ...process.env, PORT } }).ended;

  it.each(['abc', '-1', '65536', '80 80', '8e3', '999999'])('refuses PORT=%s in one line', async (port) => {
    const { status, stdout, stderr } = await start(port);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toBe(`PORT: expected a whole number from 0 to 65535, found "${port}". Set another one, or none.\n`);
  });

  it('refuses a PORT that is taken in one line', async () => {
    const other = createServer();
    const port = await new Promise<number>((resolve) => other.listen(0, '127.0.0.1', () => { resolve((other.address() as { port: number }).port); }));
    const { status, stderr } = await start(String(port));
    other.close();
    expect({ status, stderr }).toEqual({ status: 2, stderr: `PORT: expected a free port, found ${port} taken by another program. Set another one, or none.\n` });
  });
});
