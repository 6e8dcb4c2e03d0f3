import type { KeyboardEvent } from 'react';
import { type GraphNode, type NodeShape, type ParamValue, paramsOfHandle, withDefaults } from '../../runtime/index.ts';
import { nodeOf, titleOf } from '../model/graph.ts';
import { askFor, askNoLonger } from '../model/inputs.ts';
import { resetParam, setParam } from '../model/steps.ts';
import { edit, editor, present, setGesturing, useEditor } from '../state/editor.ts';
import { ParamField } from './ParamField.tsx';
import { pointAt } from './point-at.ts';
import { problemsAt } from './problems.ts';
import { Untyped, Unknown } from './Unknown.tsx';
import './form.css';

/** The parameters of one node, made from its declaration. */
export function NodeForm({ node: id }: { readonly node: string }) {
  const node = useEditor(({ history }) => nodeOf(history.document, id));
  const shapes = useEditor((state) => state.shapes);
  if (node === undefined) return null;
  const shape = shapes.get(node.type);
  return (
    <form ref={keepPresses} className="form" aria-label={`Values of ${titleOf(shapes, node)}`} noValidate onSubmit={(event) => event.preventDefault()} onKeyDown={keepKey}>
      {shape === undefined ? <Untyped params={node.params} /> : <Fields node={node} shape={shape} />}
    </form>
  );
}

function Fields({ node, shape }: { readonly node: GraphNode; readonly shape: NodeShape }) {
  const report = useEditor(({ reports }) => reports.get(node.id));
  const inputs = useEditor(({ history }) => history.document.inputs);
  const values = withDefaults(shape.params, node.params);
  const title = node.title ?? shape.title;
  const unknown = Object.keys(node.params).filter((name) => !Object.hasOwn(shape.params, name));
  return (
    <>
      {Object.entries(shape.params).map(([name, param]) => (
        <ParamField
          key={name} param={param} value={values[name]} label={param.label} doc={param.doc}
          problems={problemsAt(report, name)}
          exposed={inputs.filter(({ sets }) => sets === `${node.id}.${name}`).map(({ label }) => label)}
          notes={notesOf(shape, name)}
          onEdit={(value: ParamValue, gesture?: string) => edit(`set ${param.label} of ${title}`, setParam(node.id, name, value), gesture && `${node.id}.${name} ${gesture}`)}
          onAsk={(asks) => askForIt(node.id, name, param.label, asks)}
          onReset={() => edit(`put ${param.label} of ${title} back`, resetParam(node.id, name))}
          onPoint={(index, goes = false) => pointAt(node.id, name, index, goes)}
          onGesture={setGesturing}
        />
      ))}
      {unknown.map((name) => (
        <Unknown key={name} name={name} value={node.params[name]} onRemove={() => edit(`remove ${name} from ${title}`, resetParam(node.id, name))} />
      ))}
      {Object.keys(shape.params).length + unknown.length === 0 && <p className="field-says">Nothing to set here: all comes along the wires.</p>}
    </>
  );
}

function askForIt(node: string, name: string, label: string, asks: boolean): void {
  if (asks) edit(`ask for ${label} in the form`, askFor(editor.getState().shapes, present(), node, name));
  else edit(`no longer ask for ${label}`, askNoLonger(`${node}.${name}`));
}

/** What the sheet lets a person do to the parameter by hand. */
function notesOf({ handles = [] }: NodeShape, name: string): string[] {
  return handles
    .filter((handle) => paramsOfHandle(handle).includes(name))
    .map(({ doc }) => `On the sheet: ${doc}`);
}

/** Keys that a field uses are not the bench's; those with Control, and Escape where nothing was put back, go on. */
function keepKey(event: KeyboardEvent): void {
  const goesOn = event.ctrlKey || event.metaKey || event.altKey || event.key === 'Escape' || event.key === 'Tab' || /^F\d+$/.test(event.key);
  if (!goesOn) event.stopPropagation();
}

/** Keeps presses and double clicks from the card around the form, which would be dragged by them, and the wheel from the bench while a long text has the focus. */
function keepPresses(form: HTMLFormElement) {
  const keep = (event: Event) => event.stopPropagation();
  const keepScroll = (event: WheelEvent) => {
    if (!event.ctrlKey && event.target instanceof HTMLTextAreaElement && event.target === document.activeElement) event.stopPropagation();
  };
  const kinds = ['pointerdown', 'dblclick'];
  for (const kind of kinds) form.addEventListener(kind, keep);
  form.addEventListener('wheel', keepScroll, { passive: true });
  return () => {
    for (const kind of kinds) form.removeEventListener(kind, keep);
    form.removeEventListener('wheel', keepScroll);
  };
}
