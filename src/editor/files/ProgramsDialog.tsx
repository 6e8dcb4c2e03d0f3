import { Dialog } from '../look/Dialog.tsx';
import { useEditor } from '../state/editor.ts';
import type { Outcome } from '../worker/protocol.ts';
import { programsOf, takePrograms, whyNoResults } from './results.ts';
import { closeDialog } from './state.ts';
import { counted } from './words.ts';

/** The programs, and what to mind before a machine runs them. */
export function ProgramsDialog() {
  const outcome = useEditor((state) => state.outcome);
  const waiting = useEditor(whyNoResults);
  return (
    <Dialog title="Take the programs" onClose={closeDialog} wide>
      {outcome === undefined ? <p role="status">{waiting}</p> : <Programs outcome={outcome} />}
    </Dialog>
  );
}

function Programs({ outcome }: { readonly outcome: Outcome }) {
  const { ready, keptBack } = programsOf(outcome);
  if (keptBack.length > 0) return <KeptBack outcome={outcome} paths={keptBack} />;
  if (ready.length === 0) return <p>No programs came out of this recipe. Mend the steps that failed; where no step makes programs, add one (search the steps for “program”) and wire it to the passes.</p>;
  return (
    <>
      <Cautions />
      <Paths paths={ready} />
      <Foot paths={ready} draft={false} />
    </>
  );
}

function KeptBack({ outcome, paths }: { readonly outcome: Outcome; readonly paths: readonly string[] }) {
  const fails = outcome.checks.filter(({ status }) => status === 'fail');
  return (
    <>
      <p>{`${counted(paths.length, 'program')} kept back, because ${fails.length === 1 ? 'this check fails' : 'these checks fail'}:`}</p>
      <ul className="files-problems">{fails.map(({ says, node }, i) => <li key={`${node} ${String(i)}`}><strong className="is-failed">Failed: </strong>{says}</li>)}</ul>
      <p className="files-caution"><strong>Caution: </strong>a draft is for looking at, not for cutting. Its first comment says what it is; no machine reads that comment.</p>
      <Paths paths={paths} />
      <Foot paths={paths} draft />
    </>
  );
}

function Cautions() {
  return (
    <p className="files-caution">
      <strong>Before a machine runs them: </strong>
      read each program; check units, zero and cutter; let the first run go above the material with the spindle off, a hand at the emergency stop.
      Keep guards on and wear eye and hearing protection. The machine’s instructions and your local rules come first.
    </p>
  );
}

function Paths({ paths }: { readonly paths: readonly string[] }) {
  return <ul className="files-paths">{paths.map((path) => <li key={path}><code>{path}</code></li>)}</ul>;
}

function Foot({ paths, draft }: { readonly paths: readonly string[]; readonly draft: boolean }) {
  const what = draft ? 'draft' : 'program';
  const computing = useEditor((state) => state.running.state === 'computing');
  const take = () => {
    closeDialog();
    void takePrograms(draft);
  };
  return (
    <div className="dialog-foot">
      <button type="button" className="button" onClick={closeDialog}>{draft ? 'Mend the recipe first' : 'Not now'}</button>
      <button type="button" className={draft ? 'button' : 'button-first'} data-first={!draft || undefined} aria-disabled={computing} onClick={computing ? undefined : take}>
        {computing ? 'Still computing …' : paths.length === 1 ? `Take the ${what}` : `Take ${counted(paths.length, what)} as one archive`}
      </button>
    </div>
  );
}
