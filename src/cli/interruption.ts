import { constants } from 'node:os';

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/**
 * Does work that makes files, and watches for signals meanwhile: at the first one, what `undo` was given is run and the
 * process ends (status 130 for an interrupt, as shells expect). An exception undoes the work as well. Signals are served between turns of the event loop, so
 * synchronous steps stay whole. Outside of such work a signal simply ends the process, even in a long computation.
 */
export async function interruptible<T>(work: (undo: (action: () => void) => void) => T | Promise<T>): Promise<T> {
  let undoing: () => void = () => undefined;
  const listeners = SIGNALS.map((signal) => {
    const listener = () => {
      undoing();
      process.stderr.write('Interrupted: nothing was written.\n');
      process.exit(128 + constants.signals[signal]);
    };
    process.on(signal, listener);
    return { signal, listener };
  });
  try {
    return await work((action) => { undoing = action; });
  } catch (error) {
    undoing();
    throw error;
  } finally {
    for (const { signal, listener } of listeners) process.off(signal, listener);
  }
}

/** Lets waiting signals through. */
export function breathe(): Promise<void> {
  return new Promise((resume) => { setImmediate(resume); });
}
