import { describe, expect, it } from 'vitest';
import { type GraphCode, LIMITS, checkGraph, formatProblem, readGraph } from '../../src/runtime/index.ts';
import { catalogue } from './arithmetic.ts';

type Json = Record<string, unknown>;

const node = (id: string, type: string, params: Json = {}, rest: Json = {}): Json => ({ id, type, position: [0, 0], params, ...rest });
const wire = (from: string, to: string): Json => ({ from, to });

/** A sound graph: one third as text, with an exposed input and a group. Each fault below is one change to it. */
const sound = (): Json => ({
  format: 'groovewright-graph', version: 1, title: 'Sound', notes: '',
  nodes: [node('one', 'constant'), node('three', 'constant', { value: 3 }), node('third', 'divide'), node('sum', 'sum'), node('text', 'label', { prefix: 'x', copies: 2 })],
  wires: [wire('one.value', 'third.dividend'), wire('three.value', 'third.divisor'), wire('third.quotient', 'sum.terms'), wire('sum.total', 'text.value')],
  inputs: [{ name: 'divisor', label: 'Divisor', help: 'What to divide by.', sets: 'three.value' }],
  groups: [{ id: 'numbers', title: 'Numbers', nodes: ['one', 'three'], collapsed: false }],
});

const changed = (change: Json) => ({ ...sound(), ...change });
const list = (key: string) => sound()[key] as Json[];
const add = (key: string, ...items: unknown[]) => changed({ [key]: [...list(key), ...items] });
const replace = (key: string, index: number, item: unknown) => changed({ [key]: list(key).map((old, i) => (i === index ? item : old)) });
const amend = (key: string, index: number, change: Json) => replace(key, index, { ...list(key)[index], ...change });
const without = (key: string, index: number) => changed({ [key]: list(key).filter((_, i) => i !== index) });
const omit = (object: Json, key: string) => Object.fromEntries(Object.entries(object).filter(([name]) => name !== key));
const label = (params: Json) => amend('nodes', 4, { params });
/** JSON text in which a key or value occurs that no object literal can hold. */
const text = (graph: unknown, from: string, to: string) => {
  const whole = JSON.stringify(graph);
  if (!whole.includes(from)) throw new Error(`no ${from} in the graph`);
  return whole.replace(from, () => to);
};

type Fault = [name: string, code: GraphCode, graph: unknown, at?: { node?: string; place?: string }];

