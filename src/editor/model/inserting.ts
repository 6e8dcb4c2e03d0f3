import type { GraphDocument, InputPort, OutputPort, Shapes, Wire } from '../../runtime/index.ts';
import { GAP, type Sizes, cardBoxes, sizeOf } from './boxes.ts';
import { type End, cardOf, endOf, neighboursOf, nodeOf, portAt, reachedFrom, sourceOf, targetOf, titleOf } from './graph.ts';
import type { Edit } from './history.ts';
import { addStep, moveSteps } from './steps.ts';
import { connect, refusalOfWire, rewire } from './wiring.ts';

/** A step to put on a wire: a new one of a type, or one that is there. */
export type Inserted = { readonly type: string } | { readonly id: string };

export type Insertion =
  | { readonly ok: true; readonly edit: Edit; readonly id: string }
  | { readonly ok: false; readonly refusal: string };

/**
 * Puts a step on a wire: the first of its inputs that takes what the wire carries, a required one before an optional one,
 * and the first of its outputs that gives the same kind. The cards after it move on when there is no room. Or why it cannot.
 */
export function insertOnWire(shapes: Shapes, document: GraphDocument, wire: Wire, what: Inserted, sizes: Sizes = new Map()): Insertion {
  const [from, to] = [endOf(wire.from, 'output'), endOf(wire.to, 'input')];
  const type = 'type' in what ? what.type : nodeOf(document, what.id)?.type;
  if (from === undefined || to === undefined || type === undefined) return refused('This wire or this step is not there any more.');
  const ports = portsBetween(shapes, document, wire, type, 'id' in what ? what.id : undefined);
  if ('refusal' in ports) return { ok: false, ...ports };
  const made = 'id' in what ? { id: what.id, edit: () => undefined } : addStep(document, what.type, [0, 0]);
  const input: End = { side: 'input', node: made.id, port: ports.input };
  const output: End = { side: 'output', node: made.id, port: ports.output };
  const refusal = 'id' in what ? refusalOfBoth(shapes, document, wire, { from, to, input, output }) : undefined;
  if (refusal !== undefined) return refused(refusal);
  const place = placeBetween(document, wire, made.id, sizes);
  const home = 'type' in what ? document.groups.find(({ nodes }) => nodes.includes(from.node) && nodes.includes(to.node))?.id : undefined;
  return {
    ok: true, id: made.id,
    edit: (draft) => {
      made.edit(draft);
      rewire(shapes, wire, output)(draft);
      connect(shapes, from, input)(draft);
      draft.groups.find((group) => group.id === home)?.nodes.push(made.id);
      if (place === undefined) return;
      moveSteps(place.after, place.shift, 0)(draft);
      const node = draft.nodes.find(({ id }) => id === made.id);
      if (node !== undefined) node.position = [...place.at];
    },
  };
}

const refused = (refusal: string): Insertion => ({ ok: false, refusal });

type Ports = { readonly input: string; readonly output: string } | { readonly refusal: string };

/** The ports of a step through which the wire would lead. Those of a step that is there must not have a wire to lose. */
function portsBetween(shapes: Shapes, document: GraphDocument, wire: Wire, type: string, id: string | undefined): Ports {
  const shape = shapes.get(type);
  if (shape === undefined) return { refusal: `"${type}" is not a step this program knows.` };
  const carried = typeOfWire(shapes, document, wire);
  if (carried === undefined) return { refusal: 'What this wire carries is not known. Mend or take away the steps at its ends first.' };
  const wired = new Set(document.wires.map(({ to }) => to));
  const fitting = Object.entries(shape.inputs).filter(([, port]) => port.type === carried);
  const open = fitting.filter(([name, port]) => port.many === true || id === undefined || !wired.has(`${id}.${name}`));
  const input = (open.find(([, port]) => port.optional !== true) ?? open[0])?.[0];
  const output = Object.entries(shape.outputs).find(([, port]) => port.type === carried)?.[0];
  if (fitting.length === 0) return { refusal: `${shape.title} does not take ${carried}, which this wire carries. ${listOf('It takes', shape.inputs)}` };
  if (output === undefined) return { refusal: `${shape.title} does not give ${carried}, which this wire carries on. ${listOf('It gives', shape.outputs)}` };
  if (input === undefined) return { refusal: `${shape.title} has its wire for ${carried} already. Take that one away first.` };
  return { input, output };
}

