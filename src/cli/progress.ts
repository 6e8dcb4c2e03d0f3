import { oneLine } from './fault.ts';

const INTERVAL_MS = 80;

export interface Progress {
  /** Shows a text; one that follows within a blink is passed over, unless it begins something that may last. */
  readonly show: (text: string, begins?: boolean) => void;
  readonly clear: () => void;
}

/** A line on stderr that is written over; nothing unless stderr is a terminal. */
export function makeProgress(stream: NodeJS.WriteStream = process.stderr): Progress {
  if (!stream.isTTY) return { show: () => undefined, clear: () => undefined };
  let shownAt = -Infinity;
  return {
    show: (text, begins = false) => {
      if (!begins && performance.now() - shownAt < INTERVAL_MS) return;
      shownAt = performance.now();
      // A terminal that does not know its width says 0.
      const room = (stream.columns || 80) - 1;
      stream.write(`\r\x1b[K${[...oneLine(text)].slice(0, room).join('')}`);
    },
    clear: () => {
      if (shownAt > -Infinity) stream.write('\r\x1b[K');
      shownAt = -Infinity;
    },
  };
}
