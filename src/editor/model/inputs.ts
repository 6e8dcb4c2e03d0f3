import type { Draft } from 'immer';
import { type ExposedInput, type GraphDocument, type Shapes, type Span, checkValue } from '../../runtime/index.ts';
import { isMemberName } from '../../runtime/names.ts';
import type { Edit } from './history.ts';
import { nodeOf, titleOf } from './graph.ts';

const setsOf = (node: string, param: string): string => `${node}.${param}`;

/** Has the form ask for a parameter: under its own label, help and name, numbered where another has that name, and under its step's title. Last of all. */
export function askFor(shapes: Shapes, document: GraphDocument, node: string, param: string): Edit {
  const step = nodeOf(document, node);
  const shape = shapes.get(step?.type ?? '');
  const declared = shape !== undefined && Object.hasOwn(shape.params, param) ? shape.params[param] : undefined;
  const sets = setsOf(node, param);
  if (step === undefined || declared === undefined || document.inputs.some((input) => input.sets === sets)) return () => undefined;
  const name = freshName(new Set(document.inputs.map((input) => input.name)), param);
  return (draft) => void draft.inputs.push({ name, label: declared.label, help: declared.doc, group: titleOf(shapes, step), sets });
}

/** Has the form ask no longer; the parameter keeps its value. */
export function askNoLonger(sets: string): Edit {
  return (draft) => {
    const at = draft.inputs.findIndex((input) => input.sets === sets);
    if (at >= 0) draft.inputs.splice(at, 1);
  };
}

/** Exchanges an input with the one before it, or after it. */
export function moveInput(name: string, by: -1 | 1): Edit {
  return ({ inputs }) => {
    const at = inputs.findIndex((input) => input.name === name);
    const [one, other] = [inputs[at], inputs[at + by]];
    if (one === undefined || other === undefined) return;
    inputs[at] = other;
    inputs[at + by] = one;
  };
}

/** Changes what an input is called or says; a blank heading or label is none. */
export function wordInput(name: string, key: 'label' | 'help' | 'group', text: string): Edit {
  return changeInput(name, (input) => {
    if (key === 'help') input.help = text;
    else if (text.trim() !== '') input[key] = text.trim();
    else if (key === 'group') delete input.group;
  });
}

/** Whether an input may have a name: one that the command line can be given, and that no other has. */
export const mayBeNamed = ({ inputs }: GraphDocument, from: string, to: string): boolean =>
  to === from || (isMemberName(to) && !inputs.some(({ name }) => name === to));

/** Gives an input another name; one it may not have is no change. */
export function nameInput(document: GraphDocument, from: string, to: string): Edit {
  return mayBeNamed(document, from, to) ? changeInput(from, (input) => { input.name = to; }) : () => undefined;
}

/** Sets between which numbers an input may be set, or was proved; undefined takes that away. What the parameter itself refuses is no change. */
export function spanInput(shapes: Shapes, document: GraphDocument, name: string, key: 'limits' | 'proved', span: Span | undefined): Edit {
  if (span !== undefined && spanRefused(shapes, document, name, span)) return () => undefined;
  return changeInput(name, (input) => {
    if (span === undefined) Reflect.deleteProperty(input, key);
    else input[key] = [...span];
  });
}

function spanRefused(shapes: Shapes, { nodes, inputs }: GraphDocument, name: string, [least, greatest]: Span): boolean {
  const sets = inputs.find((input) => input.name === name)?.sets ?? '';
  const dot = sets.lastIndexOf('.');
  const type = nodes.find(({ id }) => id === sets.slice(0, dot))?.type ?? '';
  const param = shapes.get(type)?.params[sets.slice(dot + 1)];
  return param?.kind !== 'number' || least > greatest || [least, greatest].some((value) => checkValue({ ...param, unit: 'mm' }, value) !== undefined);
}

function changeInput(name: string, change: (input: Draft<ExposedInput>) => void): Edit {
  return (draft) => {
    const input = draft.inputs.find((one) => one.name === name);
    if (input !== undefined) change(input);
  };
}

function freshName(taken: ReadonlySet<string>, wanted: string): string {
  let name = wanted;
  for (let count = 2; taken.has(name); count++) name = `${wanted}${count}`;
  return name;
}
