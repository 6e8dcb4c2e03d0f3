import { notify } from '../state/editor.ts';

/**
 * Lets the built page work without its server: a worker of the browser's keeps the files of one build. While the page is
 * written (the development server) there is none, since it would show yesterday's files.
 */
export function keepOffline(): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  const { serviceWorker } = navigator;
  const offered = serviceWorker.controller !== null;
  serviceWorker.register(new URL('offline.js', document.baseURI), { scope: './', updateViaCache: 'none' })
    .then((registration) => { if (offered) watch(registration); })
    .catch(() => { notify({ kind: 'caution', says: 'This browser keeps no copy of the page: without its server the page will not load again.' }); });
}

/** A newer build waits until no page of the older one is open, or until the person wants it. */
function watch(registration: ServiceWorkerRegistration): void {
  const told = new WeakSet<ServiceWorker>();
  const tell = (worker: ServiceWorker | null) => {
    if (worker === null || told.has(worker)) return;
    told.add(worker);
    notify({ kind: 'done', says: 'A newer version of this page is ready.', action: { label: 'Load it', run: () => { renew(worker); } } });
  };
  tell(registration.waiting);
  registration.addEventListener('updatefound', () => {
    const { installing } = registration;
    installing?.addEventListener('statechange', () => { if (installing.state === 'installed') tell(installing); });
  });
}

function renew(worker: ServiceWorker): void {
  navigator.serviceWorker.addEventListener('controllerchange', () => { location.reload(); }, { once: true });
  worker.postMessage('renew');
}
