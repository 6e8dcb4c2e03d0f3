import type { ExposedInput, GraphDocument, GraphNode, NodeGroup, Span } from './document.ts';

/**
 * Writes a graph as JSON text that differs little when little changes: keys in a fixed order, parameters by name, one line
 * for each thing that an edit changes by itself. Ends with a line break. Reading and writing it again gives the same text.
 */
export function writeGraph({ format, version, title, notes, nodes, wires, inputs, groups }: GraphDocument): string {
  const parts = [
    member('format', format), member('version', version), member('title', title), member('notes', notes),
    `"nodes": ${list(nodes.map(writeNode), 1)}`,
    `"wires": ${list(wires.map(({ from, to }) => `{ ${member('from', from)}, ${member('to', to)} }`), 1)}`,
    `"inputs": ${list(inputs.map(writeInput), 1)}`,
    `"groups": ${list(groups.map(writeGroup), 1)}`,
  ];
  return `${braces(parts, 0)}\n`;
}

function writeNode({ id, type, title, note, position, params }: GraphNode): string {
  const names = Object.keys(params).sort(byCodeUnit);
  const values = names.map((name) => `${JSON.stringify(name)}: ${writeValue(params[name]!)}`);
  return braces([
    `${member('id', id)}, ${member('type', type)}`,
    ...optional('title', title), ...optional('note', note),
    `"position": [${position.map((value) => JSON.stringify(value)).join(', ')}]`,
    ...(values.length > 0 ? [`"params": ${braces(values, 3)}`] : []),
  ], 2);
}

/** Any value that JSON can hold is written, so that a parameter of a damaged document survives being saved. */
function writeValue(value: unknown): string {
  if (Array.isArray(value) && value.every((point) => hasKeys(point, ['x', 'y'])))
    return list((value as readonly Named[]).map((point) => `{ ${members(point, ['x', 'y']).join(', ')} }`), 4);
  const content = hasKeys(value, ['name', 'text']) ? 'text' : hasKeys(value, ['name', 'base64']) ? 'base64' : undefined;
  return content === undefined ? JSON.stringify(value) : braces(members(value as Named, ['name', content]), 4);
}

type Named = Readonly<Record<string, unknown>>;

function hasKeys(value: unknown, keys: readonly string[]): boolean {
  return typeof value === 'object' && value !== null && Object.keys(value).length === keys.length && keys.every((key) => Object.hasOwn(value, key));
}

const members = (value: Named, keys: readonly string[]) => keys.map((key) => `${JSON.stringify(key)}: ${JSON.stringify(value[key])}`);

function writeInput({ name, label, help, group, sets, limits, proved }: ExposedInput): string {
  const spans = [...optionalSpan('limits', limits), ...optionalSpan('proved', proved)];
  return braces([member('name', name), member('label', label), member('help', help), ...optional('group', group), member('sets', sets), ...spans], 2);
}

function optionalSpan(key: string, span: Span | undefined): string[] {
  return span === undefined ? [] : [`${JSON.stringify(key)}: [${span.map((value) => JSON.stringify(value)).join(', ')}]`];
}

function writeGroup({ id, title, nodes, collapsed }: NodeGroup): string {
  return braces([member('id', id), member('title', title), `"nodes": ${list(nodes.map((node) => JSON.stringify(node)), 3)}`, member('collapsed', collapsed)], 2);
}

function member(key: string, value: string | number | boolean): string {
  return `${JSON.stringify(key)}: ${JSON.stringify(value)}`;
}

function optional(key: string, value: string | undefined): string[] {
  return value === undefined ? [] : [member(key, value)];
}

/** Not by locale: the same document must give the same text everywhere. */
function byCodeUnit(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function braces(members: readonly string[], depth: number): string {
  return block('{', members, '}', depth);
}

function list(items: readonly string[], depth: number): string {
  return items.length === 0 ? '[]' : block('[', items, ']', depth);
}

function block(open: string, lines: readonly string[], close: string, depth: number): string {
  const indent = '  '.repeat(depth + 1);
  return `${open}\n${lines.map((line) => `${indent}${line}`).join(',\n')}\n${'  '.repeat(depth)}${close}`;
}
