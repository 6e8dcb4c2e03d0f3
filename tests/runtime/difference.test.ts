import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { documentChanges, type GraphDocument } from '../../src/runtime/index.ts';
import { catalogue, graph } from './arithmetic.ts';

const base = graph({ a: ['constant', { value: 2 }], t: ['label'] }, ['a.value -> t.value'], {
  inputs: [{ name: 'amount', label: 'Amount', help: '', sets: 'a.value' }, { name: 'style', label: 'Style', help: '', sets: 't.style' }],
});
const changes = (to: Partial<GraphDocument>, from = base) => documentChanges(from, { ...base, ...to }, catalogue);
const nodes = (change: (node: GraphDocument['nodes'][number]) => GraphDocument['nodes'][number]) => ({ nodes: base.nodes.map(change) });

describe('what two versions of a graph have otherwise', () => {
  it('is nothing for the same, wherever it lies on the canvas and whether defaults are stated', () => {
    expect(changes({})).toEqual([]);
    expect(changes(nodes((node) => ({ ...node, position: [9, 9] })))).toEqual([]);
    expect(changes(nodes((node) => (node.id === 't' ? { ...node, params: { style: 'plain', copies: 1 } } : node)))).toEqual([]);
  });

  it('is a value by its node and parameter, the default of one that was not stated among them', () => {
    expect(changes(nodes((node) => ({ ...node, params: node.id === 'a' ? {} : { loud: true } })))).toEqual([
      { kind: 'value', place: 'a.value', from: 2, to: 1 }, { kind: 'value', place: 't.loud', from: false, to: true },
    ]);
  });

  it('is a node, a kind, a title, a note, a wire, new or gone', () => {
    expect(changes({ nodes: [base.nodes[0]!], wires: [] })).toEqual([{ kind: 'node', place: 't', from: 'label' }, { kind: 'wire', place: 'a.value -> t.value', from: 'a.value -> t.value' }]);
    expect(documentChanges({ ...base, nodes: [base.nodes[0]!], wires: [] }, base, catalogue)).toMatchObject([{ kind: 'node', to: 'label' }, { kind: 'wire', to: 'a.value -> t.value' }]);
    expect(changes(nodes((node) => (node.id === 't' ? { ...node, type: 'sum' } : { ...node, note: 'Why.', title: 'Two' })))).toEqual([
      { kind: 'name', place: 'a', to: 'Two' }, { kind: 'note', place: 'a', to: 'Why.' }, { kind: 'type', place: 't', from: 'label', to: 'sum' },
    ]);
  });

  it('is an exposed input in other words, limits or order, but not a group folded or unfolded', () => {
    const [amount, style] = base.inputs;
    expect(changes({ inputs: [style!, { ...amount!, limits: [1, 5] }] })).toMatchObject([{ kind: 'input', place: 'amount', to: { limits: [1, 5] } }, { kind: 'order', from: ['amount', 'style'], to: ['style', 'amount'] }]);
    const group = { id: 'g', title: 'G', nodes: ['a'], collapsed: false };
    expect(changes({ groups: [{ ...group, collapsed: true }] }, { ...base, groups: [group] })).toEqual([]);
    expect(changes({ groups: [group] })).toMatchObject([{ kind: 'group', place: 'g' }]);
  });

  it('is as many things back as forth', () => {
    const version = fc.record({ value: fc.integer({ min: 0, max: 3 }), loud: fc.boolean(), wired: fc.boolean(), note: fc.constantFrom('', 'Why.') }).map(({ value, loud, wired, note }): GraphDocument =>
      ({ ...base, nodes: base.nodes.map((node) => ({ ...node, ...(note && { note }), params: node.id === 'a' ? { value } : { loud } })), wires: wired ? base.wires : [] }));
    fc.assert(fc.property(version, version, (a, b) => {
      expect(documentChanges(a, b, catalogue).map(({ kind, place, from, to }) => [kind, place, from, to])).toEqual(documentChanges(b, a, catalogue).map(({ kind, place, from, to }) => [kind, place, to, from]));
    }), { numRuns: 60 });
  });
});