const FAULTS: Fault[] = [
  ['empty text', 'not-json', '', { place: 'line 1, column 1' }],
  ['only space', 'not-json', ' \n ', { place: 'line 2, column 2' }],
  ['truncated text', 'not-json', JSON.stringify(sound()).slice(0, -40)],
  ['text after the end', 'not-json', `${JSON.stringify(sound())}\nx`, { place: 'line 2, column 1' }],
  ['single quotes', 'not-json', '{\n  \'format\': 1 }', { place: 'line 2, column 3' }],
  ['a comma too many', 'not-json', '[1, 2,\n]', { place: 'line 2, column 1' }],
  ['NaN, which JSON does not have', 'not-json', text(sound(), '"position":[0,0]', '"position":[NaN,0]')],
  ['Infinity, which JSON does not have', 'not-json', text(sound(), '"value":3', '"value":Infinity')],
  ['a byte order mark', 'not-json', `\uFEFF${JSON.stringify(sound())}`, { place: 'line 1, column 1' }],
  ['nesting without end', 'too-large', '['.repeat(20_000)],
  ['a list', 'wrong-format', []],
  ['null', 'wrong-format', null],
  ['a number', 'wrong-format', 7],
  ['no format', 'wrong-format', omit(sound(), 'format')],
  ['another format', 'wrong-format', changed({ format: 'other' })],
  ['no version', 'wrong-version', omit(sound(), 'version')],
  ['a version that is text', 'wrong-version', changed({ version: '1' })],
  ['half a version', 'wrong-version', changed({ version: 0.5 })],
  ['a negative version', 'wrong-version', changed({ version: -1 })],
  ['a version from the future', 'future-version', changed({ version: 2 }), { place: 'version' }],

  ['an unknown key', 'unknown-key', changed({ color: 'red' }), { place: 'color' }],
  ['an unknown key __proto__', 'unknown-key', text(sound(), '"notes"', '"__proto__":{"polluted":true},"notes"'), { place: '__proto__' }],
  ['an unknown key constructor', 'unknown-key', changed({ constructor: {} }), { place: 'constructor' }],
  ['an unknown key of a node', 'unknown-key', amend('nodes', 0, { colour: 1 }), { node: 'one', place: 'colour' }],
  ['a key __proto__ of a node', 'unknown-key', text(sound(), '{"id":"one"', '{"__proto__":{},"id":"one"'), { node: 'one', place: '__proto__' }],
  ['an unknown key of a wire', 'unknown-key', amend('wires', 0, { colour: 1 }), { place: 'wires[0].colour' }],
  ['an unknown key of an input', 'unknown-key', amend('inputs', 0, { toString: 1 }), { place: 'inputs[0].toString' }],
  ['an unknown key of a group', 'unknown-key', amend('groups', 0, { colour: 1 }), { place: 'groups[0].colour' }],
  ['an unknown key with a line break', 'unknown-key', changed({ ['a\n'.repeat(500)]: 1 })],
  ['a repeated key', 'duplicate-key', text(sound(), '"notes":""', '"notes":"","notes":""')],
  ['a key repeated by an escape', 'duplicate-key', text(sound(), '"notes":""', '"notes":"","n\\u006ftes":""')],
  ['no title', 'missing-key', omit(sound(), 'title'), { place: 'title' }],
  ['no nodes', 'missing-key', omit(sound(), 'nodes'), { place: 'nodes' }],
  ['no wires', 'missing-key', omit(sound(), 'wires'), { place: 'wires' }],
  ['a title that is no text', 'wrong-kind', changed({ title: 7 }), { place: 'title' }],
  ['notes that are no text', 'wrong-kind', changed({ notes: null }), { place: 'notes' }],
  ['nodes that are no list', 'wrong-kind', changed({ nodes: {} }), { place: 'nodes' }],
  ['wires that are no list', 'wrong-kind', changed({ wires: 'none' }), { place: 'wires' }],
  ['inputs that are no list', 'wrong-kind', changed({ inputs: null }), { place: 'inputs' }],
  ['groups that are no list', 'wrong-kind', changed({ groups: 0 }), { place: 'groups' }],

  ['a node that is null', 'wrong-kind', replace('nodes', 0, null), { place: 'nodes[0]' }],
  ['a node that is a list', 'wrong-kind', add('nodes', []), { place: 'nodes[5]' }],
  ['a node without id', 'missing-key', replace('nodes', 0, omit(node('', 'constant'), 'id')), { place: 'nodes[0].id' }],
  ['a node whose id is no text', 'wrong-kind', amend('nodes', 0, { id: 1 }), { place: 'nodes[0].id' }],
  ['a node without type', 'missing-key', replace('nodes', 0, omit(node('one', ''), 'type')), { node: 'one', place: 'type' }],
  ['a node whose type is no text', 'wrong-kind', amend('nodes', 0, { type: [] }), { node: 'one', place: 'type' }],
  ['a node without position', 'missing-key', replace('nodes', 0, omit(node('one', 'constant'), 'position')), { node: 'one', place: 'position' }],
  ['a position of three numbers', 'wrong-kind', amend('nodes', 0, { position: [0, 0, 0] }), { node: 'one', place: 'position' }],
  ['a position of text', 'wrong-kind', amend('nodes', 0, { position: ['0', 0] }), { node: 'one', place: 'position' }],
  ['a position beyond all bounds', 'not-finite', text(sound(), '"position":[0,0]', '"position":[1e999,0]'), { node: 'one', place: 'position' }],
  ['a node title that is no text', 'wrong-kind', amend('nodes', 0, { title: 1 }), { node: 'one', place: 'title' }],
  ['a node note that is no text', 'wrong-kind', amend('nodes', 0, { note: {} }), { node: 'one', place: 'note' }],
  ['parameters as a list', 'wrong-kind', amend('nodes', 0, { params: [] }), { node: 'one', place: 'params' }],
  ['a duplicate id', 'duplicate-id', add('nodes', node('one', 'constant')), { node: 'one' }],
  ['a duplicate id of another type, wired', 'duplicate-id', add('nodes', node('third', 'sum')), { node: 'third' }],
  ['an id with a space', 'bad-id', add('nodes', node('a b', 'constant')), { node: 'a b' }],
  ['an id with a dot, wired', 'bad-id', changed({ nodes: [...list('nodes'), node('a.b', 'constant')], wires: [...list('wires'), wire('a.b.value', 'sum.terms')] }), { node: 'a.b' }],
  ['an empty id', 'bad-id', add('nodes', node('', 'constant'))],
  ['an id that is too long', 'bad-id', add('nodes', node('x'.repeat(65), 'constant'))],
  ['an unknown node type', 'unknown-node', add('nodes', node('new', 'konstant')), { node: 'new', place: 'type' }],
  ['an unknown node type, wired and exposed', 'unknown-node', amend('nodes', 1, { type: 'nowhere' }), { node: 'three', place: 'type' }],
  ['a node type every object has', 'unknown-node', add('nodes', node('new', 'constructor')), { node: 'new', place: 'type' }],

  ['an unknown parameter', 'unknown-param', label({ prefx: 'x' }), { node: 'text', place: 'prefx' }],
  ['an unknown parameter with a line break', 'unknown-param', label({ ['a\n'.repeat(500)]: 'x' }), { node: 'text' }],
  ['an id with a line break', 'bad-id', add('nodes', node('a\n'.repeat(500), 'constant'))],
  ['a parameter every object has', 'unknown-param', label({ constructor: 1 }), { node: 'text', place: 'constructor' }],
  ['a parameter __proto__', 'unknown-param', text(sound(), '{"prefix"', '{"__proto__":1,"prefix"'), { node: 'text', place: '__proto__' }],
  ['text for a number', 'wrong-kind', label({ copies: '2' }), { node: 'text', place: 'copies' }],
  ['null for a number', 'wrong-kind', label({ copies: null }), { node: 'text', place: 'copies' }],
  ['a number beyond all bounds', 'not-finite', text(sound(), '"value":3', '"value":1e999'), { node: 'three', place: 'value' }],
  ['a number below its limit', 'out-of-limits', label({ copies: 0 }), { node: 'text', place: 'copies' }],
  ['a number above its limit', 'out-of-limits', label({ copies: 6 }), { node: 'text', place: 'copies' }],
  ['half a count', 'out-of-limits', label({ copies: 1.5 }), { node: 'text', place: 'copies' }],
  ['a choice not offered', 'not-offered', label({ style: 'plane' }), { node: 'text', place: 'style' }],
  ['a choice of the wrong kind', 'wrong-kind', label({ style: 0 }), { node: 'text', place: 'style' }],
  ['text that is too long', 'out-of-limits', label({ prefix: 'x'.repeat(11) }), { node: 'text', place: 'prefix' }],
  ['a number for text', 'wrong-kind', label({ prefix: 1 }), { node: 'text', place: 'prefix' }],
  ['text for a switch', 'wrong-kind', label({ loud: 'on' }), { node: 'text', place: 'loud' }],
  ['text for a file', 'wrong-kind', label({ sheet: 'a.svg' }), { node: 'text', place: 'sheet' }],
  ['a file without content', 'wrong-kind', label({ sheet: { name: 'a.svg' } }), { node: 'text', place: 'sheet' }],
  ['a file with two contents', 'wrong-kind', label({ sheet: { name: 'a.svg', text: '', base64: '' } }), { node: 'text', place: 'sheet' }],
  ['a file without name', 'wrong-kind', label({ sheet: { name: '', text: '' } }), { node: 'text', place: 'sheet' }],
  ['a file with broken base64', 'wrong-kind', label({ sheet: { name: 'a.svg', base64: 'Zg=' } }), { node: 'text', place: 'sheet' }],
  ['a file of a kind not taken', 'not-offered', label({ sheet: { name: 'a.txt', text: '' } }), { node: 'text', place: 'sheet' }],
  ['points that are no list', 'wrong-kind', label({ marks: { x: 1, y: 2 } }), { node: 'text', place: 'marks' }],
  ['a point with three coordinates', 'wrong-kind', label({ marks: [{ x: 1, y: 2, z: 3 }] }), { node: 'text', place: 'marks' }],
  ['a point beyond all bounds', 'wrong-kind', text(label({ marks: [{ x: 1, y: 2 }] }), '"y":2', '"y":1e999'), { node: 'text', place: 'marks' }],
  ['too many points', 'out-of-limits', label({ marks: Array.from({ length: LIMITS.points + 1 }, () => ({ x: 0, y: 0 })) }), { node: 'text', place: 'marks' }],

  ['a required input without wire', 'missing-input', without('wires', 0), { node: 'third', place: 'dividend' }],
  ['a wire that is text', 'wrong-kind', replace('wires', 0, 'one.value -> third.dividend'), { place: 'wires[0]' }],
  ['a wire without end', 'missing-key', replace('wires', 0, { from: 'one.value' }), { place: 'wires[0].to' }],
  ['a wire without start', 'missing-key', replace('wires', 0, { to: 'third.dividend' }), { place: 'wires[0].from' }],
  ['a wire from a number', 'wrong-kind', amend('wires', 0, { from: 1 }), { place: 'wires[0].from' }],
  ['a wire from a node without port', 'bad-reference', amend('wires', 0, { from: 'one' }), { place: 'wires[0].from' }],
  ['a wire to a node without port', 'bad-reference', amend('wires', 0, { to: 'third.' }), { place: 'wires[0].to' }],
  ['a wire from a missing node', 'missing-node', amend('wires', 0, { from: 'uno.value' }), { place: 'wires[0].from' }],
  ['a wire to a missing node', 'missing-node', add('wires', wire('one.value', 'nowhere.dividend')), { place: 'wires[4].to' }],
  ['a wire to a mistyped node', 'missing-node', amend('wires', 0, { to: 'thrid.dividend' }), { place: 'wires[0].to' }],
  ['a wire from a missing port', 'missing-port', amend('wires', 0, { from: 'one.result' }), { node: 'third', place: 'wires[0].from' }],
  ['a wire from a port every object has', 'missing-port', amend('wires', 0, { from: 'one.constructor' }), { place: 'wires[0].from' }],
  ['a wire from an input', 'missing-port', add('wires', wire('third.dividend', 'sum.terms')), { place: 'wires[4].from' }],
  ['a wire to a missing port', 'missing-port', add('wires', wire('one.value', 'sum.factors')), { node: 'sum', place: 'wires[4].to' }],
  ['a wire to a mistyped port', 'missing-port', amend('wires', 0, { to: 'third.divident' }), { node: 'third', place: 'wires[0].to' }],
  ['a wire into a parameter', 'missing-port', add('wires', wire('text.text', 'three.value')), { node: 'three', place: 'wires[4].to' }],
  ['two wires into a single port', 'port-taken', add('wires', wire('one.value', 'third.divisor')), { node: 'third', place: 'divisor' }],
  ['the same wire twice', 'duplicate-wire', add('wires', wire('third.quotient', 'sum.terms')), { node: 'sum', place: 'terms' }],
  ['the same wire twice into a single port', 'duplicate-wire', add('wires', wire('one.value', 'third.dividend')), { node: 'third', place: 'dividend' }],
  ['a wire between different types', 'type-mismatch', changed({ nodes: [...list('nodes'), node('other', 'sum')], wires: [...list('wires'), wire('text.text', 'other.terms')] }), { node: 'other', place: 'terms' }],
  ['a wire from a node to itself', 'cycle', add('wires', wire('sum.total', 'sum.terms')), { node: 'sum' }],
  ['a cycle of two', 'cycle', amend('wires', 0, { from: 'sum.total' }), { node: 'third' }],

  ['an input that is no object', 'wrong-kind', add('inputs', 'divisor'), { place: 'inputs[1]' }],
  ['an input without name', 'missing-key', replace('inputs', 0, omit(list('inputs')[0]!, 'name')), { place: 'inputs[0].name' }],
  ['an input without label', 'missing-key', replace('inputs', 0, omit(list('inputs')[0]!, 'label')), { place: 'inputs[0].label' }],
  ['an input that sets nothing', 'missing-key', replace('inputs', 0, omit(list('inputs')[0]!, 'sets')), { place: 'inputs[0].sets' }],
  ['an input with a bad name', 'bad-name', amend('inputs', 0, { name: 'the divisor' }), { place: 'input "the divisor"' }],
  ['an input named as every object\'s member', 'bad-name', amend('inputs', 0, { name: 'constructor' }), { place: 'input "constructor"' }],
  ['an input with a duplicate name', 'duplicate-name', add('inputs', { name: 'divisor', label: '', help: '', sets: 'one.value' }), { place: 'input "divisor"' }],
  ['an input that sets what another sets', 'exposed-twice', add('inputs', { name: 'other', label: '', help: '', sets: 'three.value' }), { place: 'input "other"' }],
  ['an input that sets a missing parameter', 'missing-param', amend('inputs', 0, { sets: 'three.amount' }), { place: 'input "divisor"' }],
  ['an input that sets a port', 'missing-param', amend('inputs', 0, { sets: 'third.divisor' }), { place: 'input "divisor"' }],
  ['an input that sets a missing node', 'missing-node', amend('inputs', 0, { sets: 'four.value' }), { place: 'input "divisor"' }],
  ['an input that sets a whole node', 'bad-reference', amend('inputs', 0, { sets: 'three' }), { place: 'input "divisor"' }],

  ['a group that is no object', 'wrong-kind', add('groups', 1), { place: 'groups[1]' }],
  ['a group without id', 'missing-key', replace('groups', 0, omit(list('groups')[0]!, 'id')), { place: 'groups[0].id' }],
  ['a group with a bad id', 'bad-id', amend('groups', 0, { id: 'a.b' }), { place: 'group "a.b"' }],
  ['a group with a duplicate id', 'duplicate-id', add('groups', { id: 'numbers', title: '', nodes: [] }), { place: 'group "numbers"' }],
  ['a group with an unknown node', 'missing-node', amend('groups', 0, { nodes: ['one', 'two'] }), { place: 'group "numbers"' }],
  ['a group with a node twice', 'grouped-twice', amend('groups', 0, { nodes: ['one', 'one'] }), { place: 'group "numbers"' }],
  ['a node in two groups', 'grouped-twice', add('groups', { id: 'others', title: '', nodes: ['three', 'sum'] }), { place: 'group "others"' }],
  ['a group whose nodes are no list', 'wrong-kind', amend('groups', 0, { nodes: 'one' }), { place: 'groups[0].nodes' }],
  ['a group whose nodes are no texts', 'wrong-kind', amend('groups', 0, { nodes: [1] }), { place: 'groups[0].nodes' }],
  ['a group collapsed by a word', 'wrong-kind', amend('groups', 0, { collapsed: 'yes' }), { place: 'groups[0].collapsed' }],

  ['too many nodes', 'too-large', changed({ nodes: Array.from({ length: LIMITS.nodes + 1 }, (_, i) => node(`n${i}`, 'constant')) }), { place: 'nodes' }],
  ['too many wires', 'too-large', changed({ wires: Array.from({ length: LIMITS.wires + 1 }, () => wire('a.b', 'c.d')) }), { place: 'wires' }],
  ['too many inputs', 'too-large', changed({ inputs: Array.from({ length: LIMITS.inputs + 1 }, () => null) }), { place: 'inputs' }],
  ['too many groups', 'too-large', changed({ groups: Array.from({ length: LIMITS.groups + 1 }, () => null) }), { place: 'groups' }],
];

