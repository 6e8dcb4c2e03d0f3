import { createHash } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import { type BuildFiles, buildCache } from '../../../src/editor/offline/build-cache.ts';

const scope = 'http://127.0.0.1:8450/';
const integrity = (text: string) => `sha256-${createHash('sha256').update(text).digest('base64')}`;
const build = (page: string): BuildFiles => ({ 'index.html': integrity(page), 'assets/a.js': integrity('a') });

/** What a browser keeps, and a server that may stop or be built anew. */
let kept: Map<string, Map<string, Response>>;
let server: Map<string, string> | undefined;
const fetched: string[] = [];

beforeEach(() => {
  kept = new Map();
  server = new Map([[`${scope}index.html`, 'one'], [`${scope}assets/a.js`, 'a']]);
  fetched.length = 0;
});

const host = {
  scope,
  caches: {
    open: (name: string) => {
      const cache = kept.get(name) ?? new Map<string, Response>();
      kept.set(name, cache);
      return Promise.resolve({
        put: (url: string, response: Response) => { cache.set(url, response); return Promise.resolve(); },
        match: (url: string) => Promise.resolve(cache.get(url)?.clone()),
      } as unknown as Cache);
    },
    keys: () => Promise.resolve([...kept.keys()]),
    delete: (name: string) => Promise.resolve(kept.delete(name)),
  },
  /** As browsers do it: what is not what `integrity` says is no answer. */
  fetch: (request: Request) => {
    fetched.push(request.url);
    const text = server?.get(request.url);
    if (server === undefined || (text !== undefined && request.integrity !== '' && request.integrity !== integrity(text))) return Promise.reject(new TypeError('failed to fetch'));
    return Promise.resolve(new Response(text ?? 'none', { status: text === undefined ? 404 : 200, headers: { 'Cross-Origin-Embedder-Policy': 'require-corp' } }));
  },
};

const get = (path: string, init: RequestInit = {}) => new Request(new URL(path, scope), init);

describe('the files of a build', () => {
  it('are there without the server, with the headers they came with', async () => {
    const cache = buildCache('1', build('one'), host);
    await cache.fill();
    server = undefined;
    const answer = await cache.answer(get('./'), cache.keptUnder(get('./'))!);
    expect(await answer.text()).toBe('one');
    expect(answer.headers.get('cross-origin-embedder-policy')).toBe('require-corp');
  });

  it('are not asked for again', async () => {
    const cache = buildCache('1', build('one'), host);
    await cache.fill();
    fetched.length = 0;
    await cache.answer(get('assets/a.js'), cache.keptUnder(get('assets/a.js'))!);
    expect(fetched).toEqual([]);
  });

  it('are kept all or not at all', async () => {
    server!.delete(`${scope}assets/a.js`);
    await expect(buildCache('1', build('one'), host).fill()).rejects.toThrow('assets/a.js: 404');
    expect([...kept.keys()]).toEqual([]);
  });

  it('are not mixed with those of a newer build', async () => {
    server!.set(`${scope}index.html`, 'two');
    await expect(buildCache('1', build('one'), host).fill()).rejects.toThrow();
    expect([...kept.keys()]).toEqual([]);
  });

  it('stay until the newer build takes over, and then go, and only they', async () => {
    const older = buildCache('1', build('one'), host);
    await older.fill();
    kept.set('something-else', new Map());
    server!.set(`${scope}index.html`, 'two');
    const newer = buildCache('2', build('two'), host);
    await newer.fill();
    expect(await (await older.answer(get('./'), `${scope}index.html`)).text()).toBe('one');
    await newer.removeOthers();
    expect([...kept.keys()].sort()).toEqual(['groovewright-2', 'something-else']);
    expect(await (await newer.answer(get('./'), `${scope}index.html`)).text()).toBe('two');
  });

  it('come from the server when the browser threw them away', async () => {
    const cache = buildCache('1', build('one'), host);
    await cache.fill();
    kept.clear();
    expect(await (await cache.answer(get('index.html'), `${scope}index.html`)).text()).toBe('one');
  });
});

describe('a request', () => {
  const { keptUnder } = buildCache('1', build('one'), host);

  it.each(['./', './?a=1', 'index.html', './#sheet'])('for the page is answered by it: %s', (path) => { expect(keptUnder(get(path))).toBe(`${scope}index.html`); });
  it('for a file of the build is answered by it', () => { expect(keptUnder(get('assets/a.js'))).toBe(`${scope}assets/a.js`); });

  it.each([
    ['to another origin', new Request('http://example.test/index.html')], ['for no file of the build', get('assets/other.js')],
    ['to another port', new Request('http://127.0.0.1:8451/')], ['for what every object has', get('constructor')], ['that sends something', get('./', { method: 'POST', body: 'x' })],
  ])('%s is left alone', (_name, request) => { expect(keptUnder(request)).toBeUndefined(); });
});
