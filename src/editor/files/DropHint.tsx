import { createPortal } from 'react-dom';
import { titleAt } from '../model/graph.ts';
import { useEditor } from '../state/editor.ts';
import { endings } from './artwork.ts';
import { useFiles } from './state.ts';

/** Says, while a file is held over the page, what letting go of it does. */
export function DropHint() {
  const dragged = useFiles((state) => state.dragged);
  return dragged === undefined ? null : createPortal(<Hint over={dragged.over} />, document.body);
}

function Hint({ over }: { readonly over: string | undefined }) {
  const shapes = useEditor((state) => state.shapes);
  const document = useEditor(({ history }) => history.document);
  const kinds = endings(shapes).join(', ');
  return (
    <div className="files-drop">
      <p role="status">
        <strong>{over === undefined ? 'Let go to take the file' : `Let go over “${titleAt(shapes, document, over)}”`}</strong>
        {` A recipe (.json) is opened; a drawing (${kinds}) goes into ${over === undefined ? 'the step that takes it' : 'this step if it takes one'}.`}
      </p>
    </div>
  );
}
