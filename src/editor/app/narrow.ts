import { useSyncExternalStore } from 'react';

/** Up to this width the places are stacked; app.css has the same figure. */
const query = typeof matchMedia === 'function' ? matchMedia('(max-width: 900px)') : undefined;

export const isNarrow = (): boolean => query?.matches === true;

/** Whether the window is too narrow for the checks to stand beside the sheet. */
export const useNarrow = (): boolean => useSyncExternalStore(follow, isNarrow);

function follow(tell: () => void): () => void {
  query?.addEventListener('change', tell);
  return () => query?.removeEventListener('change', tell);
}
