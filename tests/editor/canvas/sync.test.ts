import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benchGraph } from '../../../src/editor/canvas/bench-graph.ts';
import { changesTo, nearestFirst } from '../../../src/editor/canvas/sync.ts';
import { setCollapsed } from '../../../src/editor/model/groups.ts';
import { applyEdit, historyOf } from '../../../src/editor/model/history.ts';
import { moveSteps, removeSteps, setParam } from '../../../src/editor/model/steps.ts';
import type { GraphDocument } from '../../../src/runtime/index.ts';
import { DOCUMENT, SHAPES } from './sample.ts';

const NOTHING = { cards: new Map<string, { x: number; y: number }>(), wires: new Map<string, { source: string; target: string }>() };
const standing = (document: GraphDocument) => {
  const { cards, wires } = benchGraph(document, SHAPES);
  return { cards: new Map([...cards].map(([id, { at: [x, y] }]) => [id, { x, y }])), wires: new Map(wires) };
};
const after = (document: GraphDocument, change: Parameters<typeof applyEdit>[2]) => applyEdit(historyOf(document), 'x', change).document;
const GROUPED: GraphDocument = { ...DOCUMENT, groups: [{ id: 'both', title: 'Both', nodes: ['cut', 'edge'], collapsed: false }] };

describe('what has to change on the bench', () => {
  it('is everything at first and nothing when it stands', () => {
    const graph = benchGraph(DOCUMENT, SHAPES);
    const first = changesTo(graph, NOTHING);
    expect(first.cardsNew).toEqual(['pen', 'cut', 'edge', 'other']);
    expect(first.wiresNew).toHaveLength(2);
    expect(Object.values(changesTo(graph, standing(DOCUMENT))).flat()).toEqual([]);
  });

  it('is only the moved card after a move', () => {
    const moved = after(DOCUMENT, moveSteps(['cut'], 10, 0));
    expect(changesTo(benchGraph(moved, SHAPES), standing(DOCUMENT))).toMatchObject({ cardsMoved: ['cut'], cardsNew: [], cardsAway: [], wiresNew: [], wiresAway: [] });
  });

  it('takes the wires of a removed step away with it', () => {
    const removed = after(DOCUMENT, removeSteps(['cut']));
    expect(changesTo(benchGraph(removed, SHAPES), standing(DOCUMENT))).toMatchObject({ cardsAway: ['cut'], wiresAway: [...benchGraph(DOCUMENT, SHAPES).wires.keys()] });
  });

  it('lays a wire anew when folding a group gives it another card', () => {
    const before = standing(GROUPED);
    const changes = changesTo(benchGraph(after(GROUPED, setCollapsed('both', true)), SHAPES), before);
    expect(changes.cardsNew).toEqual(['both']);
    expect(changes.cardsAway).toEqual(['cut', 'edge']);
    expect(changes.wiresNew).toEqual(['pen.strokes -> cut.strokes']);
    expect(changes.wiresAway).toHaveLength(2);
  });

  it('leads from any of these documents to any other', () => {
    const documents = [DOCUMENT, GROUPED, after(GROUPED, setCollapsed('both', true)), after(DOCUMENT, removeSteps(['pen'])), { ...DOCUMENT, nodes: [], wires: [] }];
    fc.assert(fc.property(fc.constantFrom(...documents), fc.constantFrom(...documents), (from, to) => {
      const stand = standing(from);
      const wanted = benchGraph(to, SHAPES);
      const changes = changesTo(wanted, stand);
      for (const key of changes.wiresAway) stand.wires.delete(key);
      for (const id of changes.cardsAway) stand.cards.delete(id);
      for (const id of [...changes.cardsNew, ...changes.cardsMoved]) stand.cards.set(id, { x: wanted.cards.get(id)!.at[0], y: wanted.cards.get(id)!.at[1] });
      for (const key of changes.wiresNew) stand.wires.set(key, wanted.wires.get(key)!);
      expect(stand.cards).toEqual(standing(to).cards);
      expect([...stand.wires.keys()].sort()).toEqual([...wanted.wires.keys()].sort());
    }));
  });
});

describe('a card', () => {
  it('stays the same object while something else changes', () => {
    const before = benchGraph(DOCUMENT, SHAPES);
    const now = benchGraph(after(DOCUMENT, moveSteps(['cut'], 5, 5)), SHAPES);
    expect(now.cards.get('pen')).toBe(before.cards.get('pen'));
    expect(now.cards.get('cut')!.at).toEqual([405, 5]);
    expect(now.wires).toBe(before.wires);
  });

  it('is not looked at again when only a value changes', () => {
    const before = benchGraph(DOCUMENT, SHAPES);
    expect(benchGraph(after(DOCUMENT, setParam('cut', 'width', 3)), SHAPES)).toBe(before);
  });

  it('of an unknown type shows the ports its wires name', () => {
    const odd: GraphDocument = { ...DOCUMENT, nodes: [...DOCUMENT.nodes, { id: 'odd', type: 'glow', position: [0, 0], params: {} }], wires: [{ from: 'pen.strokes', to: 'odd.stuff' }] };
    const card = benchGraph(odd, SHAPES).cards.get('odd')!;
    expect(card.known).toBe(false);
    expect(card.inputs.map(({ label, type }) => [label, type])).toEqual([['stuff', undefined]]);
  });

  it('moves with a folded group', () => {
    const folded = after(GROUPED, setCollapsed('both', true));
    expect(benchGraph(after(folded, moveSteps(['both'], 7, 0)), SHAPES).cards.get('both')!.at).toEqual([407, 0]);
  });
});

it('builds what is looked at first', () => {
  const box = (x: number) => ({ x, y: 0, width: 100, height: 100 });
  const order = nearestFirst(['far', 'seen', 'near'], new Map([['far', box(5000)], ['seen', box(50)], ['near', box(900)]]), { x: 0, y: 0, width: 800, height: 600 });
  expect(order).toEqual(['seen', 'near', 'far']);
});
