import { type ExposedInput, GRAPH_FORMAT, GRAPH_VERSION, type GraphDocument, type GraphNode, type NodeGroup, type Span, type Wire } from './document.ts';
import { suggest } from './nearest.ts';
import type { AnyParamValues } from './params.ts';
import type { GraphProblem } from './problem.ts';
import { show, showName } from './show.ts';

/** A document as far as it could be read, with what is wrong with its form. */
export interface Shaped {
  readonly document: GraphDocument;
  readonly problems: readonly GraphProblem[];
  /** Whether entries had to be left out: then a reference to none is no second fault. */
  readonly unreadable: Unreadable;
}

export interface Unreadable {
  readonly nodes: boolean;
  readonly wires: boolean;
}

/** Where a value stands: the node it belongs to, if known, and its path from there. */
interface Where {
  readonly node?: string;
  readonly place?: string;
}
type Raw = Readonly<Record<string, unknown>>;
type Members = ReadonlyMap<string, unknown>;
type Report = (problem: GraphProblem) => void;

interface Keys {
  readonly required: readonly string[];
  readonly optional: readonly string[];
}

const DOCUMENT: Keys = { required: ['format', 'version', 'title', 'nodes', 'wires'], optional: ['notes', 'inputs', 'groups'] };
const NODE: Keys = { required: ['id', 'type', 'position'], optional: ['title', 'note', 'params'] };
const WIRE: Keys = { required: ['from', 'to'], optional: [] };
const INPUT: Keys = { required: ['name', 'label', 'sets'], optional: ['help', 'group', 'limits', 'proved'] };
const GROUP: Keys = { required: ['id', 'title', 'nodes'], optional: ['collapsed'] };

/**
 * Reads raw JSON of the present version as a document: every key known, every value of the right kind. What names mean,
 * and whether parameters hold legal values, is for `checkGraph` to say.
 */
export function shapeDocument(raw: Raw): Shaped {
  const problems: GraphProblem[] = [];
  const report: Report = (problem) => void problems.push(problem);
  const members = readMembers(raw, {}, DOCUMENT, report) ?? new Map<string, unknown>();
  const lists = { nodes: readList(members, 'nodes', report), wires: readList(members, 'wires', report) };
  const nodes = readEach(lists.nodes, 'nodes', readNode, report);
  const wires = readEach(lists.wires, 'wires', readWire, report);
  const document: GraphDocument = {
    format: GRAPH_FORMAT, version: GRAPH_VERSION,
    title: readText(members, 'title', {}, report) ?? '',
    notes: readText(members, 'notes', {}, report) ?? '',
    nodes, wires,
    inputs: readEach(readList(members, 'inputs', report), 'inputs', readInput, report),
    groups: readEach(readList(members, 'groups', report), 'groups', readGroup, report),
  };
  return { document, problems, unreadable: { nodes: nodes.length !== lists.nodes?.length, wires: wires.length !== lists.wires?.length } };
}

function readNode(raw: unknown, where: Where, report: Report): GraphNode | undefined {
  const id = isRaw(raw) && Object.hasOwn(raw, 'id') && typeof raw['id'] === 'string' ? raw['id'] : undefined;
  const at = id === undefined ? where : { node: id };
  const members = readMembers(raw, at, NODE, report);
  if (members === undefined) return undefined;
  const type = readText(members, 'type', at, report);
  const node = {
    ...optionalText(members, 'title', at, report), ...optionalText(members, 'note', at, report),
    position: readPosition(members, at, report), params: readParams(members, at, report),
  };
  if (id === undefined) readText(members, 'id', at, report);
  return id === undefined || type === undefined ? undefined : { id, type, ...node };
}

function readWire(raw: unknown, where: Where, report: Report): Wire | undefined {
  const members = readMembers(raw, where, WIRE, report);
  if (members === undefined) return undefined;
  const from = readText(members, 'from', where, report);
  const to = readText(members, 'to', where, report);
  return from === undefined || to === undefined ? undefined : { from, to };
}

function readInput(raw: unknown, where: Where, report: Report): ExposedInput | undefined {
  const members = readMembers(raw, where, INPUT, report);
  if (members === undefined) return undefined;
  const name = readText(members, 'name', where, report);
  const label = readText(members, 'label', where, report) ?? '';
  const help = readText(members, 'help', where, report) ?? '';
  const group = optionalText(members, 'group', where, report);
  const sets = readText(members, 'sets', where, report);
  const spans = { ...optionalSpan(members, 'limits', where, report), ...optionalSpan(members, 'proved', where, report) };
  return name === undefined || sets === undefined ? undefined : { name, label, help, ...group, sets, ...spans };
}