const read = (graph: unknown) => readGraph(typeof graph === 'string' ? graph : JSON.stringify(graph), catalogue);

it('reads the sound graph that the faults are made from', () => {
  const result = read(sound());
  expect(result).toEqual({ ok: true, document: sound() });
  if (result.ok) expect(checkGraph(result.document, catalogue)).toEqual([]);
});

describe('each fault gives one problem', () => {
  it.each(FAULTS)('%s: %s', (_name, code, graph, at = {}) => {
    const result = read(graph);
    const problems = result.ok ? [] : result.problems;
    expect(problems.map((problem) => problem.code)).toEqual([code]);
    expect(problems[0]).toMatchObject(at);
  });

  it.each(FAULTS)('%s is told on one line of bounded length, with advice', (_name, _code, graph) => {
    const result = read(graph);
    const [problem] = result.ok ? [] : result.problems;
    const line = formatProblem(problem!);
    expect(line).toMatch(/expected .+, found .+\. .+[.?]$/);
    expect(line).not.toContain('\n');
    expect(line.length).toBeLessThan(500);
  });
});

it('has a row for every kind of fault that reading can find', () => {
  const codes: Record<Exclude<GraphCode, 'unknown-name'>, true> = {
    'wrong-kind': true, 'not-finite': true, 'out-of-limits': true, 'not-offered': true, 'too-large': true, 'not-json': true, 'duplicate-key': true,
    'wrong-format': true, 'wrong-version': true, 'future-version': true, 'unknown-key': true, 'missing-key': true, 'bad-id': true, 'duplicate-id': true,
    'unknown-node': true, 'unknown-param': true, 'bad-reference': true, 'missing-node': true, 'missing-port': true, 'missing-input': true,
    'port-taken': true, 'duplicate-wire': true, 'type-mismatch': true, cycle: true, 'bad-name': true, 'duplicate-name': true, 'missing-param': true,
    'exposed-twice': true, 'grouped-twice': true,
  };
  expect([...new Set(FAULTS.map(([, code]) => code))].sort()).toEqual(Object.keys(codes).sort());
});

