import { useMemo } from 'react';
import { useEditor } from '../state/editor.ts';
import { type Finding, findingsOf } from './findings.ts';

const NONE: never[] = [];

/** What there is to tell about the document as it is now. */
export function useFindings(): readonly Finding[] {
  const document = useEditor(({ history }) => history.document);
  const shapes = useEditor((state) => state.shapes);
  const reports = useEditor((state) => state.reports);
  const outcome = useEditor((state) => state.outcome);
  const damage = useEditor(({ file }) => file.damage?.problems ?? NONE);
  return useMemo(() => findingsOf({ document, shapes, reports, outcome, damage }), [document, shapes, reports, outcome, damage]);
}
