import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Alignment, align, cardsOf } from '../../../src/editor/model/arrange.ts';
import { type Sizes, CARD, cardBoxes, overlap } from '../../../src/editor/model/boxes.ts';
import { layOut } from '../../../src/editor/model/layout.ts';
import { type GraphDocument, writeGraph } from '../../../src/runtime/index.ts';
import { after } from './any-edit.ts';
import { EMPTY, TINY, WORLDS, anyGraph, graph, pick, wire } from './graphs.ts';

function collisions(document: GraphDocument, sizes: Sizes, among: readonly string[] = [...cardBoxes(document, sizes).keys()]): string[] {
  const boxes = [...cardBoxes(document, sizes)];
  return boxes.flatMap(([id, box], i) => boxes.slice(i + 1).flatMap(([other, there]) =>
    ((among.includes(id) || among.includes(other)) && overlap(box, there) ? [`${id} over ${other}`] : [])));
}

const sizesOf = ({ nodes, groups }: GraphDocument, numbers: readonly number[]): Sizes =>
  new Map([...nodes, ...groups].map(({ id }, i) => [id, { width: 100 + (pick(numbers, i) ?? 0), height: 40 + 2 * (pick(numbers, i + 1) ?? 0) }]));

describe.each(WORLDS)('layOut over %s', (_, shapes) => {
  it('lays no card over another, from left to right, always alike, and keeps the corner', () => {
    fc.assert(fc.property(anyGraph(shapes, 14), fc.array(fc.nat(400), { minLength: 3, maxLength: 9 }), (document, numbers) => {
      const sizes = sizesOf(document, numbers);
      const laid = after(document, layOut(document, shapes, sizes));
      expect(collisions(laid, sizes)).toEqual([]);
      expect(writeGraph(after(document, layOut(document, shapes, sizes)))).toBe(writeGraph(laid));
      const boxes = cardBoxes(laid, sizes);
      if (document.groups.length === 0) for (const { from, to } of document.wires) expect(boxes.get(from.split('.')[0]!)!.x).toBeLessThan(boxes.get(to.split('.')[0]!)!.x);
      const corner = (graphs: GraphDocument) => [...cardBoxes(graphs, sizes).values()].reduce((least, { x }) => Math.min(least, x), Infinity);
      expect(corner(laid)).toBe(corner(document));
    }), { numRuns: 30 });
  });

  it('lays out only what is chosen, clear of the rest', () => {
    fc.assert(fc.property(anyGraph(shapes, 10), fc.array(fc.nat(99), { minLength: 1, maxLength: 4 }), (document, some) => {
      const ids = some.flatMap((number) => pick(document.nodes, number)?.id ?? []);
      const laid = after(document, layOut(document, shapes, new Map(), ids));
      const chosen = cardsOf(document, ids);
      if (chosen.length === 0) return;
      expect(collisions(laid, new Map(), chosen)).toEqual([]);
      const [before, now] = [cardBoxes(document, new Map()), cardBoxes(laid, new Map())];
      for (const [id, box] of before) if (!chosen.includes(id)) expect(now.get(id)).toEqual(box);
    }), { numRuns: 40 });
  });
});

describe('layOut', () => {
  it('does so for 300 steps', () => {
    const nodes = Object.fromEntries(Array.from({ length: 300 }, (_, i) => [`n${i}`, i === 0 ? 'well' : 'mix']));
    const wires = Array.from({ length: 299 }, (_, i) => [wire(`n${Math.floor(i / 2)}.ink -> n${i + 1}.inks`), ...(i % 7 === 0 && i > 20 ? [wire(`n${i - 9}.ink -> n${i + 1}.inks`)] : [])]).flat();
    const document = { ...graph(nodes), wires };
    expect(collisions(after(document, layOut(document, TINY)), new Map())).toEqual([]);
  });

  it('bears circles, wires to nothing, and graphs without steps', () => {
    const circle = graph({ a: 'mix', b: 'mix' }, ['a.ink -> b.inks', 'b.ink -> a.inks', 'a.ink -> a.inks', 'z.ink -> a.inks']);
    expect(collisions(after(circle, layOut(circle, TINY)), new Map())).toEqual([]);
    expect(after(EMPTY, layOut(EMPTY, TINY))).toBe(EMPTY);
  });
});

describe('align', () => {
  const document: GraphDocument = {
    ...graph({ a: 'well', b: 'well', c: 'well' }),
    nodes: ([['a', 0, 0], ['b', 50, 300], ['c', 400, 900]] as const).map(([id, x, y]) => ({ id, type: 'well', position: [x, y], params: {} })),
  };
  const sizes: Sizes = new Map([['a', { width: 100, height: 100 }], ['b', { width: 200, height: 50 }], ['c', { width: 100, height: 100 }]]);
  const placed = (how: Alignment, ids = ['a', 'b', 'c']) => after(document, align(document, ids, how, sizes)).nodes.map(({ position }) => position);

  it.each<[Alignment, number[][]]>([
    ['left', [[0, 0], [0, 300], [0, 900]]],
    ['right', [[400, 0], [300, 300], [400, 900]]],
    ['centre', [[200, 0], [150, 300], [200, 900]]],
    ['top', [[0, 0], [50, 0], [400, 0]]],
    ['bottom', [[0, 900], [50, 950], [400, 900]]],
    ['middle', [[0, 450], [50, 475], [400, 450]]],
    ['spread-x', [[0, 0], [150, 300], [400, 900]]],
    ['spread-y', [[0, 0], [50, 475], [400, 900]]],
  ])('lines cards up by %s', (how, expected) => {
    expect(placed(how)).toEqual(expected);
  });

  it('does nothing to fewer than two cards', () => {
    expect(after(document, align(document, ['a'], 'left'))).toBe(document);
    expect(after(document, align(document, ['a', 'nobody'], 'left'))).toBe(document);
  });

  it('spreads cards that lie on one another', () => {
    const heap = { ...document, nodes: document.nodes.map((node) => ({ ...node, position: [0, 0] as const })) };
    expect(collisions(after(heap, align(heap, ['a', 'b', 'c'], 'spread-x')), new Map())).toEqual([]);
  });

  it('moves a folded group as one card, and the members of an open one each', () => {
    const folded = { ...document, groups: [{ id: 'g', title: 'G', nodes: ['b', 'c'], collapsed: true }] };
    expect(after(folded, align(folded, ['a', 'g'], 'left')).nodes.map(({ position }) => position)).toEqual([[0, 0], [0, 300], [350, 900]]);
    const open = { ...folded, groups: [{ ...folded.groups[0]!, collapsed: false }] };
    expect(cardsOf(open, ['a', 'g'])).toEqual(['a', 'b', 'c']);
    expect(CARD.width).toBeGreaterThan(0);
  });
});
