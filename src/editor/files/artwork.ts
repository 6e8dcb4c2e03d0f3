import type { FileParam, FileValue, GraphDocument, NodeShape, Shapes } from '../../runtime/index.ts';
import { addStep } from '../model/steps.ts';
import { titleOf } from '../model/graph.ts';
import { choose, edit, editor, notify, present } from '../state/editor.ts';
import { ask } from './state.ts';

/** A parameter of a step that takes a file. */
export interface FilePlace {
  readonly node: string;
  readonly param: string;
  /** What the person calls the step, and the parameter. */
  readonly step: string;
  readonly label: string;
}

/** The bytes of a file as a parameter keeps them: text where they are UTF-8, else base64. */
export function fileValue(name: string, bytes: ArrayBuffer): FileValue {
  try {
    return { name, text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    return { name, base64: base64(new Uint8Array(bytes)) };
  }
}

/** In pieces, since a call cannot take millions of arguments; each a multiple of three bytes, so that the pieces join. */
function base64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 0x6000) text += btoa(String.fromCharCode(...bytes.subarray(at, at + 0x6000)));
  return text;
}

const takes = ({ accept }: FileParam, name: string): boolean => accept.some((ending) => name.toLowerCase().endsWith(ending.toLowerCase()));

const fittingParams = (shape: NodeShape | undefined, name: string): readonly (readonly [string, FileParam])[] =>
  Object.entries(shape?.params ?? {}).flatMap(([param, declared]) => (declared.kind === 'file' && takes(declared, name) ? [[param, declared] as const] : []));

/** Every parameter of the document that takes a file of that name. */
function placesFor(name: string, document: GraphDocument, shapes: Shapes): readonly FilePlace[] {
  return document.nodes.flatMap((node) =>
    fittingParams(shapes.get(node.type), name).map(([param, { label }]) => ({ node: node.id, param, step: titleOf(shapes, node), label })));
}

/** The type of the step that is added for a file that no step takes, and the parameter it goes to. */
function stepFor(name: string, shapes: Shapes): { readonly type: string; readonly param: string } | undefined {
  for (const [type, shape] of shapes) {
    const [fitting] = fittingParams(shape, name);
    if (fitting !== undefined) return { type, param: fitting[0] };
  }
  return undefined;
}

/** Whether any step there is takes a file of that name. */
export const isArtwork = (name: string, shapes: Shapes): boolean => stepFor(name, shapes) !== undefined;

/** The endings of files that steps take, for a sentence. */
export function endings(shapes: Shapes): readonly string[] {
  const all = [...shapes.values()].flatMap(({ params }) => Object.values(params).flatMap((param) => (param.kind === 'file' ? param.accept : [])));
  return [...new Set(all.map((ending) => ending.toLowerCase()))].sort();
}

/**
 * Puts a file into the step it was dropped on, else into the only one that takes it; asks where there are several, and adds a
 * step where there is none. One step to undo.
 */
export function putArtwork(file: FileValue, on?: string): void {
  const { shapes } = editor.getState();
  const places = placesFor(file.name, present(), shapes);
  const there = places.filter(({ node }) => node === on);
  const [only, ...others] = there.length > 0 ? there : places;
  if (only === undefined) addFor(file);
  else if (others.length > 0) ask({ kind: 'which', file, places: [only, ...others] });
  else setFile(file, only);
}

export function setFile(file: FileValue, { node, param, step }: FilePlace): void {
  edit(`take ${file.name} into ${step}`, ({ nodes }) => {
    const target = nodes.find(({ id }) => id === node);
    if (target !== undefined) target.params[param] = file;
  });
  choose([node]);
  notify({ kind: 'done', says: `${file.name} is in the step “${step}”.` });
}

/** To the left of everything, where a piece of work begins. */
function addFor(file: FileValue): void {
  const { shapes } = editor.getState();
  const found = stepFor(file.name, shapes);
  if (found === undefined) return notify({ kind: 'failed', says: `No step takes ${file.name}. Drop a recipe (.json) or a file ending in ${endings(shapes).join(', ')}.` });
  const { nodes } = present();
  const left = Math.min(0, ...nodes.map(({ position: [x] }) => x));
  const top = Math.min(0, ...nodes.map(({ position: [, y] }) => y));
  const made = addStep(present(), found.type, [nodes.length === 0 ? 0 : left - 280, top]);
  const title = shapes.get(found.type)?.title ?? found.type;
  edit(`add ${title} with ${file.name}`, (draft) => {
    made.edit(draft);
    const added = draft.nodes.find(({ id }) => id === made.id);
    if (added !== undefined) added.params[found.param] = file;
  });
  choose([made.id]);
  notify({ kind: 'done', says: `${file.name} is in a new step, “${title}”. Wire it to the steps that are to use it.` });
}
