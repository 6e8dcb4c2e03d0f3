import { useId } from 'react';
import { type ListedInput, type Span, listInputs } from '../../runtime/index.ts';
import { Dialog } from '../look/Dialog.tsx';
import { askNoLonger, moveInput, nameInput, spanInput, wordInput } from '../model/inputs.ts';
import { edit, present, useEditor } from '../state/editor.ts';
import { NameField, SpanField, WordField } from './asked-fields.tsx';
import { closeAsked, useAsked } from './state.ts';

/** Everything that the form asks for: in which order, in which words, within which limits. */
export function AskedDialog() {
  const open = useAsked((state) => state.open);
  return open ? <Dialog title="What the form asks for" onClose={closeAsked} wide><Asked /></Dialog> : null;
}

function Asked() {
  const document = useEditor(({ history }) => history.document);
  const shapes = useEditor((state) => state.shapes);
  const inputs = listInputs(document, shapes);
  if (inputs.length === 0) return <p>Nothing yet. On the bench, open a step and press “Ask for it in the form” at a value.</p>;
  return (
    <>
      <p>The form and the command line ask for these values, in this order; values with the same heading stand together.</p>
      <ol className="recipe-asked">{inputs.map((input, at) => <AskedItem key={input.target.node + input.target.name} input={input} first={at === 0} last={at === inputs.length - 1} />)}</ol>
    </>
  );
}

function AskedItem({ input, first, last }: { readonly input: ListedInput; readonly first: boolean; readonly last: boolean }) {
  const { name, label, target } = input;
  const move = (by: -1 | 1) => () => { edit(`move ${label} in the form`, moveInput(name, by)); };
  return (
    <li>
      <details>
        <summary>{label} <small>{input.group}</small></summary>
        <Details input={input} />
      </details>
      <span className="button-row">
        <button type="button" className="button" aria-label={`Move ${label} up`} aria-disabled={first} onClick={first ? undefined : move(-1)}>Up</button>
        <button type="button" className="button" aria-label={`Move ${label} down`} aria-disabled={last} onClick={last ? undefined : move(1)}>Down</button>
        <button type="button" className="button-quiet" aria-label={`Take out ${label}`} onClick={() => { edit(`no longer ask for ${label}`, askNoLonger(`${target.node}.${target.name}`)); }}>Take out</button>
      </span>
    </li>
  );
}

function Details({ input }: { readonly input: ListedInput }) {
  const { name, label, help, group = '', param } = input;
  const id = useId();
  const word = (key: 'label' | 'help' | 'group') => (text: string, gesture: string) => { edit(`change what the form says at ${label}`, wordInput(name, key, text), gesture); };
  return (
    <div className="recipe-details">
      <WordField id={`${id}l`} label="Label" value={label} onWord={word('label')} />
      <WordField id={`${id}g`} label="Heading" value={group} onWord={word('group')} />
      <WordField id={`${id}h`} label="Help" value={help} long onWord={word('help')} />
      <NameField id={`${id}n`} value={name} onName={(to) => { edit(`call ${name} ${to}`, nameInput(present(), name, to)); }} />
      {param.kind === 'number' && <Spans input={input} />}
    </div>
  );
}

function Spans({ input: { name, label, target } }: { readonly input: ListedInput }) {
  const own = useEditor(({ history, shapes }) => shapes.get(history.document.nodes.find(({ id }) => id === target.node)?.type ?? '')?.params[target.name]);
  const asked = useEditor(({ history }) => history.document.inputs.find((one) => one.name === name));
  const shapes = useEditor((state) => state.shapes);
  if (own?.kind !== 'number') return null;
  const set = (key: 'limits' | 'proved', words: string) => (span: Span | undefined) => { edit(`change ${words} of ${label}`, spanInput(shapes, present(), name, key, span)); };
  return (
    <>
      <SpanField label="Limits" says="What may be set at all." param={own} span={asked?.limits} onSpan={set('limits', 'the limits')} />
      <SpanField label="Proved" says="What the recipe was tried with; a value beyond is a caution." param={own} span={asked?.proved} onSpan={set('proved', 'what was proved')} />
    </>
  );
}
