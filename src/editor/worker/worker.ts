import { catalogue } from './catalogue.ts';
import { makePause } from './pause.ts';
import type { ToWorker } from './protocol.ts';
import { createSession } from './session.ts';

const session = createSession({
  catalogue,
  post: (message, transfer) => { self.postMessage(message, { transfer: [...transfer] }); },
  now: () => performance.now(),
  pause: makePause(),
});

self.onmessage = ({ data }: MessageEvent<ToWorker>) => { session.receive(data); };

// A promise nobody waits for fails in silence; thrown again, the page hears of it and starts another worker.
self.addEventListener('unhandledrejection', ({ reason }) => { throw reason; });
