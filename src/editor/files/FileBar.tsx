import { useEffect } from 'react';
import { hasUnsaved, useEditor } from '../state/editor.ts';
import { DropHint } from './DropHint.tsx';
import { FileDialogs } from './FileDialogs.tsx';
import { PrintView } from './PrintView.tsx';
import { TitleField } from './TitleField.tsx';
import { takeDrops } from './drop.ts';
import { whyNoPrograms, whyNoResults } from './results.ts';
import { save } from './save.ts';
import { ask, useFiles } from './state.ts';
import { clock, counted, lasted } from './words.ts';
import './files.css';

/** The document's name and whether it is saved; open, save, take the results. */
export function FileBar() {
  useEffect(takeDrops, []);
  return (
    <div className="files-bar" data-tour="file">
      <TitleField />
      <Words />
      <Damage />
      <Buttons />
      <FileDialogs />
      <DropHint />
      <PrintView />
    </div>
  );
}

function Words() {
  const unsaved = useEditor(hasUnsaved);
  const saved = useEditor(({ file }) => file.saved);
  const last = useFiles((state) => state.saved);
  const steps = useEditor(({ history }) => history.document.nodes.length);
  const running = useEditor((state) => state.running);
  const kept = unsaved ? 'not saved' : last !== undefined && last.document === saved ? `saved ${clock(last.at)}` : 'unchanged';
  const took = running.state === 'computing' ? 'computing …' : running.milliseconds > 0 ? lasted(running.milliseconds) : undefined;
  return (
    <p className="files-words">
      <span role="status" className={unsaved ? 'files-unsaved' : undefined}>{kept}</span>
      {[counted(steps, 'step'), took].filter((word) => word !== undefined).map((word) => ` · ${word}`)}
    </p>
  );
}

function Damage() {
  const damage = useEditor(({ file }) => file.damage);
  if (damage === undefined) return null;
  return (
    <button type="button" className="button files-damage" onClick={() => { ask({ kind: 'damage' }); }}>
      {`! ${counted(damage.problems.length, 'problem')} in the file`}
    </button>
  );
}

function Buttons() {
  const noResults = useEditor(whyNoResults);
  return (
    <div className="button-row files-buttons" role="group" aria-label="Document">
      <button type="button" className="button" onClick={() => { ask({ kind: 'open', first: 'recipes' }); }}>Open</button>
      <button type="button" className="button" title="Ctrl+S" onClick={() => void save()}>Save</button>
      <button type="button" className="button" aria-disabled={noResults !== undefined} title={noResults} onClick={noResults === undefined ? () => { ask({ kind: 'results' }); } : undefined}>Results</button>
      <ProgramsButton />
    </div>
  );
}

/** While a check fails it cannot be pressed; what stands beside it says why, and leads to the failing checks and to drafts. */
function ProgramsButton() {
  const reason = useEditor(whyNoPrograms);
  const waiting = useEditor(whyNoResults);
  const open = () => { ask({ kind: 'programs' }); };
  return (
    <>
      {reason !== undefined && waiting === undefined && <button type="button" className="button-quiet" id="files-reason" onClick={open}>{reason}</button>}
      <button
        type="button" className="button-first" aria-disabled={reason !== undefined} title={reason} data-tour="programs"
        {...(reason !== undefined && waiting === undefined && { 'aria-describedby': 'files-reason' })}
        onClick={reason === undefined ? open : undefined}
      >
        Take the programs
      </button>
    </>
  );
}
