import { type BuildFiles, buildCache } from './build-cache.ts';

/** The build puts the list of its files, and a number made of them, in the place of these. */
declare const __BUILD_FILES__: BuildFiles;
declare const __BUILD_VERSION__: string;

/** What the DOM types know only for service workers, which are compiled apart from pages. */
interface LastingEvent extends Event {
  readonly waitUntil: (work: Promise<unknown>) => void;
}
interface AskingEvent extends Event {
  readonly request: Request;
  readonly respondWith: (answer: Promise<Response>) => void;
}
interface WorkerScope {
  readonly registration: { readonly scope: string };
  readonly clients: { readonly claim: () => Promise<void> };
  readonly skipWaiting: () => Promise<void>;
  readonly addEventListener: <E extends Event>(name: string, listener: (event: E) => void) => void;
}

const worker = globalThis as unknown as WorkerScope;
const { fill, removeOthers, keptUnder, answer } = buildCache(__BUILD_VERSION__, __BUILD_FILES__, {
  caches: globalThis.caches, fetch: (request) => globalThis.fetch(request), scope: worker.registration.scope,
});

worker.addEventListener<LastingEvent>('install', (event) => { event.waitUntil(fill()); });
worker.addEventListener<LastingEvent>('activate', (event) => { event.waitUntil(removeOthers().then(() => worker.clients.claim())); });
worker.addEventListener<AskingEvent>('fetch', (event) => {
  const kept = keptUnder(event.request);
  if (kept !== undefined) event.respondWith(answer(event.request, kept));
});
worker.addEventListener<MessageEvent>('message', ({ data }) => { if (data === 'renew') void worker.skipWaiting(); });
