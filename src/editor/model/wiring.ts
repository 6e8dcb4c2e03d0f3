import type { Draft } from 'immer';
import type { GraphDocument, InputPort, Shapes, Wire } from '../../runtime/index.ts';
import { type End, endOf, endText, keepOnly, neighboursOf, nodeOf, portAt, reachedFrom, sameEnd, sameWire, titleAt } from './graph.ts';
import type { Edit } from './history.ts';
import { mismatch } from './mismatch.ts';

/** The wire between two ends, whichever of them is named first; undefined when both are of the same side. */
export function wireBetween(one: End, other: End): Wire | undefined {
  if (one.side === other.side) return undefined;
  const [from, to] = one.side === 'output' ? [one, other] : [other, one];
  return { from: endText(from), to: endText(to) };
}

/** Why no wire can be laid between two ends, in a sentence that says what would do; undefined when one can. */
export function refusalOfWire(shapes: Shapes, document: GraphDocument, one: End, other: End): string | undefined {
  const wire = wireBetween(one, other);
  if (wire === undefined) return `Both are ${one.side}s. Lead the wire from an output to an input.`;
  const [from, to] = one.side === 'output' ? [one, other] : [other, one];
  return unknownEnd(shapes, document, from)
    ?? unknownEnd(shapes, document, to)
    ?? (from.node === to.node ? 'A step cannot take its own result. Lead the wire to another step.' : undefined)
    ?? mismatch(shapes, document, from, to)
    ?? (document.wires.some((there) => sameWire(there, wire)) ? 'This wire is there already.' : undefined)
    ?? circle(shapes, document, from.node, to.node);
}

function unknownEnd(shapes: Shapes, document: GraphDocument, end: End): string | undefined {
  const node = nodeOf(document, end.node);
  if (node === undefined) return `There is no step "${end.node}" any more.`;
  if (!shapes.has(node.type)) return `"${node.type}" is not a step this program knows, so its ports are unknown. Take it away, or use a version that has it.`;
  return portAt(shapes, document, end) === undefined ? `${titleAt(shapes, document, end.node)} has no ${end.side} "${end.port}".` : undefined;
}

function circle(shapes: Shapes, document: GraphDocument, from: string, to: string): string | undefined {
  if (!reachedFrom([to], neighboursOf(document)).has(from)) return undefined;
  const [giver, taker] = [titleAt(shapes, document, from), titleAt(shapes, document, to)];
  return `${giver} works on what ${taker} hands on, so a wire back to ${taker} would go round in a circle. Take the wire from a step before ${taker}.`;
}

/** Lays a wire. An input that takes one wire has it in place of the one it had; one that takes several has it after the others. */
export function connect(shapes: Shapes, one: End, other: End): Edit {
  return (draft) => {
    const wire = wireBetween(one, other);
    if (wire !== undefined) lay(shapes, draft, wire);
  };
}

/** Lays a wire in a draft, as `connect` does. */
export function lay(shapes: Shapes, draft: Draft<GraphDocument>, wire: Wire): void {
  const { wires } = draft;
  if (wires.some((there) => sameWire(there, wire))) return;
  const before = takesSeveral(shapes, draft, wire) ? -1 : wires.findIndex(({ to }) => to === wire.to);
  if (before < 0) wires.push({ ...wire });
  else wires[before]!.from = wire.from;
}

function takesSeveral(shapes: Shapes, document: GraphDocument, { to }: Wire): boolean {
  const end = endOf(to, 'input');
  return end !== undefined && (portAt(shapes, document, end) as InputPort | undefined)?.many === true;
}

/** Takes wires away. */
export function disconnect(...wires: readonly Wire[]): Edit {
  return (draft) => keepOnly(draft.wires, (wire) => !wires.some((gone) => sameWire(gone, wire)));
}

/** Takes away every wire at an end. */
export function disconnectAll(end: End): Edit {
  const at = endText(end);
  return (draft) => keepOnly(draft.wires, ({ from, to }) => (end.side === 'output' ? from : to) !== at);
}

/** The wires at an end, in the document's order. */
export function wiresAt({ wires }: GraphDocument, end: End): readonly Wire[] {
  const at = endText(end);
  return wires.filter(({ from, to }) => (end.side === 'output' ? from : to) === at);
}

/** The end of a wire that stays when the one on `side` is taken elsewhere. */
const staying = ({ from, to }: Wire, side: End['side']): End | undefined => (side === 'output' ? endOf(to, 'input') : endOf(from, 'output'));

/** Why the end of a wire on the side of `end` cannot be taken to `end`. */
export function refusalOfRewire(shapes: Shapes, document: GraphDocument, wire: Wire, end: End): string | undefined {
  const other = staying(wire, end.side);
  if (other === undefined) return 'This wire leads nowhere. Take it away.';
  const own = endOf(end.side === 'output' ? wire.from : wire.to, end.side);
  return own !== undefined && sameEnd(own, end) ? undefined : refusalOfWire(shapes, document, other, end);
}

/** Takes the end of a wire that is on the side of `end` to `end`. Its turn among several wires stays while its input does. */
export function rewire(shapes: Shapes, wire: Wire, end: End): Edit {
  return (draft) => {
    const other = staying(wire, end.side);
    const moved = other && wireBetween(other, end);
    const at = draft.wires.findIndex((there) => sameWire(there, wire));
    if (moved === undefined || at < 0 || sameWire(moved, wire)) return;
    if (end.side === 'output' && !draft.wires.some((there) => sameWire(there, moved))) draft.wires[at]!.from = moved.from;
    else {
      draft.wires.splice(at, 1);
      lay(shapes, draft, moved);
    }
  };
}

/** Puts the wires into an input that takes several in another order: the wire at `index` goes to `place`, counted from 0. */
export function reorder(end: End, index: number, place: number): Edit {
  return (draft) => {
    const slots = draft.wires.flatMap(({ to }, i) => (to === endText(end) ? [i] : []));
    const sources = slots.map((slot) => draft.wires[slot]!.from);
    const [moved] = sources.splice(index, 1);
    if (moved === undefined) return;
    sources.splice(place, 0, moved);
    slots.forEach((slot, i) => {
      draft.wires[slot]!.from = sources[i]!;
    });
  };
}
