import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type GraphDocument, LIMITS, type ParamValue, readGraph, writeGraph } from '../../src/runtime/index.ts';
import { catalogue, graph } from './arithmetic.ts';

const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0);
const id = fc.stringMatching(/^[a-z][a-z0-9]{0,4}(-[a-z0-9]{1,3})?$/);
const file = fc.oneof(
  fc.record({ name: fc.constantFrom('a.svg', 'B.SVG', 'ø "x".svg'), text: fc.string({ unit: 'binary' }) }),
  fc.record({ name: fc.constant('a.svg'), base64: fc.base64String() }),
  fc.constant(null),
);
const labelParams: fc.Arbitrary<Record<string, ParamValue>> = fc.record({
  prefix: fc.string({ unit: 'grapheme', maxLength: 3 }).filter((text) => text.length <= 10), style: fc.constantFrom('plain', 'round'),
  copies: fc.integer({ min: 1, max: 5 }), loud: fc.boolean(), sheet: file, marks: fc.array(fc.record({ x: number, y: number }), { maxLength: 3 }),
}, { requiredKeys: [] });

/** Documents without fault, of chains of labels, sums and constants. */
const documents: fc.Arbitrary<GraphDocument> = fc.record({
  title: fc.string({ unit: 'binary' }), notes: fc.string(), help: fc.string(), heading: fc.option(fc.string(), { nil: undefined }),
  ids: fc.uniqueArray(id, { minLength: 3, maxLength: 8 }), params: labelParams, note: fc.option(fc.string(), { nil: undefined }), at: fc.tuple(number, number),
  collapsed: fc.boolean(),
}).map(({ title, notes, help, heading, ids, params, note, at, collapsed }) => {
  const [first, label, ...sums] = ids as [string, string, ...string[]];
  return {
    ...graph({}), title, notes,
    nodes: [
      { id: first, type: 'constant', position: at, params: {} }, { id: label, type: 'label', title, ...(note !== undefined && { note }), position: at, params },
      ...sums.map((sum) => ({ id: sum, type: 'sum', position: at, params: {} })),
    ],
    wires: sums.map((sum, i) => ({ from: i === 0 ? `${first}.value` : `${sums[i - 1]}.total`, to: `${sum}.terms` })),
    inputs: [{ name: 'value', label: title, help, ...(heading !== undefined && { group: heading }), sets: `${first}.value` }],
    groups: [{ id: 'all', title: notes, nodes: ids, collapsed }],
  };
});

const reread = (text: string) => {
  const result = readGraph(text, catalogue);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.document;
};

describe('writing and reading', () => {
  it('gives back the document', () => {
    fc.assert(fc.property(documents, (document) => {
      expect(reread(writeGraph(document))).toEqual(document);
    }), { seed: 1, numRuns: 100 });
  });

  it('gives back the text, whatever order the keys had', () => {
    fc.assert(fc.property(documents, (document) => {
      const text = writeGraph(document);
      const shuffled = JSON.stringify(document, (_key, value: unknown) =>
        (typeof value === 'object' && value !== null && !Array.isArray(value) ? Object.fromEntries(Object.entries(value).reverse()) : value));
      expect(writeGraph(reread(text))).toBe(text);
      expect(writeGraph(reread(shuffled))).toBe(text);
    }), { seed: 2, numRuns: 80 });
  });

  it('keeps numbers exactly', () => {
    fc.assert(fc.property(fc.double({ min: -1000, max: 1000, noNaN: true }), (value) => {
      const [node] = reread(writeGraph(graph({ a: ['constant', { value }] }))).nodes;
      expect(node!.params['value']).toBe(value + 0);
    }), { seed: 3 });
  });
});

const sample = graph(
  { b: ['constant', { value: 2.5 }], a: ['label', { style: 'round', loud: true, sheet: { name: 'x.svg', text: '<svg/>\n' }, marks: [{ x: 1, y: -2 }] }] },
  ['b.value -> a.value'],
  { inputs: [{ name: 'size', label: 'Size', help: '', sets: 'b.value' }], groups: [{ id: 'g', title: 'Both', nodes: ['a', 'b'], collapsed: true }] },
);