describe('several faults', () => {
  it('are all reported, each once', () => {
    const graph = changed({
      title: 7,
      nodes: [...list('nodes').slice(0, 4), node('text', 'label', { prefix: 1, copies: 9 }), node('lone', 'divide'), node('odd one', 'sum')],
      wires: [...list('wires'), wire('lone.quotient', 'gone.terms'), wire('text.text', 'sum.terms')],
      groups: [...list('groups'), { id: 'numbers', title: '', nodes: ['nobody'] }],
    });
    const result = read(graph);
    expect(result.ok ? [] : result.problems.map(({ code, node: at, place }) => `${code} ${at ?? ''} ${place ?? ''}`)).toEqual([
      'wrong-kind  title', 'wrong-kind text prefix', 'out-of-limits text copies', 'bad-id odd one id',
      'type-mismatch sum terms', 'missing-node  wires[4].to', 'missing-input lone dividend', 'missing-input lone divisor',
      'cycle sum ', 'duplicate-id  group "numbers"', 'missing-node  group "numbers"',
    ]);
  });

  it('of one value are reported for each value, not for each wire that carries it', () => {
    const result = read(amend('nodes', 1, { params: { value: 5000 } }));
    expect(result.ok ? [] : result.problems.map(({ code }) => code)).toEqual(['out-of-limits']);
  });
});

