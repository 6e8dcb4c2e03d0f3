import { oneLine } from './fault.ts';

const INTERVAL_MS = 80;

export interface Progress {
  readonly show: (text: string) => void;
  readonly clear: () => void;
}

/** A line on stderr that is written over; nothing unless stderr is a terminal. */
export function makeProgress(stream: NodeJS.WriteStream = process.stderr): Progress {
  if (!stream.isTTY) return { show: () => undefined, clear: () => undefined };
  let shownAt = -Infinity;
  return {
    show: (text) => {
      if (performance.now() - shownAt < INTERVAL_MS) return;
      shownAt = performance.now();
      stream.write(`\r\x1b[K${[...oneLine(text)].slice(0, (stream.columns ?? 80) - 1).join('')}`);
    },
    clear: () => {
      if (shownAt > -Infinity) stream.write('\r\x1b[K');
      shownAt = -Infinity;
    },
  };
}
