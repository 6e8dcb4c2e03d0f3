import { useMemo } from 'react';
import { useEditor } from '../state/editor.ts';
import { type Alone, aloneOf } from './set-ups.ts';
import { useSheet } from './store.ts';

/** The set-up that is looked at alone, if one is. */
export function useAlone(): Alone | undefined {
  const picture = useEditor((state) => state.picture);
  const chosen = useSheet((state) => state.setUp);
  return useMemo(() => aloneOf(picture, chosen), [picture, chosen]);
}
