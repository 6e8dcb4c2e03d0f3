import { useEditor } from '../state/editor.ts';
import { toggleTool } from './commands.ts';
import { removePlace } from './gestures.ts';
import { allGrips } from './grips.ts';
import { canAdd, handlesOf } from './handles.ts';
import { useSheet } from './store.ts';
import { subjectOf } from './subject.ts';

const TOOLS = {
  look: undefined,
  tape: 'Click two places to measure between them; hold Shift to measure freely. Escape ends.',
  read: 'Arrow keys move the cursor, Shift ten steps, Alt a tenth. Escape ends.',
  add: 'Click where a place is to be put, or move the cursor by arrow keys and press Enter. Escape ends.',
} as const;

/** At the edge of the sheet: what the tool does, or what can be taken hold of. */
export function Hint() {
  const tool = useSheet((state) => state.tool);
  const grip = useSheet((state) => state.grip);
  const history = useEditor((state) => state.history);
  const shapes = useEditor((state) => state.shapes);
  const picture = useEditor((state) => state.picture);
  const subject = subjectOf({ history, shapes, picture });
  const handles = subject ? handlesOf(subject) : [];
  const offered = subject && (handles.some(canAdd) || allGrips(subject).length > 0);
  if (TOOLS[tool] === undefined && !offered) return null;
  const says = TOOLS[tool] ?? handles.filter(({ kind }) => kind !== 'edits').map(({ doc }) => doc).join(' ');
  return (
    <div className="sheet-hint">
      <p>{says}</p>
      {handles.some(canAdd) && (
        <span className="button-row">
          <button type="button" className="button" aria-pressed={tool === 'add'} onClick={() => toggleTool('add')}>Add place</button>
          <button type="button" className="button" disabled={grip?.place === undefined} onClick={() => grip && removePlace(grip)}>Remove</button>
        </span>
      )}
    </div>
  );
}