function optionalSpan(members: Members, key: 'limits' | 'proved', where: Where, report: Report): { readonly [K in typeof key]?: Span } {
  if (!members.has(key)) return {};
  const value = members.get(key);
  if (Array.isArray(value) && value.length === 2 && value.every(Number.isFinite)) return { [key]: value as [number, number] };
  report(wrongKind(inside(where, key), 'two finite numbers [least, greatest]', value));
  return {};
}

function readGroup(raw: unknown, where: Where, report: Report): NodeGroup | undefined {
  const members = readMembers(raw, where, GROUP, report);
  if (members === undefined) return undefined;
  const id = readText(members, 'id', where, report);
  const title = readText(members, 'title', where, report) ?? '';
  const nodes = members.get('nodes');
  const collapsed = members.get('collapsed') ?? false;
  const named = Array.isArray(nodes) && nodes.every((node) => typeof node === 'string');
  if (members.has('nodes') && !named) report(wrongKind(inside(where, 'nodes'), 'a list of node ids', nodes));
  if (typeof collapsed !== 'boolean') report(wrongKind(inside(where, 'collapsed'), 'true or false', collapsed));
  return id === undefined ? undefined : { id, title, nodes: named ? nodes as string[] : [], collapsed: collapsed === true };
}

function readParams(members: Members, where: Where, report: Report): AnyParamValues {
  const params = members.has('params') ? members.get('params') : {};
  // Their values are checked against the node's declaration, which knows what each one should be.
  if (isRaw(params)) return params as AnyParamValues;
  report(wrongKind(inside(where, 'params'), 'an object with parameter names as keys', params));
  return {};
}

function readPosition(members: Members, where: Where, report: Report): readonly [number, number] {
  const position = members.get('position');
  if (!members.has('position')) return [0, 0];
  if (!Array.isArray(position) || position.length !== 2 || !position.every((value) => typeof value === 'number'))
    report(wrongKind(inside(where, 'position'), 'two numbers [x, y]', position));
  else if (!position.every(Number.isFinite))
    report({ ...wrongKind(inside(where, 'position'), 'two finite numbers [x, y]', position), code: 'not-finite', found: 'a number beyond all bounds' });
  else return position as [number, number];
  return [0, 0];
}

/** The members of an object; reports keys that are missing and keys that do not belong. */
function readMembers(raw: unknown, where: Where, { required, optional }: Keys, report: Report): Members | undefined {
  if (!isRaw(raw)) {
    report(wrongKind(where, 'an object', raw));
    return undefined;
  }
  const known = [...required, ...optional];
  for (const key of Object.keys(raw).filter((name) => !known.includes(name)))
    report({ ...inside(where, showName(key)), code: 'unknown-key', expected: `only the keys ${known.join(', ')}`, found: show(key), advice: suggest(key, known, 'Remove this key.') });
  for (const key of required.filter((name) => !Object.hasOwn(raw, name)))
    report({ ...inside(where, key), code: 'missing-key', expected: `the key "${key}"`, found: 'no such key', advice: 'Add this key.' });
  return new Map(Object.entries(raw).filter(([key]) => known.includes(key)));
}

/** A text member; undefined when it is absent, which is reported elsewhere, or no text, which is reported here. */
function readText(members: Members, key: string, where: Where, report: Report): string | undefined {
  const value = members.get(key);
  if (typeof value === 'string') return value;
  if (members.has(key)) report(wrongKind(inside(where, key), 'text', value));
  return undefined;
}

function optionalText<K extends string>(members: Members, key: K, where: Where, report: Report): Partial<Record<K, string>> {
  const text = readText(members, key, where, report);
  return text === undefined ? {} : { [key]: text } as Partial<Record<K, string>>;
}

function readList(members: Members, key: string, report: Report): readonly unknown[] | undefined {
  const value = members.get(key);
  if (Array.isArray(value)) return value;
  if (members.has(key)) report(wrongKind({ place: key }, 'a list', value));
  return undefined;
}

function readEach<T>(
  list: readonly unknown[] | undefined, key: string, read: (raw: unknown, where: Where, report: Report) => T | undefined, report: Report,
): T[] {
  return (list ?? []).flatMap((raw, i) => read(raw, { place: `${key}[${i}]` }, report) ?? []);
}

function isRaw(value: unknown): value is Raw {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function inside({ node, place }: Where, key: string): { node?: string; place: string } {
  return { ...(node !== undefined && { node }), place: place === undefined ? key : `${place}.${key}` };
}

function wrongKind(where: Where, expected: string, value: unknown): GraphProblem {
  return { ...where, code: 'wrong-kind', expected, found: show(value), advice: 'Correct this part of the file.' };
}
