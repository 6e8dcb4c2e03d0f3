import fc from 'fast-check';
import {
  GRAPH_FORMAT, GRAPH_VERSION, type GraphDocument, type GraphNode, type GraphProblem, type NodeDeclaration, type NodeShape, type ParamValue, type Shapes, type Wire, checkGraph, defaultOf,
} from '../../../src/runtime/index.ts';
import type { End } from '../../../src/editor/model/graph.ts';
import { endText } from '../../../src/editor/model/graph.ts';
import { refusalOfWire } from '../../../src/editor/model/wiring.ts';

const shape = (name: string, inputs: NodeShape['inputs'], outputs: NodeShape['outputs'], params: NodeShape['params'] = {}): NodeShape =>
  ({ name, title: name.charAt(0).toUpperCase() + name.slice(1), doc: `Does ${name}. Nothing else.`, inputs, outputs, params });
const ink = { type: 'number', doc: 'Ink.' } as const;
const paper = { type: 'text', doc: 'Paper.' } as const;

/** Few types with every kind of port: none, one, several, optional, of two types. */
export const TINY: Shapes = new Map([
  shape('well', {}, { ink }, { depth: { kind: 'number', unit: 'mm', default: 5, min: 0, max: 99, step: 1, label: 'Depth', doc: 'How deep.' } }),
  shape('ream', {}, { paper }, { marks: { kind: 'points', default: [], label: 'Marks', doc: 'Places.' } }),
  shape('mix', { inks: { ...ink, many: true } }, { ink }),
  shape('thin', { ink }, { ink }, { word: { kind: 'text', default: '', maxLength: 99, label: 'Word', doc: 'A word.' } }),
  shape('print', { ink, paper }, { paper, rest: ink }),
  shape('hang', { paper: { ...paper, optional: true }, label: { ...ink, optional: true } }, {}),
].map((one) => [one.name, one]));

const modules = import.meta.glob<{ default: NodeDeclaration }>('../../../nodes/*.ts', { eager: true });

/** The shapes of all nodes there are, as the page gets them. */
export const REAL: Shapes = new Map(Object.values(modules).map(({ default: { compute: _, examples: __, ...rest } }) => [rest.name, rest]));

export const EMPTY: GraphDocument = { format: GRAPH_FORMAT, version: GRAPH_VERSION, title: 'test', notes: '', nodes: [], wires: [], inputs: [], groups: [] };

/** A document from the least that has to be said: nodes as `id: type`, in a row 300 units apart, and wires as `from -> to`. */
export function graph(nodes: Readonly<Record<string, string>>, wires: readonly string[] = [], rest: Partial<GraphDocument> = {}): GraphDocument {
  return {
    ...EMPTY,
    nodes: Object.entries(nodes).map(([id, type], i) => ({ id, type, position: [i * 300, 0], params: {} })),
    wires: wires.map(wire), ...rest,
  };
}

export function wire(text: string): Wire {
  const [from, to] = text.split(' -> ');
  return { from: from!, to: to! };
}

export const input = (text: string): End => end('input', text);
export const output = (text: string): End => end('output', text);
function end(side: End['side'], text: string): End {
  const [node, port] = text.split('.');
  return { side, node: node!, port: port! };
}

/** Every port of a graph whose node types are known. */
export function endsOf(shapes: Shapes, { nodes }: GraphDocument): End[] {
  return nodes.flatMap(({ id, type }) => [
    ...Object.keys(shapes.get(type)?.inputs ?? {}).map((port): End => ({ side: 'input', node: id, port })),
    ...Object.keys(shapes.get(type)?.outputs ?? {}).map((port): End => ({ side: 'output', node: id, port })),
  ]);
}

export const pick = <T>(list: readonly T[], number: number): T | undefined => list[number % Math.max(1, list.length)];

/** Graphs without faults but for inputs that lack a wire, with groups, notes, parameters and exposed inputs. */
export function anyGraph(shapes: Shapes, most = 10): fc.Arbitrary<GraphDocument> {
  const number = fc.nat(9999);
  const spec = fc.record({
    nodes: fc.array(fc.record({ type: number, x: fc.integer({ min: -2000, max: 2000 }), y: fc.integer({ min: -2000, max: 2000 }), set: fc.boolean(), note: fc.boolean(), group: fc.nat(4) }), { maxLength: most }),
    wires: fc.array(fc.tuple(number, number), { maxLength: 3 * most }),
    folded: fc.array(fc.boolean(), { minLength: 3, maxLength: 3 }),
    exposed: fc.array(number, { maxLength: 3 }),
  });
  return spec.map(({ nodes, wires, folded, exposed }) => {
    const types = [...shapes.values()];
    const made = nodes.map(({ type, x, y, set, note }, i): GraphNode => {
      const declared = pick(types, type)!;
      return { id: `n${i}`, type: declared.name, position: [x, y], params: set ? defaultsOf(declared) : {}, ...(note && { note: 'A note.', title: `Step ${i}` }) };
    });
    const groups = folded.flatMap((collapsed, g) => {
      const members = made.filter((_, i) => nodes[i]!.group === g).map(({ id }) => id);
      return members.length === 0 ? [] : [{ id: `g${g}`, title: `Group ${g}`, nodes: members, collapsed }];
    });
    let document: GraphDocument = { ...EMPTY, nodes: made, groups };
    for (const [a, b] of wires) document = withWire(shapes, document, a, b);
    return { ...document, inputs: inputsOf(shapes, document, exposed) };
  });
}

const defaultsOf = ({ params }: NodeShape): Record<string, ParamValue> => Object.fromEntries(Object.entries(params).map(([name, param]) => [name, defaultOf(param)]));

function withWire(shapes: Shapes, document: GraphDocument, a: number, b: number): GraphDocument {
  const ends = endsOf(shapes, document);
  const from = pick(ends.filter(({ side }) => side === 'output'), a);
  if (from === undefined) return document;
  const fitting = ends.filter((to) => {
    const port = shapes.get(document.nodes.find(({ id }) => id === to.node)!.type)!.inputs[to.port];
    return to.side === 'input' && refusalOfWire(shapes, document, from, to) === undefined && (port?.many === true || !document.wires.some((one) => one.to === endText(to)));
  });
  const to = pick(fitting, b);
  return to === undefined ? document : { ...document, wires: [...document.wires, { from: endText(from), to: endText(to) }] };
}

function inputsOf(shapes: Shapes, { nodes }: GraphDocument, exposed: readonly number[]): GraphDocument['inputs'] {
  const params = nodes.flatMap(({ id, type }) => Object.keys(shapes.get(type)?.params ?? {}).map((name) => `${id}.${name}`));
  const targets = [...new Set(exposed.flatMap((number) => pick(params, number) ?? []))];
  return targets.map((sets, i) => ({ name: `input${i}`, label: 'Label', help: '', sets }));
}

/** The faults of a graph but for inputs that lack a wire, each as text. */
export const faults = (shapes: Shapes, document: GraphDocument): string[] =>
  checkGraph(document, shapes).filter(({ code }) => code !== 'missing-input').map((problem: GraphProblem) => JSON.stringify(problem));

export const WORLDS: readonly (readonly [name: string, shapes: Shapes])[] = [['tiny types', TINY], ['all types there are', REAL]];
