import type { Shapes } from './node.ts';
import type { ExposedInput, GraphDocument, Span } from './document.ts';
import { type Reference, splitReference } from './names.ts';
import { suggest } from './nearest.ts';
import { checkValue, defaultOf } from './param-values.ts';
import type { NumberParam, Param, ParamValue } from './params.ts';
import { type GraphProblem, type GraphProblems, nonEmpty } from './problem.ts';
import { show, showList } from './show.ts';

/** An exposed input with the parameter it sets and that parameter's present value. */
export interface ListedInput {
  readonly name: string;
  readonly label: string;
  readonly help: string;
  readonly group?: string;
  /** A number's limits are those of the recipe, where it has some. */
  readonly param: Param;
  readonly value: ParamValue;
  /** The node and the name of its parameter that it sets. */
  readonly target: Reference;
  /** Between which numbers the recipe was tried and found good. */
  readonly proved?: Span;
}

export type SetResult =
  | { readonly ok: true; readonly document: GraphDocument }
  | { readonly ok: false; readonly problems: GraphProblems };

/** The exposed inputs of a graph, in its order. One whose parameter does not exist (a fault of the graph) is left out. */
export function listInputs(document: GraphDocument, catalogue: Shapes): ListedInput[] {
  const targetOf = targetFinder(document, catalogue);
  return document.inputs.flatMap((input) => {
    const target = targetOf(input);
    if (target === undefined) return [];
    const { name, label, help, group, proved } = input;
    const { param, value } = target;
    return [{ name, label, help, ...(group !== undefined && { group }), param, value, target: { node: target.node, name: target.name }, ...(proved !== undefined && { proved }) }];
  });
}

/** The document with exposed inputs set to values by name; the one given is left as it is. One problem for each fault. */
export function setInputs(document: GraphDocument, catalogue: Shapes, values: ReadonlyMap<string, ParamValue>): SetResult {
  const targetOf = targetFinder(document, catalogue);
  const problems: GraphProblem[] = [];
  const changes = new Map<string, Record<string, ParamValue>>();
  for (const [name, value] of values) {
    const input = document.inputs.find((exposed) => exposed.name === name);
    const target = input && targetOf(input);
    const fault = input === undefined ? unknownName(name, document) : target === undefined ? missingParam(input) : checkValue(target.param, value);
    if (fault !== undefined) problems.push({ place: name, ...fault });
    else if (target !== undefined) changes.set(target.node, { ...changes.get(target.node), [target.name]: value });
  }
  const faults = nonEmpty(problems);
  if (faults !== undefined) return { ok: false, problems: faults };
  const nodes = document.nodes.map((node) => (changes.has(node.id) ? { ...node, params: { ...node.params, ...changes.get(node.id) } } : node));
  return { ok: true, document: { ...document, nodes } };
}

interface Target {
  readonly node: string;
  readonly name: string;
  readonly param: Param;
  readonly value: ParamValue;
}

function targetFinder({ nodes }: GraphDocument, catalogue: Shapes): (input: ExposedInput) => Target | undefined {
  const byId = new Map(nodes.map((node) => [node.id, node]));
  return ({ sets, limits }) => {
    const reference = splitReference(sets);
    const node = reference && byId.get(reference.node);
    const params = node && catalogue.get(node.type)?.params;
    if (params === undefined || !Object.hasOwn(params, reference!.name)) return undefined;
    const param = params[reference!.name]!;
    const value = Object.hasOwn(node!.params, reference!.name) ? node!.params[reference!.name]! : defaultOf(param);
    return { ...reference!, param: withinLimits(param, limits), value };
  };
}

/** The parameter as the recipe lets it be set. */
function withinLimits(param: Param, limits: Span | undefined): Param {
  if (param.kind !== 'number' || limits === undefined) return param;
  return { ...param, min: Math.max(param.min, limits[0]), max: Math.min(param.max, limits[1]) };
}

/** An exposed number that lies beyond what the recipe was proved for. */
export interface BeyondProved {
  readonly input: ListedInput & { readonly param: NumberParam; readonly proved: Span };
  readonly value: number;
}

/** The exposed numbers of which the recipe says between which values it was proved, and those of them that lie beyond. */
export function provedInputs(document: GraphDocument, catalogue: Shapes): { readonly proved: readonly ListedInput[]; readonly beyond: readonly BeyondProved[] } {
  const proved = listInputs(document, catalogue).filter((input) => input.proved !== undefined && input.param.kind === 'number');
  const beyond = proved.flatMap((input): BeyondProved[] => {
    const { value } = input;
    const [least, greatest] = input.proved!;
    return typeof value === 'number' && (value < least || value > greatest) ? [{ input: input as BeyondProved['input'], value }] : [];
  });
  return { proved, beyond };
}

function unknownName(name: string, { inputs }: GraphDocument): GraphProblem {
  const known = inputs.map((input) => input.name);
  return { code: 'unknown-name', expected: `one of the inputs ${showList(known)}`, found: show(name), advice: suggest(name, known, 'Give one of these names.') };
}

function missingParam({ sets }: ExposedInput): GraphProblem {
  return { code: 'missing-param', expected: 'an input that sets a parameter of a node', found: show(sets), advice: 'Correct this input in the graph.' };
}
