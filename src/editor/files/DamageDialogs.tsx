import { type GraphProblem, formatProblem } from '../../runtime/index.ts';
import { Dialog } from '../look/Dialog.tsx';
import { useEditor } from '../state/editor.ts';
import { saveOriginal } from './save.ts';
import { closeDialog } from './state.ts';
import { counted } from './words.ts';

interface RefusedProps {
  readonly name: string;
  readonly problems: readonly GraphProblem[];
  readonly salvage?: { readonly steps: number; readonly open: () => void };
}

/** Why a file was not opened. Where a part of it can be read, that part is offered. */
export function RefusedDialog({ name, problems, salvage }: RefusedProps) {
  const open = () => {
    closeDialog();
    salvage?.open();
  };
  return (
    <Dialog title={`${name} was not opened`} onClose={closeDialog} wide>
      <p>{salvage === undefined ? 'It holds no recipe that can be read. What you had open is still open.' : 'A part of it can be read. What you had open is still open.'}</p>
      <ProblemList problems={problems} />
      <div className="dialog-foot">
        {salvage !== undefined && <button type="button" className="button" onClick={open}>{`Open what can be read: ${counted(salvage.steps, 'step')}`}</button>}
        <button type="button" className="button" data-first onClick={closeDialog}>Stay</button>
      </div>
    </Dialog>
  );
}

/** What was wrong with the file the document came from. */
export function DamageDialog() {
  const damage = useEditor(({ file }) => file.damage);
  const name = useEditor(({ file }) => file.name);
  return (
    <Dialog title="Problems of the file" onClose={closeDialog} wide>
      <p>{`The file itself was not changed. Saving writes ${name}; the original text, with all that could not be read, can be saved beside it.`}</p>
      <ProblemList problems={damage?.problems ?? []} />
      <div className="dialog-foot">
        <button type="button" className="button" onClick={saveOriginal}>Save the original text</button>
      </div>
    </Dialog>
  );
}

/** A longer list helps nobody, and would take long to draw. */
const MOST_SHOWN = 200;

function ProblemList({ problems }: { readonly problems: readonly GraphProblem[] }) {
  const more = problems.length - MOST_SHOWN;
  return (
    <>
      <ol className="files-problems">{problems.slice(0, MOST_SHOWN).map((problem, i) => <li key={i}>{formatProblem(problem)}</li>)}</ol>
      {more > 0 && <p>{`and ${counted(more, 'more problem')}.`}</p>}
    </>
  );
}
