import type { Checking, Link } from './checking.ts';
import type { Wire } from './document.ts';
import { type Reference, splitReference } from './names.ts';
import type { GraphProblem } from './problem.ts';
import { show, showList } from './show.ts';

/** Checks every wire and every input that needs one; returns the wires whose both ends exist. */
export function checkWires(checking: Checking): Link[] {
  const { wires } = checking.document;
  const astray: Astray[] = [];
  const reached = new Set<string>();
  const seen = new Set<string>();
  const links = wires.flatMap((wire, i) => {
    const [from, to] = [checkSource(checking, wire, i), findTarget(checking, wire, i, astray)];
    const wording = `${show(wire.from)} to ${show(wire.to)}`;
    if (to !== undefined && seen.has(wording)) checking.report({ ...toTarget(to), code: 'duplicate-wire', expected: 'each wire once', found: `${wording} again`, advice: 'Remove one of them.' });
    else if (to !== undefined) checkFree(checking, wire, to, reached);
    seen.add(wording);
    if (from !== undefined && to !== undefined) checkTypes(checking, wire, from, to);
    return from === undefined || to === undefined ? [] : [{ from, to }];
  });
  checkUnwired(checking, reached, astray);
  return links;
}

/** A wire into a port that does not exist. */
interface Astray {
  readonly wire: Wire;
  readonly index: number;
  /** The node it reaches, when there is one without that port. */
  readonly node?: string;
}

function checkSource(checking: Checking, { from, to }: Wire, index: number): Reference | undefined {
  const source = readEnd(checking, from, index, 'from');
  if (source === undefined) return undefined;
  const end = checking.ends.get(source.node);
  if (end === undefined) {
    if (!checking.unreadable.nodes) checking.report({ ...targetOf(checking, to), ...noNode(checking, from, source.node, `wires[${index}].from`) });
    return undefined;
  }
  if (end.declaration === undefined || Object.hasOwn(end.declaration.outputs, source.name)) return source;
  const outputs = Object.keys(end.declaration.outputs);
  checking.report({
    ...targetOf(checking, to), place: `wires[${index}].from`, code: 'missing-port', expected: `an output of "${source.node}": ${showList(outputs)}`, found: show(from),
    advice: checking.suggest(source.name, outputs, 'Start the wire at an output of this node.'),
  });
  return undefined;
}

/** The input a wire ends at; wires that miss one are set aside, because only all wires together tell which input is meant. */
function findTarget(checking: Checking, wire: Wire, index: number, astray: Astray[]): Reference | undefined {
  const target = readEnd(checking, wire.to, index, 'to');
  if (target === undefined) return undefined;
  const end = checking.ends.get(target.node);
  if (end !== undefined && (end.declaration === undefined || Object.hasOwn(end.declaration.inputs, target.name))) return target;
  astray.push({ wire, index, ...(end && { node: target.node }) });
  return undefined;
}

function readEnd({ report }: Checking, text: string, index: number, key: 'from' | 'to'): Reference | undefined {
  const reference = splitReference(text);
  if (reference === undefined)
    report({ place: `wires[${index}].${key}`, code: 'bad-reference', expected: 'a node id, a dot and a port name', found: show(text), advice: 'Write it like "id.port".' });
  return reference;
}

function checkFree({ ends, report }: Checking, { from, to }: Wire, target: Reference, reached: Set<string>): void {
  const port = ends.get(target.node)?.declaration?.inputs[target.name];
  if (port !== undefined && reached.has(to) && port.many !== true)
    report({ ...toTarget(target), code: 'port-taken', expected: 'one wire', found: `another from ${show(from)}`, advice: 'Remove all wires into this input but one.' });
  reached.add(to);
}

function checkTypes({ ends, report }: Checking, { from, to }: Wire, source: Reference, target: Reference): void {
  const sent = ends.get(source.node)?.declaration?.outputs[source.name]?.type;
  const taken = ends.get(target.node)?.declaration?.inputs[target.name]?.type;
  if (sent === undefined || taken === undefined || sent === taken) return;
  report({
    ...toTarget(target), code: 'type-mismatch', expected: `a value of type "${taken}" at "${to}"`, found: `"${sent}" from "${from}"`,
    advice: 'Wire it to an input of the same type, or put a node between them that converts.',
  });
}

/** Reports wires that miss their input, and inputs that miss a wire; a wire that likely means such an input is one fault. */
function checkUnwired(checking: Checking, reached: ReadonlySet<string>, astray: readonly Astray[]): void {
  const { report, unreadable } = checking;
  const unwired = requiredInputs(checking).filter((reference) => !reached.has(reference));
  const open = new Set(unwired);
  for (const { wire, index, node } of astray) {
    const meant = checking.likely(wire.to, open);
    if (meant !== undefined) open.delete(meant);
    const advice = meant === undefined ? undefined : `Did you mean "${meant}"?`;
    if (node !== undefined) report(noInput(checking, wire, node, index, advice));
    else if (!unreadable.nodes) {
      const fault = noNode(checking, wire.to, splitReference(wire.to)!.node, `wires[${index}].to`);
      report(advice === undefined ? fault : { ...fault, advice });
    }
  }
  const wiresAreKnown = !unreadable.wires && checking.document.wires.every(({ to }) => splitReference(to) !== undefined);
  if (wiresAreKnown) for (const reference of open) report(notWired(reference));
}

function requiredInputs({ ends }: Checking): string[] {
  return [...ends.values()].flatMap(({ node, declaration }) =>
    Object.entries(declaration?.inputs ?? {}).flatMap(([name, { optional }]) => (optional ? [] : [`${node.id}.${name}`])));
}

function noInput(checking: Checking, { to }: Wire, node: string, index: number, advice: string | undefined): GraphProblem {
  const inputs = Object.keys(checking.ends.get(node)?.declaration?.inputs ?? {});
  return {
    node, place: `wires[${index}].to`, code: 'missing-port', expected: `an input of "${node}": ${showList(inputs)}`, found: show(to),
    advice: advice ?? checking.suggest(splitReference(to)!.name, inputs, 'End the wire at an input of this node.'),
  };
}

function noNode({ ends, suggest }: Checking, reference: string, node: string, place: string): GraphProblem {
  return {
    place, code: 'missing-node', expected: 'a node of this graph', found: show(reference),
    advice: suggest(node, ends.keys(), 'Remove this wire, or add the node.'),
  };
}

function notWired(reference: string): GraphProblem {
  const { node, name } = splitReference(reference)!;
  return { node, place: name, code: 'missing-input', expected: 'a wire into this input', found: 'none', advice: 'Wire an output of the same type to it.' };
}

function toTarget({ node, name }: Reference): { readonly node: string; readonly place: string } {
  return { node, place: name };
}

/** The node at a wire's end, as the node that suffers when the wire's start is wrong. */
function targetOf({ ends }: Checking, to: string): { readonly node?: string } {
  const node = splitReference(to)?.node;
  return node !== undefined && ends.has(node) ? { node } : {};
}
