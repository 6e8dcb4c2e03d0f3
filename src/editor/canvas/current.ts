import type { BenchView } from './view.ts';

let current: BenchView | undefined;

/** The bench that is on the page; undefined while there is none. Commands act on it. */
export const currentView = (): BenchView | undefined => current;

/** Makes a view the one commands act on; returns what lets go of it. */
export function holdView(view: BenchView): () => void {
  current = view;
  return () => {
    if (current === view) current = undefined;
  };
}