describe('advice', () => {
  const adviceOn = (graph: unknown) => {
    const result = read(graph);
    return result.ok ? undefined : result.problems[0].advice;
  };
  it.each([
    ['a node type', add('nodes', node('new', 'konstant')), 'Did you mean "constant"?'],
    ['a parameter', label({ prefx: '' }), 'Did you mean "prefix"?'],
    ['a choice', label({ style: 'plan' }), 'Did you mean "plain"?'],
    ['a node', amend('wires', 0, { from: 'oen.value' }), 'Did you mean "one"?'],
    ['the input that lacks a wire', amend('wires', 0, { to: 'third.divident' }), 'Did you mean "third.dividend"?'],
    ['a key', amend('groups', 0, { titel: '' }), 'Did you mean "title"?'],
  ])('suggests %s of nearly that name', (_what, graph, advice) => expect(adviceOn(graph)).toBe(advice));
});

it('names all members of a cycle, and each cycle by itself', () => {
  const graph = changed({
    nodes: ['a', 'b', 'c', 'd', 'e'].map((id) => node(id, 'sum')), inputs: [], groups: [],
    wires: [wire('a.total', 'b.terms'), wire('b.total', 'c.terms'), wire('c.total', 'a.terms'), wire('c.total', 'd.terms'), wire('d.total', 'e.terms'), wire('e.total', 'd.terms')],
  });
  const result = read(graph);
  expect(result.ok ? [] : result.problems.map(({ found }) => found)).toEqual(['a cycle through "a", "b", "c"', 'a cycle through "d", "e"']);
});

it('pollutes no prototype', () => {
  read(text(sound(), '"notes"', '"__proto__":{"polluted":true},"notes"'));
  read(text(sound(), '{"prefix"', '{"__proto__":{"polluted":true},"prefix"'));
  expect(({} as Json)['polluted']).toBeUndefined();
});