describe('the written text', () => {
  it('has one line for each thing that an edit changes', () => {
    expect(writeGraph(sample)).toMatchInlineSnapshot(`
      "{
        "format": "groovewright-graph",
        "version": 1,
        "title": "test",
        "notes": "",
        "nodes": [
          {
            "id": "b", "type": "constant",
            "position": [0, 0],
            "params": {
              "value": 2.5
            }
          },
          {
            "id": "a", "type": "label",
            "position": [100, 0],
            "params": {
              "loud": true,
              "marks": [
                { "x": 1, "y": -2 }
              ],
              "sheet": {
                "name": "x.svg",
                "text": "<svg/>\\n"
              },
              "style": "round"
            }
          }
        ],
        "wires": [
          { "from": "b.value", "to": "a.value" }
        ],
        "inputs": [
          {
            "name": "size",
            "label": "Size",
            "help": "",
            "sets": "b.value"
          }
        ],
        "groups": [
          {
            "id": "g",
            "title": "Both",
            "nodes": [
              "a",
              "b"
            ],
            "collapsed": true
          }
        ]
      }
      "
    `);
  });

  it.each([
    ['moving a node', { ...sample, nodes: [{ ...sample.nodes[0]!, position: [7, 8] as const }, sample.nodes[1]!] }, 1, 1],
    ['setting a parameter', { ...sample, nodes: [{ ...sample.nodes[0]!, params: { value: 3 } }, sample.nodes[1]!] }, 1, 1],
    ['titling a node', { ...sample, nodes: [{ ...sample.nodes[0]!, title: 'Two' }, sample.nodes[1]!] }, 1, 0],
    ['removing the wires', { ...sample, wires: [] }, 1, 3],
  ])('differs little after %s', (_edit, edited, added, removed) => {
    const [before, after] = [writeGraph(sample), writeGraph(edited)].map((text) => text.split('\n'));
    expect(after!.filter((line) => !before!.includes(line))).toHaveLength(added);
    expect(before!.filter((line) => !after!.includes(line)).length).toBeLessThanOrEqual(removed);
  });

  it('ends with one line break', () => expect(writeGraph(graph({}))).toMatch(/[^\n]\n$/));
});

describe('what may be left out', () => {
  it('takes its usual value', () => {
    const text = '{"format":"groovewright-graph","version":1,"title":"t","wires":[],"nodes":[{"id":"a","type":"constant","position":[0,0]}],"inputs":[{"name":"n","label":"l","sets":"a.value"}]}';
    expect(reread(text)).toEqual({
      ...graph({ a: ['constant'] }), title: 't', inputs: [{ name: 'n', label: 'l', help: '', sets: 'a.value' }],
    });
  });
});

describe('documents of version 0', () => {
  const old = { format: 'groovewright-graph', version: 0, title: 'old', notes: '', nodes: graph({ a: ['constant'], b: ['sum'] }).nodes, inputs: [] };
  const problemsOf = (raw: object) => {
    const result = readGraph(JSON.stringify(raw), catalogue);
    return result.ok ? [] : result.problems.map(({ code, place }) => `${code} ${place}`);
  };

  it('get wires from their connections, and no groups', () => {
    expect(reread(JSON.stringify({ ...old, connections: [['a', 'value', 'b', 'terms']] })))
      .toEqual({ ...graph({ a: ['constant'], b: ['sum'] }, ['a.value -> b.terms']), title: 'old' });
  });

  it.each([
    ['no connections', {}, ['missing-key wires']],
    ['connections that are no list', { connections: 'none' }, ['unknown-key connections', 'missing-key wires']],
    ['a connection of three', { connections: [['a', 'value', 'b']] }, ['wrong-kind wires[0]']],
    ['a connection to a missing node', { connections: [['a', 'value', 'gone', 'terms']] }, ['missing-node wires[0].to']],
    ['wires besides connections', { connections: [], wires: [] }, ['unknown-key connections']],
  ])('with %s are refused after migration', (_name, change, problems) => expect(problemsOf({ ...old, ...change })).toEqual(problems));

  it('may not use connections in version 1', () => {
    expect(problemsOf({ ...old, version: 1, wires: [], connections: [] })).toEqual(['unknown-key connections']);
  });
});

describe('limits on size', () => {
  it('refuses a text longer than the limit before looking at it', () => {
    const result = readGraph(' '.repeat(LIMITS.characters + 1), catalogue);
    expect(result.ok ? [] : result.problems.map(({ code }) => code)).toEqual(['too-large']);
  });

  it('reads an embedded drawing of many megabytes', () => {
    const text = '<svg>"\\\n'.repeat(250_000);
    const [node] = reread(writeGraph(graph({ a: ['label', { sheet: { name: 'x.svg', text } }] }))).nodes;
    expect(node!.params['sheet']).toEqual({ name: 'x.svg', text });
  });

  it('reads a chain of as many nodes as are allowed', () => {
    const nodes = Array.from({ length: LIMITS.nodes }, (_, i) => [`n${i}`, ['sum']] as const);
    const wires = nodes.slice(1).map(([id], i) => `n${i}.total -> ${id}.terms`);
    const document = graph(Object.fromEntries(nodes), wires);
    expect(reread(writeGraph(document))).toEqual(document);
  });

  it('finds a cycle through as many nodes as are allowed', () => {
    const nodes = Array.from({ length: LIMITS.nodes }, (_, i) => [`n${i}`, ['sum']] as const);
    const wires = nodes.map((_, i) => `n${i}.total -> n${(i + 1) % LIMITS.nodes}.terms`);
    const result = readGraph(writeGraph(graph(Object.fromEntries(nodes), wires)), catalogue);
    expect(result.ok ? [] : result.problems.map(({ code }) => code)).toEqual(['cycle']);
    expect(result.ok ? '' : result.problems[0].found).toMatch(/^a cycle through "n0", "n1", .* and 9988 more$/);
  });

  it('reports every fault of a document that is all faults', () => {
    const wires = Array.from({ length: 20_000 }, (_, i) => ({ from: `x${i}.value`, to: `y${i}.value` }));
    const result = readGraph(JSON.stringify({ ...graph({ a: ['constant'] }), wires }), catalogue);
    expect(result.ok ? [] : result.problems).toHaveLength(40_000);
  });
});