function listOf(verb: string, ports: Readonly<Record<string, InputPort | OutputPort>>): string {
  const types = [...new Set(Object.values(ports).map(({ type }) => type))];
  return `${verb} ${types.length === 0 ? 'nothing' : types.join(', ')}.`;
}

function typeOfWire(shapes: Shapes, document: GraphDocument, { from, to }: Wire): string | undefined {
  const [source, target] = [endOf(from, 'output'), endOf(to, 'input')];
  const sent = source && portAt(shapes, document, source)?.type;
  return target && portAt(shapes, document, target)?.type === sent ? sent : undefined;
}

interface Ends {
  readonly from: End;
  readonly to: End;
  readonly input: End;
  readonly output: End;
}

/** Why a step that is there cannot be led through; looked at without the wire, which will be gone. */
function refusalOfBoth(shapes: Shapes, document: GraphDocument, wire: Wire, { from, to, input, output }: Ends): string | undefined {
  if (input.node === from.node || input.node === to.node) return 'This wire ends at that step already. Choose another wire.';
  const without = { ...document, wires: document.wires.filter((other) => other !== wire && !(other.from === wire.from && other.to === wire.to)) };
  return refusalOfWire(shapes, without, from, input) ?? refusalOfWire(shapes, without, output, to);
}

interface Place {
  readonly at: readonly [number, number];
  /** Nodes that make room, and by how much they go to the right. */
  readonly after: readonly string[];
  readonly shift: number;
}

function placeBetween(document: GraphDocument, wire: Wire, id: string, sizes: Sizes): Place | undefined {
  const [from, to] = [sourceOf(wire), targetOf(wire)];
  const [source, target] = [cardOf(document, from), cardOf(document, to)];
  // Inside a folded group the members are placed as they will lie when it is unfolded.
  const boxes = cardBoxes(source === target ? { ...document, groups: [] } : document, sizes);
  const [before, behind] = source === target ? [boxes.get(from), boxes.get(to)] : [boxes.get(source), boxes.get(target)];
  if (before === undefined || behind === undefined) return undefined;
  const { width } = sizeOf(sizes, id);
  const left = before.x + before.width + GAP.x;
  const shift = Math.max(0, left + width + GAP.x - behind.x);
  const x = shift > 0 ? left : (before.x + before.width + behind.x - width) / 2;
  return { at: [Math.round(x), Math.round((before.y + behind.y) / 2)], after: cardsAfter(document, wire, behind.x).filter((card) => card !== id), shift };
}

/** What lies to the right of `x` and works on what the wire carries: nodes, and folded groups as a whole. */
function cardsAfter(document: GraphDocument, wire: Wire, x: number): string[] {
  const [source, target] = [cardOf(document, sourceOf(wire)), cardOf(document, targetOf(wire))];
  const reached = reachedFrom([targetOf(wire)], neighboursOf(document));
  const after = document.nodes.filter(({ id, position }) => reached.has(id) && position[0] >= x).map(({ id }) => id);
  return source === target ? after : [...new Set(after.map((id) => cardOf(document, id)))].filter((card) => card !== source);
}

/** The types that can be put on a wire, by name. */
export const fitsOnWire = (shapes: Shapes, document: GraphDocument, wire: Wire): readonly string[] =>
  [...shapes.values()].filter(({ name }) => 'input' in portsBetween(shapes, document, wire, name, undefined)).map(({ name }) => name);

/** What a wire is called: `strokes from Pen drawing to Groove`. */
export function wireTitle(shapes: Shapes, document: GraphDocument, wire: Wire): string {
  const at = (id: string) => {
    const node = nodeOf(document, id);
    return node === undefined ? `"${id}"` : titleOf(shapes, node);
  };
  return `${typeOfWire(shapes, document, wire) ?? 'unknown'} from ${at(sourceOf(wire))} to ${at(targetOf(wire))}`;
}
