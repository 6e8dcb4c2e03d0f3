import { describe, expect, it } from 'vitest';
import { faultsOf } from '../../../src/editor/model/report.ts';
import { type GraphDocument, checkGraph } from '../../../src/runtime/index.ts';
import { EMPTY, TINY, graph } from './graphs.ts';

const says = (document: GraphDocument, node: string) => faultsOf(TINY, document).nodes.get(node)?.map((fault) => fault.says);

describe('faultsOf', () => {
  it('says what an input needs', () => {
    expect(says(graph({ b: 'thin' }), 'b')).toEqual(['Needs number at "ink". Lead a wire there.']);
  });

  it('says what is wrong with wires at the card they lead to', () => {
    const document = graph({ a: 'well', c: 'well', r: 'ream', b: 'thin', m: 'mix' }, ['a.ink -> b.ink', 'c.ink -> b.ink', 'r.paper -> m.inks', 'a.ink -> m.inks', 'a.ink -> m.inks']);
    expect(says(document, 'b')).toEqual(['"ink" takes one wire and has several. Take away all but one.']);
    expect(says(document, 'm')).toEqual([
      '"inks" takes number, but what comes is "text" from "r.paper". Take this wire away.',
      'The same wire leads to "inks" twice. Take one away.',
    ]);
  });

  it('tells a circle at every card in it, by titles', () => {
    const document = graph({ a: 'mix', b: 'mix', c: 'mix' }, ['a.ink -> b.inks', 'b.ink -> a.inks', 'b.ink -> c.inks', 'c.ink -> c.inks']);
    const circle = ['The wires go round in a circle through Mix, Mix. Take one of them away.'];
    expect([says(document, 'a'), says(document, 'b'), says(document, 'c')]).toEqual([circle, circle, ['Mix is wired to itself. Take that wire away.']]);
  });

  it('names only some of the cards of a long circle', () => {
    const ids = Array.from({ length: 9 }, (_, i) => `n${i}`);
    const document = graph(Object.fromEntries(ids.map((id) => [id, 'mix'])), ids.map((id, i) => `${id}.ink -> ${ids[(i + 1) % 9]}.inks`));
    expect(says(document, 'n4')).toEqual(['The wires go round in a circle through Mix, Mix, Mix, Mix and 5 more. Take one of them away.']);
  });

  it('says that a type or a value is not known or not possible', () => {
    const document: GraphDocument = { ...graph({ x: 'wel', a: 'well' }), nodes: [{ id: 'x', type: 'wel', position: [0, 0], params: {} }, { id: 'a', type: 'well', position: [0, 0], params: { depth: 500 } }] };
    expect(says(document, 'x')).toEqual(['This program knows no step "wel". Did you mean "well"?']);
    expect(says(document, 'a')).toEqual(['Depth: expected 0 to 99 mm, found 500 mm. Give a number within the limits.']);
  });

  it('keeps what belongs to no card, and loses nothing', () => {
    const document = { ...graph({ a: 'well' }, ['gone.ink -> nowhere.ink']), inputs: [{ name: 'x', label: 'X', help: '', sets: 'gone.depth' }] };
    const { nodes, graph: rest } = faultsOf(TINY, document);
    expect(nodes.size).toBe(0);
    expect(rest).toHaveLength(checkGraph(document, TINY).length);
    expect(faultsOf(TINY, EMPTY)).toEqual({ nodes: new Map(), graph: [] });
  });
});
