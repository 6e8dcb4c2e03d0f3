import { Dialog } from '../look/Dialog.tsx';
import { useEditor } from '../state/editor.ts';
import type { Outcome } from '../worker/protocol.ts';
import { print } from './print.ts';
import { programsOf, takeAll, takeOne, whyNoResults } from './results.ts';
import { ask, closeDialog } from './state.ts';
import { counted, sized } from './words.ts';

/** Every file that a run of the recipe writes, to be taken one by one or together. */
export function Results() {
  const outcome = useEditor((state) => state.outcome);
  const waiting = useEditor(whyNoResults);
  return (
    <Dialog title="Results" onClose={closeDialog} wide>
      {outcome === undefined ? <p role="status">{waiting}</p> : <Files outcome={outcome} />}
    </Dialog>
  );
}

function Files({ outcome }: { readonly outcome: Outcome }) {
  const { files } = outcome;
  const computing = useEditor((state) => state.running.state === 'computing');
  if (files.length === 0) return <p>No files came out of this recipe. Mend the steps that failed; where no step makes files, add one that saves the drawing or makes programs.</p>;
  return (
    <>
      <p>The same files as the command line writes for this recipe.</p>
      <table className="table files-table">
        <thead><tr><th scope="col">File</th><th scope="col" className="number">Size</th></tr></thead>
        <tbody>
          {files.map(({ path, characters }) => (
            <tr key={path}>
              <td><button type="button" className="button-quiet" onClick={() => void takeOne(path)}><code>{path}</code></button></td>
              <td className="number">{sized(characters)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <KeptBack outcome={outcome} />
      <div className="dialog-foot">
        <button type="button" className="button" onClick={printList}>Print…</button>
        <button type="button" className="button" onClick={() => { ask({ kind: 'programs' }); }}>Take the programs…</button>
        <button type="button" className="button-first" data-first aria-disabled={computing} onClick={computing ? undefined : () => void takeAll()}>
          {computing ? 'Still computing …' : `Take all ${counted(files.length, 'result')}`}
        </button>
      </div>
    </>
  );
}

function printList(): void {
  closeDialog();
  // The dialog must be gone from the page before it is printed.
  setTimeout(print, 0);
}

function KeptBack({ outcome }: { readonly outcome: Outcome }) {
  const { keptBack } = programsOf(outcome);
  if (keptBack.length === 0) return null;
  return <p className="files-caution"><strong>Caution: </strong>{`${counted(keptBack.length, 'program')} not among them, because a check fails.`}</p>;
}
