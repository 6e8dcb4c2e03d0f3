import { useEffect } from 'react';
import { summaryOf } from '../checks/findings.ts';
import { useFindings } from '../checks/use-findings.ts';
import { hasUnsaved, useEditor } from '../state/editor.ts';

/** Has the browser's tab say the document, whether it is saved, and what there is to look at. */
export function useTitle(): void {
  const title = useEditor(({ history }) => history.document.title.trim() || 'Untitled');
  const unsaved = useEditor(hasUnsaved);
  const summary = summaryOf(useFindings());
  useEffect(() => {
    document.title = [title, unsaved ? 'not saved' : '', summary, 'Groovewright'].filter(Boolean).join(' · ');
  }, [title, unsaved, summary]);
}
