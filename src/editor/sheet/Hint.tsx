import { useEditor } from '../state/editor.ts';
import { toggleTool } from './commands.ts';
import { addingHandle, removePlace } from './gestures.ts';
import { allGrips, offersHands } from './grips.ts';
import { type Subject, canAdd, handlesOf } from './handles.ts';
import { sheet, useSheet } from './store.ts';
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
  // Which handle new places are for hangs on it.
  useSheet((state) => state.adding);
  const history = useEditor((state) => state.history);
  const shapes = useEditor((state) => state.shapes);
  const picture = useEditor((state) => state.picture);
  const setUp = useSheet((state) => state.setUp);
  const subject = subjectOf({ history, shapes, picture }, setUp);
  const handles = subject ? handlesOf(subject) : [];
  const offered = subject && offersHands(subject);
  if (TOOLS[tool] === undefined && !offered) return null;
  const says = TOOLS[tool] ?? docsOf(subject!).join(' ');
  const adders = subject ? addersOf(subject) : [];
  return (
    <div className="sheet-hint">
      <p>{says}</p>
      {handles.some(canAdd) && (
        <span className="button-row">
          {adders.map(({ handle, label }) => (
            <button key={handle} type="button" className="button" aria-pressed={tool === 'add' && (adders.length === 1 || addingHandle() === handle)} onClick={() => addTo(handle)}>{label}</button>
          ))}
          <button type="button" className="button" disabled={grip?.place === undefined} onClick={() => grip && removePlace(grip)}>Remove</button>
        </span>
      )}
    </div>
  );
}

/** What is said of the handles: of those that have something to take hold of, or else of all. */
function docsOf(subject: Subject): readonly string[] {
  const handles = handlesOf(subject).filter(({ kind }) => kind !== 'edits');
  const held = new Set(allGrips(subject).map(({ handle }) => handlesOf(subject)[handle]));
  const holding = handles.filter((handle) => held.has(handle));
  return (holding.length > 0 ? holding : handles).map(({ doc }) => doc);
}

/** The handles that take new places, each with the words of its button. */
function addersOf(subject: Subject): readonly { readonly handle: number; readonly label: string }[] {
  const adders = handlesOf(subject).flatMap((handle, index) => (canAdd(handle) && handle.kind === 'places' ? [{ handle: index, param: handle.param }] : []));
  if (adders.length === 1) return [{ handle: adders[0]!.handle, label: 'Add place' }];
  return adders.map(({ handle, param }) => ({ handle, label: `Add to ${(subject.shape.params[param]?.label ?? param).toLowerCase()}` }));
}

/** Takes up adding to a handle, or puts it down when it is under way. */
function addTo(handle: number): void {
  const { tool } = sheet.getState();
  const same = tool !== 'add' || addingHandle() === handle;
  sheet.setState({ adding: handle });
  if (same) toggleTool('add');
}
