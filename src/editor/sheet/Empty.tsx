import { formatProblem } from '../../runtime/index.ts';
import { type EditorState, useEditor } from '../state/editor.ts';

/** In the place of a picture: why there is none, and what to do about it. */
export function Empty() {
  const report = useEditor((state) => (state.picture ? state.reports.get(state.picture.node) : undefined));
  const words = useEditor(emptyWords);
  return (
    <div className="sheet-empty">
      <p>{words}</p>
      {report?.problems.map((problem, index) => <p key={index} className="is-failed">✕ {formatProblem(problem)}</p>)}
    </div>
  );
}

function emptyWords({ picture, history, running, reports }: EditorState): string {
  if (picture) return reports.get(picture.node)?.says ?? 'This step gives nothing that can be drawn or written.';
  if (history.document.nodes.length === 0) return 'The sheet is empty. Add a step on the bench, or drop a drawing onto the page.';
  return running.state === 'computing' ? 'The picture comes when its steps are computed.' : 'Nothing to show yet. Choose a step on the bench to see what it makes.';
}
