/** A file of a build, by its path from the page, with its SHA-256 as `integrity` takes it. */
export type BuildFiles = Readonly<Record<string, string>>;

/** The parts of the browser this needs; tests put others in their place. */
export interface Host {
  readonly caches: Pick<CacheStorage, 'open' | 'keys' | 'delete'>;
  readonly fetch: (request: Request) => Promise<Response>;
  /** The page's folder, with a slash at the end. */
  readonly scope: string;
}

const PREFIX = 'groovewright-';
const PAGE = 'index.html';

/** Keeps the files of one build together: all of them or none, and never beside those of another build. */
export function buildCache(version: string, files: BuildFiles, { caches, fetch, scope }: Host) {
  const name = PREFIX + version;
  const urlOf = (path: string) => new URL(path, scope).href;

  /** Fetches everything; rejects when a file is missing or not the one of this build, since the server may have a newer one by now. */
  async function fill(): Promise<void> {
    const cache = await caches.open(name);
    try {
      await Promise.all(Object.entries(files).map(async ([path, integrity]) => {
        const response = await fetch(new Request(urlOf(path), { integrity, cache: 'no-cache', credentials: 'same-origin' }));
        if (!response.ok) throw new Error(`${path}: ${String(response.status)}`);
        await cache.put(urlOf(path), response);
      }));
    } catch (error) {
      await caches.delete(name);
      throw error;
    }
  }

  async function removeOthers(): Promise<void> {
    const names = await caches.keys();
    await Promise.all(names.filter((other) => other.startsWith(PREFIX) && other !== name).map((other) => caches.delete(other)));
  }

  /** The URL a request's answer is kept under; undefined for whatever is none of our business. */
  function keptUnder({ method, url }: Pick<Request, 'method' | 'url'>): string | undefined {
    const bare = url.replace(/[?#].*$/s, '');
    if (method !== 'GET' || !bare.startsWith(scope)) return undefined;
    const path = bare.slice(scope.length);
    return Object.hasOwn(files, path === '' ? PAGE : path) ? urlOf(path === '' ? PAGE : path) : undefined;
  }

  async function answer(request: Request, kept: string): Promise<Response> {
    const cache = await caches.open(name);
    return (await cache.match(kept)) ?? fetch(request);
  }

  return { fill, removeOthers, keptUnder, answer };
}
