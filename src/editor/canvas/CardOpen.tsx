import { useId } from 'react';
import type { Problem } from '../../runtime/problem.ts';
import { NodeForm } from '../form/NodeForm.tsx';
import { useEditor } from '../state/editor.ts';
import { writeNote } from './actions.ts';
import type { BenchCard } from './bench-graph.ts';
import { sentenceOf } from './card-state.ts';
import { bench } from './state.ts';

/** The inside of an opened card: what the step does, its values, its note. */
export function CardOpen({ card, tabbable }: { readonly card: BenchCard; readonly tabbable: boolean }) {
  const doc = useEditor(({ shapes }) => shapes.get(card.type)?.doc ?? '');
  return (
    <div className="bench-inside">
      {doc !== '' && <p className="bench-doc">{doc}</p>}
      <Findings card={card} />
      <NodeForm node={card.id} />
      <Note id={card.id} />
      <div className="bench-actions">
        <button type="button" className="button" tabIndex={tabbable ? 0 : -1} onClick={() => bench.setState({ wiring: { card: card.id } })}>Wire…</button>
        <button type="button" className="button" tabIndex={tabbable ? 0 : -1} onClick={() => bench.setState({ renaming: card.id })}>Rename</button>
      </div>
    </div>
  );
}

/** What the step has to tell, in full, but for what its form tells at a field. */
function Findings({ card: { id, type } }: { readonly card: BenchCard }) {
  const report = useEditor(({ reports }) => reports.get(id));
  const params = useEditor(({ shapes }) => shapes.get(type)?.params);
  const untold = (problems: readonly Problem[]) => problems.filter(({ place }) => place === undefined || !Object.hasOwn(params ?? {}, place));
  const [problems, cautions] = [untold(report?.problems ?? []), untold(report?.cautions ?? [])];
  if (problems.length + cautions.length === 0) return null;
  return (
    <ul className="bench-findings">
      {problems.map((problem, i) => <li key={`p${i}`} className="bench-problem"><span aria-hidden="true">✕ </span>{sentenceOf(problem)}</li>)}
      {cautions.map((caution, i) => <li key={`c${i}`} className="bench-caution"><span aria-hidden="true">! </span>{sentenceOf(caution)}</li>)}
    </ul>
  );
}

function Note({ id }: { readonly id: string }) {
  const field = useId();
  const note = useEditor(({ history }) => history.document.nodes.find((node) => node.id === id)?.note ?? '');
  return (
    <div className="bench-field bench-note-field">
      <label htmlFor={field}>Note</label>
      <textarea className="field" id={field} value={note} rows={2} placeholder="What whoever reads this should know" onChange={({ currentTarget: { value } }) => writeNote(id, value, `note ${id}`)} />
    </div>
  );
}
