import type { Shapes } from './node.ts';
import { type CycleFault, checkCycles } from './check-cycles.ts';
import { checkWires } from './check-wires.ts';
import type { Checking, Ends, Link } from './checking.ts';
import type { ExposedInput, GraphDocument, GraphNode, Span } from './document.ts';
import { ID_FORM, NAME_FORM, isId, isMemberName, splitReference } from './names.ts';
import { nearest } from './nearest.ts';
import { type ValueFault, checkValue } from './param-values.ts';
import type { NumberParam, Param, Params } from './params.ts';
import type { GraphProblem } from './problem.ts';
import { show, showList, showName } from './show.ts';
import type { Unreadable } from './shape.ts';

/** Suggestions for mistyped names cost the most per fault; a list of faults longer than this is not read name by name. */
const MOST_SUGGESTIONS = 100;

/** What is wrong with a graph, and the wires that can be followed nevertheless. */
export interface Findings {
  readonly problems: readonly GraphProblem[];
  readonly links: readonly Link[];
  readonly cycles: readonly CycleFault[];
}

/**
 * Checks what a document means against the node types there are: names, wires, values, exposed inputs, groups. Every
 * fault gives one problem. An empty list means that the graph can be evaluated.
 */
export function checkGraph(document: GraphDocument, catalogue: Shapes): readonly GraphProblem[] {
  return examine(document, catalogue, { nodes: false, wires: false }).problems;
}

/** As `checkGraph`, for a document of which some entries may have been unreadable. */
export function examine(document: GraphDocument, catalogue: Shapes, unreadable: Unreadable): Findings {
  const problems: GraphProblem[] = [];
  const report = (problem: GraphProblem) => void problems.push(problem);
  const checking: Checking = { document, ends: endsOf(document, catalogue), report, unreadable, ...suggester() };
  checkNodes(checking, catalogue);
  const links = checkWires(checking);
  const cycles = checkCycles(checking, links);
  for (const { problem } of cycles) report(problem);
  checkInputs(checking);
  checkGroups(checking);
  return { problems, links, cycles };
}

function suggester(): Pick<Checking, 'suggest' | 'likely'> {
  let left = MOST_SUGGESTIONS;
  const likely = (name: string, candidates: Iterable<string>) => (left-- > 0 ? nearest(name, candidates) : undefined);
  const suggest = (name: string, candidates: Iterable<string>, otherwise: string) => {
    const found = likely(name, candidates);
    return found === undefined ? otherwise : `Did you mean "${found}"?`;
  };
  return { likely, suggest };
}

/** Nodes by id. When two share an id, a wire to it could mean either, so neither's ports count as known. */
function endsOf({ nodes }: GraphDocument, catalogue: Shapes): Map<string, Ends> {
  const ends = new Map<string, Ends>();
  for (const node of nodes) ends.set(node.id, { node, declaration: ends.has(node.id) ? undefined : catalogue.get(node.type) });
  return ends;
}

function checkNodes(checking: Checking, catalogue: Shapes): void {
  const { document, report, suggest } = checking;
  const seen = new Set<string>();
  for (const node of document.nodes) {
    const { id, type } = node;
    if (!isId(id)) report({ node: id, place: 'id', code: 'bad-id', expected: ID_FORM, found: show(id), advice: 'Choose another id.' });
    if (seen.has(id)) report({ node: id, place: 'id', code: 'duplicate-id', expected: 'an id of its own', found: `another node ${show(id)}`, advice: 'Rename one of them.' });
    seen.add(id);
    const declaration = catalogue.get(type);
    if (declaration === undefined)
      report({ node: id, place: 'type', code: 'unknown-node', expected: 'a known node type', found: show(type), advice: suggest(type, catalogue.keys(), 'Choose one of the node types there are.') });
    else checkParams(checking, node, declaration.params);
  }
}

function checkParams({ report, suggest }: Checking, { id, params }: GraphNode, declared: Params): void {
  for (const [name, value] of Object.entries(params)) {
    const param = Object.hasOwn(declared, name) ? declared[name] : undefined;
    const fault = param === undefined ? unknownParam(name, Object.keys(declared), suggest) : checkValue(param, value);
    if (fault !== undefined) report({ node: id, place: showName(name), ...fault });
  }
}

