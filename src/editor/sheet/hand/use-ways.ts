import { useMemo } from 'react';
import { useEditor } from '../../state/editor.ts';
import { useSheet } from '../store.ts';
import { subjectOf } from '../subject.ts';
import { type Way, wayOf, waysOf } from './ways.ts';

/** The ways of working by hand on what is shown. */
export function useWays(): readonly Way[] {
  const history = useEditor((state) => state.history);
  const shapes = useEditor((state) => state.shapes);
  const picture = useEditor((state) => state.picture);
  return useMemo(() => {
    const subject = subjectOf({ history, shapes, picture });
    return subject ? waysOf(subject) : [];
  }, [history, shapes, picture]);
}

/** The way worked in now; none while another tool is taken up. */
export function useWay(): Way | undefined {
  const ways = useWays();
  const looks = useSheet((state) => state.tool === 'look');
  const chosen = useSheet((state) => state.way);
  return looks ? wayOf(ways, chosen) : undefined;
}
