import { type GraphDocument, type GraphProblem, type Shapes, formatProblem } from '../../runtime/index.ts';
import { examine } from '../../runtime/check.ts';
import { type End, nodeOf, portAt, portLabel, titleAt } from './graph.ts';

/** What is wrong with a graph before anything is computed, in sentences for the card it is about. */
export interface Faults {
  readonly nodes: ReadonlyMap<string, readonly Fault[]>;
  /** What belongs to no node that is there: wires to nothing, inputs and groups. */
  readonly graph: readonly Fault[];
}

export interface Fault {
  readonly says: string;
  /** The port or parameter it is about. */
  readonly place?: string;
  readonly code: GraphProblem['code'];
}

/** The faults of a graph by node. A circle of wires is told at every node in it. */
export function faultsOf(shapes: Shapes, document: GraphDocument): Faults {
  const { problems, cycles } = examine(document, shapes, { nodes: false, wires: false });
  const nodes = new Map<string, Fault[]>();
  const graph: Fault[] = [];
  const ids = new Set(document.nodes.map(({ id }) => id));
  const enter = (node: string | undefined, fault: Fault) => {
    if (node === undefined || !ids.has(node)) graph.push(fault);
    else nodes.set(node, [...(nodes.get(node) ?? []), fault]);
  };
  for (const problem of problems)
    if (problem.code !== 'cycle') enter(problem.node, { says: sentence(shapes, document, problem), code: problem.code, ...(problem.place !== undefined && { place: problem.place }) });
  for (const { members } of cycles) {
    const says = circleSays(members.map((id) => titleAt(shapes, document, id)));
    for (const id of members) enter(id, { says, code: 'cycle' });
  }
  return { nodes, graph };
}

function sentence(shapes: Shapes, document: GraphDocument, problem: GraphProblem): string {
  const { code, node = '', place = '', found } = problem;
  const end: End = { side: 'input', node, port: place };
  const type = portAt(shapes, document, end)?.type;
  const port = portLabel(place, type);
  switch (code) {
    case 'missing-input': return `Needs ${type ?? 'a value'} at "${port}". Lead a wire there.`;
    case 'port-taken': return `"${port}" takes one wire and has several. Take away all but one.`;
    case 'duplicate-wire': return `The same wire leads to "${port}" twice. Take one away.`;
    case 'type-mismatch': return `"${port}" takes ${type ?? 'another kind of value'}, but what comes is ${found}. Take this wire away.`;
    case 'unknown-node': return `This program knows no step "${nodeOf(document, node)?.type ?? ''}". ${problem.advice}`;
    default: return capital(formatProblem(withoutNode(problem)));
  }
}

/** The card it stands on says which node is meant. */
function withoutNode({ place, expected, found, advice }: GraphProblem) {
  return { expected, found, advice, ...(place !== undefined && { place }) };
}

function circleSays(titles: readonly string[]): string {
  if (titles.length === 1) return `${titles[0]} is wired to itself. Take that wire away.`;
  const some = titles.slice(0, MOST_NAMED);
  const rest = titles.length - some.length;
  return `The wires go round in a circle through ${some.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}. Take one of them away.`;
}

/** Steps named in the sentence about a circle. */
const MOST_NAMED = 4;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
