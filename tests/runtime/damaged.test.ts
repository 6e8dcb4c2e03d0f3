import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type GraphDocument, type Salvage, LIMITS, checkGraph, readDamaged, readGraph, writeGraph } from '../../src/runtime/index.ts';
import { catalogue as nodeCatalogue } from '../support/shipped-run.ts';
import { catalogue, graph } from './arithmetic.ts';

const shipped = readFileSync(new URL('../../graphs/drawn-strokes.json', import.meta.url), 'utf8');
const shippedRaw = JSON.parse(shipped) as Record<string, unknown>;

const codes = ({ problems }: Salvage) => problems.map(({ code }) => code);
const read = (raw: unknown) => readDamaged(typeof raw === 'string' ? raw : JSON.stringify(raw), catalogue);

/** What every document must keep so that a view can show it and it can be saved. */
function expectUsable(document: GraphDocument): void {
  const ids = [...document.nodes, ...document.groups].map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  const again = readDamaged(writeGraph(document), nodeCatalogue);
  expect(again.document).toEqual(document);
}

/** Whatever is not in the document must have been told; a text that is the graph throughout loses nothing. */
function expectToldOrWhole(text: string): void {
  const { document, problems } = readDamaged(text, nodeCatalogue);
  if (document !== undefined) expectUsable(document);
  if (problems.length > 0) return;
  expect(document).toBeDefined();
  expect(JSON.parse(writeGraph(document!))).toEqual(JSON.parse(text));
}

describe('a sound graph', () => {
  it('is read as it is, without a problem', () => {
    expect(readDamaged(shipped, nodeCatalogue)).toEqual({ ...readGraphOf(shipped), problems: [] });
  });
});

const readGraphOf = (text: string) => {
  const result = readGraph(text, nodeCatalogue);
  return result.ok ? { document: result.document } : {};
};

describe('a graph that breaks off', () => {
  it('gives its beginning, the more the longer it is, and always says that something is missing', () => {
    let nodes = 0;
    for (let end = 0; end < shipped.trimEnd().length; end += 37) {
      const { document, problems } = readDamaged(shipped.slice(0, end), nodeCatalogue);
      expect(problems[0]).toMatchObject({ code: 'not-json' });
      expect(document?.nodes.length ?? 0).toBeGreaterThanOrEqual(nodes);
      nodes = document?.nodes.length ?? 0;
      if (document !== undefined) expectUsable(document);
    }
    expect(nodes).toBe((shippedRaw['nodes'] as unknown[]).length);
  });

  it('is never refused and never read as whole, at any character', () => {
    const text = writeGraph(graph({ a: ['constant', { value: 2 }], b: ['sum'] }, ['a.value -> b.terms']));
    for (let end = 0; end < text.length - 2; end += 1) expect(read(text.slice(0, end)).problems.length).toBeGreaterThan(0);
  });

  it('keeps what comes before a hole in its middle', () => {
    const at = shipped.indexOf('"id": "groove"');
    const { document, problems } = readDamaged(`${shipped.slice(0, at)}\0\0\0${shipped.slice(at + 3)}`, nodeCatalogue);
    expect(problems[0]!.place).toBe(`line ${shipped.slice(0, at).split('\n').length}, column 7`);
    expect(document!.nodes.map(({ id }) => id)).toEqual(['artwork', 'fit', 'sheet', 'place']);
  });
});

describe('a graph with changed bytes', () => {
  it('is read without an exception, and what is lost is told', () => {
    const bytes = new TextEncoder().encode(shipped);
    fc.assert(fc.property(fc.array(fc.tuple(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 })), { minLength: 1, maxLength: 4 }), (flips) => {
      const changed = bytes.slice();
      for (const [at, mask] of flips) changed[at]! ^= mask;
      expectToldOrWhole(new TextDecoder().decode(changed));
    }), { seed: 7, numRuns: 250 });
  });

  it('is read without an exception when parts are cut out or doubled', () => {
    const place = fc.nat(shipped.length - 1);
    fc.assert(fc.property(place, place, fc.boolean(), (a, b, doubled) => {
      const [from, to] = [Math.min(a, b), Math.max(a, b)];
      expectToldOrWhole(doubled ? shipped.slice(0, to) + shipped.slice(from) : shipped.slice(0, from) + shipped.slice(to));
    }), { seed: 8, numRuns: 120 });
  });

  it('is read without an exception whatever JSON it holds', () => {
    fc.assert(fc.property(fc.dictionary(fc.constantFrom('nodes', 'wires', 'inputs', 'groups', 'title', 'notes'), fc.jsonValue()), (members) => {
      expectToldOrWhole(JSON.stringify({ ...shippedRaw, ...members }));
    }), { seed: 9, numRuns: 150 });
  });
});

