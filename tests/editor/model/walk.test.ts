import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardBoxes } from '../../../src/editor/model/boxes.ts';
import { visibleGraph } from '../../../src/editor/model/visible.ts';
import { alongWires, besideAlongWires, firstCard, inReadingOrder, lastCard, lonelyCards, readingOrder, towards } from '../../../src/editor/model/walk.ts';
import { EMPTY, TINY, WORLDS, anyGraph, graph } from './graphs.ts';

const at = (places: Readonly<Record<string, readonly [number, number]>>, wires: readonly string[] = []) => {
  const bare = graph(Object.fromEntries(Object.keys(places).map((id) => [id, 'mix'])), wires);
  return { ...bare, nodes: bare.nodes.map((node) => ({ ...node, position: places[node.id]! })) };
};

describe.each(WORLDS)('walking over %s', (_, shapes) => {
  it('reads every card once, and none before what it works on', () => {
    fc.assert(fc.property(anyGraph(shapes), (document) => {
      const graphs = visibleGraph(shapes, { ...document, groups: [] });
      const order = readingOrder(graphs);
      expect([...order].sort()).toEqual(graphs.cards.map(({ id }) => id).sort());
      for (const { from, to } of graphs.wires) expect(order.indexOf(from.card)).toBeLessThan(order.indexOf(to.card));
    }), { numRuns: 60 });
  });

  it('goes round every card by stepping on, and back again', () => {
    fc.assert(fc.property(anyGraph(shapes), (document) => {
      const graphs = visibleGraph(shapes, document);
      if (graphs.cards.length === 0) return;
      const seen = new Set<string>();
      for (let id = firstCard(graphs)!; !seen.has(id); id = inReadingOrder(graphs, id, 1)!) {
        expect(inReadingOrder(graphs, inReadingOrder(graphs, id, 1), -1)).toBe(id);
        seen.add(id);
      }
      expect(seen.size).toBe(graphs.cards.length);
    }), { numRuns: 40 });
  });
});

describe('walking', () => {
  const document = at({ a: [0, 0], low: [300, 200], high: [300, 0], end: [600, 100], alone: [0, 400] }, ['a.ink -> low.inks', 'a.ink -> high.inks', 'low.ink -> end.inks', 'high.ink -> end.inks']);
  const graphs = visibleGraph(TINY, document);

  it('follows wires, of several the topmost first', () => {
    expect(alongWires(graphs, 'a')).toEqual(['high', 'low']);
    expect(alongWires(graphs, 'end', true)).toEqual(['high', 'low']);
    expect(alongWires(graphs, 'end')).toEqual([]);
    expect(besideAlongWires(graphs, 'high', 'a')).toBe('low');
    expect(besideAlongWires(graphs, 'low', 'a')).toBe('high');
    expect(besideAlongWires(graphs, 'alone', 'a')).toBe('high');
    expect(besideAlongWires(graphs, 'x', 'end')).toBeUndefined();
  });

  it('has a first and a last card, and cards that nothing is wired to', () => {
    expect(readingOrder(graphs)).toEqual(['a', 'alone', 'high', 'low', 'end']);
    expect([firstCard(graphs), lastCard(graphs), lonelyCards(graphs)]).toEqual(['a', 'end', ['alone']]);
    expect(inReadingOrder(graphs, undefined, 1)).toBe('a');
    expect(inReadingOrder(graphs, 'gone', -1)).toBe('end');
  });

  it('bears circles and nothing at all', () => {
    expect(readingOrder(visibleGraph(TINY, at({ b: [300, 0], a: [0, 0] }, ['a.ink -> b.inks', 'b.ink -> a.inks', 'a.ink -> a.inks'])))).toEqual(['a', 'b']);
    const none = visibleGraph(TINY, EMPTY);
    expect([firstCard(none), inReadingOrder(none, undefined, 1), readingOrder(none)]).toEqual([undefined, undefined, []]);
  });

  it('goes to the nearest card in a direction, along a row before out of it', () => {
    const boxes = cardBoxes(at({ own: [0, 0], row: [600, 0], off: [300, 250], above: [20, -400], left: [-300, 10] }), new Map());
    expect(towards(boxes, 'own', 'right')).toBe('row');
    expect(towards(boxes, 'own', 'up')).toBe('above');
    expect(towards(boxes, 'own', 'down')).toBe('off');
    expect(towards(boxes, 'own', 'left')).toBe('left');
    expect(towards(boxes, 'left', 'left')).toBeUndefined();
    expect(towards(cardBoxes(at({ own: [0, 0], beside: [300, 10] }), new Map()), 'own', 'down')).toBeUndefined();
    expect(towards(boxes, 'gone', 'left')).toBeUndefined();
  });
});