function unknownParam(name: string, known: readonly string[], suggest: Checking['suggest']): GraphProblem {
  return { code: 'unknown-param', expected: `one of the parameters ${showList(known)}`, found: show(name), advice: suggest(name, known, 'Remove it.') };
}

function checkInputs(checking: Checking): void {
  const { document, report } = checking;
  const names = new Set<string>();
  const targets = new Set<string>();
  for (const input of document.inputs) {
    const { name, sets } = input;
    const place = `input ${show(name)}`;
    if (!isMemberName(name)) report({ place, code: 'bad-name', expected: NAME_FORM, found: show(name), advice: 'Choose another name.' });
    if (names.has(name)) report({ place, code: 'duplicate-name', expected: 'a name of its own', found: `another input ${show(name)}`, advice: 'Rename one of them.' });
    if (targets.has(sets)) report({ place, code: 'exposed-twice', expected: 'a parameter of its own', found: `${show(sets)}, which another input sets`, advice: 'Remove one of these inputs.' });
    names.add(name);
    targets.add(sets);
    checkTarget(checking, input, place);
    checkSpans(checking, input, place);
  }
}

function checkTarget({ ends, report, suggest, unreadable }: Checking, { sets }: ExposedInput, place: string): void {
  const target = splitReference(sets);
  if (target === undefined) {
    report({ place, code: 'bad-reference', expected: 'a node id, a dot and a parameter name', found: show(sets), advice: 'Write it like "id.parameter".' });
    return;
  }
  const end = ends.get(target.node);
  if (end === undefined) {
    if (!unreadable.nodes) report({ place, code: 'missing-node', expected: 'a parameter of a node of this graph', found: show(sets), advice: suggest(target.node, ends.keys(), 'Remove this input.') });
  } else if (end.declaration !== undefined && !Object.hasOwn(end.declaration.params, target.name)) {
    const known = Object.keys(end.declaration.params);
    report({ place, code: 'missing-param', expected: `a parameter of "${target.node}": ${showList(known)}`, found: show(sets), advice: suggest(target.name, known, 'Choose one of these.') });
  }
}

function checkSpans({ ends, report }: Checking, { sets, limits, proved }: ExposedInput, place: string): void {
  const target = splitReference(sets);
  const param = target && ends.get(target.node)?.declaration?.params[target.name];
  for (const [key, span] of Object.entries({ limits, proved })) {
    if (span === undefined || param === undefined) continue;
    const fault = spanFault(param, span);
    if (fault !== undefined) report({ place: `${place}, ${key}`, ...fault });
  }
}

function spanFault(param: Param, [least, greatest]: Span): ValueFault | undefined {
  if (param.kind !== 'number') return { code: 'wrong-kind', expected: 'limits only where a number is set', found: `a ${param.kind}`, advice: 'Remove them.' };
  if (least > greatest) return { code: 'out-of-limits', expected: 'the least value first', found: `${least} before ${greatest}`, advice: 'Exchange them.' };
  return checkNumberWithin(param, least) ?? checkNumberWithin(param, greatest);
}

/** Ends of a span need not be whole, even where the number must. */
const checkNumberWithin = (param: NumberParam, value: number): ValueFault | undefined => checkValue({ ...param, unit: param.unit === 'count' ? 'ratio' : param.unit }, value);

function checkGroups({ document, ends, report, suggest, unreadable }: Checking): void {
  const ids = new Set<string>();
  const members = new Set<string>();
  for (const { id, nodes } of document.groups) {
    const place = `group ${show(id)}`;
    if (!isId(id)) report({ place, code: 'bad-id', expected: ID_FORM, found: show(id), advice: 'Choose another id.' });
    if (ids.has(id)) report({ place, code: 'duplicate-id', expected: 'an id of its own', found: `another group ${show(id)}`, advice: 'Rename one of them.' });
    ids.add(id);
    for (const node of nodes) {
      if (members.has(node)) report({ place, code: 'grouped-twice', expected: 'nodes that are in no other group, each once', found: show(node), advice: 'Remove it from one of the groups.' });
      else if (!ends.has(node) && !unreadable.nodes)
        report({ place, code: 'missing-node', expected: 'nodes of this graph', found: show(node), advice: suggest(node, ends.keys(), 'Remove it from the group.') });
      members.add(node);
    }
  }
}