describe('what nobody knows', () => {
  it('is kept: node types, ports, parameters of any shape', () => {
    const odd = graph(
      { a: ['trace-light', { list: [[1, { x: 2 }], 'b', null] as never, x: { name: 1, text: null } as never, deep: { a: [{}] } as never }], b: ['sum'] },
      ['a.glow -> b.nowhere', 'gone.value -> b.terms'],
    );
    const { document, problems } = read(odd);
    expect(document).toEqual(odd);
    expect(problems.map(({ code }) => code)).toEqual(expect.arrayContaining(['unknown-node', 'missing-port', 'missing-node']));
    expect(read(writeGraph(document!)).document).toEqual(odd);
  });

  it('is told by its place where it cannot be kept', () => {
    const { document, problems } = read({ ...graph({ a: ['constant'] }), nodes: [5, { id: 'a', type: 'constant', position: [0, 0] }, { type: 'sum', position: [0, 0] }], wires: [{ from: 'a.value' }] });
    expect(document!.nodes.map(({ id }) => id)).toEqual(['a']);
    expect(problems.map(({ place }) => place)).toEqual(['nodes[0]', 'nodes[2].id', 'wires[0].to']);
  });
});

describe('names a view cannot rely on', () => {
  const node = (id: string, type = 'constant') => ({ id, type, position: [0, 0], params: {} });

  it('are replaced, and told', () => {
    const raw = { ...graph({}), nodes: [node('a'), node('a'), node('a-2'), node('4 b!'), node('')], groups: ['a', 'a'].map((id) => ({ id, title: '', nodes: [], collapsed: false })) };
    const found = read(raw);
    expect(found.document!.nodes.map(({ id }) => id)).toEqual(['a', 'a-2', 'a-2-2', 'b', 'step']);
    expect(found.document!.groups.map(({ id }) => id)).toEqual(['a-3', 'a-4']);
    expect(codes(found)).toEqual(expect.arrayContaining(['duplicate-id', 'bad-id']));
  });

  it('are followed by wires, inputs and groups', () => {
    const raw = {
      ...graph({}), nodes: [node('4 b'), node('c', 'sum')], wires: [{ from: '4 b.value', to: 'c.terms' }, { from: '4 b.value', to: 'c.terms' }],
      inputs: ['Size', 'size'].map((name) => ({ name, label: '', help: '', sets: '4 b.value' })),
      groups: ['g', 'h'].map((id) => ({ id, title: '', nodes: ['4 b'], collapsed: false })),
    };
    const { document } = read(raw);
    expect(document).toMatchObject({
      wires: [{ from: 'b.value', to: 'c.terms' }], inputs: [{ name: 'size', sets: 'b.value' }, { name: 'size2', sets: 'b.value' }],
      groups: [{ nodes: ['b'] }, { nodes: [] }],
    });
  });

  it('are replaced quickly and within the limit, even if all are the same', () => {
    const { document } = read({ ...graph({}), nodes: Array.from({ length: LIMITS.nodes }, () => node('x'.repeat(64))) });
    const ids = document!.nodes.map(({ id }) => id);
    expect(new Set(ids).size).toBe(LIMITS.nodes);
    expect(Math.max(...ids.map(({ length }) => length))).toBeLessThanOrEqual(LIMITS.nameLength);
  });

  it('leave nothing for the check to find', () => {
    fc.assert(fc.property(fc.array(fc.constantFrom('a', 'a-2', 'a-2-2', '-', '', 'é', 'a.b', 'A b'), { maxLength: 8 }), (ids) => {
      const { document } = read({ ...graph({}), nodes: ids.map((id) => node(id)), groups: ids.map((id) => ({ id, title: '', nodes: ids, collapsed: false })) });
      expect(checkGraph(document!, catalogue).filter(({ code }) => ['bad-id', 'duplicate-id', 'grouped-twice'].includes(code))).toEqual([]);
    }), { seed: 10, numRuns: 100 });
  });
});

describe('what is no graph of ours', () => {
  it.each([
    ['nothing', '', 'not-json'], ['a word', 'hello', 'not-json'], ['another JSON', '{"a":1}', 'wrong-format'], ['a list', '[1', 'not-json'],
    ['a drawing', '<svg/>', 'not-json'], ['a number', '12', 'wrong-format'],
    ['a graph of a later version', JSON.stringify({ ...shippedRaw, version: 99 }), 'future-version'],
    ['the beginning of one of a later version', JSON.stringify({ ...shippedRaw, version: 99 }).slice(0, 400), 'not-json'],
    ['too many nodes', JSON.stringify({ ...shippedRaw, nodes: Array.from({ length: LIMITS.nodes + 1 }, () => 0) }), 'too-large'],
  ])('gives no document: %s', (_name, text, code) => {
    const found = read(text);
    expect(found.document).toBeUndefined();
    expect(codes(found)).toEqual([code]);
  });
});
