import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutOut, duplicate, pastePiece, pieceOf, pieceOfGroup, refusalOfPaste } from '../../../src/editor/model/clipboard.ts';
import { isPiece, readPiece } from '../../../src/editor/model/pieces.ts';
import { LIMITS, writeGraph } from '../../../src/runtime/index.ts';
import { after } from './any-edit.ts';
import { EMPTY, TINY, WORLDS, anyGraph, faults, graph, pick, wire } from './graphs.ts';

const codes = (text: string) => {
  const read = readPiece(text, TINY);
  return read.ok ? 'read' : read.problems.map(({ code }) => code);
};

describe.each(WORLDS)('copying over %s', (_, shapes) => {
  it('gives back what was copied, put in under ids of its own', () => {
    fc.assert(fc.property(anyGraph(shapes), fc.array(fc.nat(99), { minLength: 1, maxLength: 5 }), (document, some) => {
      const ids = some.flatMap((number) => pick(document.nodes, number)?.id ?? []);
      if (ids.length === 0) return;
      const read = readPiece(pieceOf(document, ids), shapes);
      expect(read).toEqual({ ok: true, piece: cutOut(document, ids), cautions: [] });
      if (!read.ok) return;
      const { edit, ids: cards } = pastePiece(document, read.piece, [70, -30]);
      const changed = after(document, edit);
      expect(changed.nodes.slice(0, document.nodes.length)).toEqual(document.nodes);
      expect(new Set(changed.nodes.map(({ id }) => id)).size).toBe(changed.nodes.length);
      const added = changed.nodes.slice(document.nodes.length);
      expect(added.map(({ type, params }) => ({ type, params }))).toEqual(read.piece.nodes.map(({ type, params }) => ({ type, params })));
      expect(Math.min(...added.map(({ position }) => position[0]))).toBe(70);
      expect(Math.min(...added.map(({ position }) => position[1]))).toBe(-30);
      expect(changed.inputs).toEqual(document.inputs);
      expect(cards.length).toBeGreaterThan(0);
      expect(faults(shapes, changed)).toEqual([]);
    }), { numRuns: 60 });
  });
});

describe('a piece', () => {
  const document = {
    ...graph({ a: 'well', b: 'thin', c: 'thin' }, ['a.ink -> b.ink', 'b.ink -> c.ink']),
    inputs: [{ name: 'depth', label: 'Depth', help: '', sets: 'a.depth' }],
    groups: [{ id: 'g', title: 'Both', nodes: ['a', 'b'], collapsed: true }],
  };

  it('holds the wires among its steps and the groups that are whole', () => {
    expect(cutOut(document, ['a', 'b'])).toMatchObject({ wires: [wire('a.ink -> b.ink')], groups: [{ id: 'g' }] });
    expect(cutOut(document, ['b', 'c'])).toMatchObject({ wires: [wire('b.ink -> c.ink')], groups: [] });
  });

  it('can be a group, and puts in a group again', () => {
    const piece = pieceOfGroup(document, 'g')!;
    expect(piece.title).toBe('Both');
    const read = readPiece(piece.text, TINY);
    expect(read.ok && read.piece.title).toBe('Both');
    const { edit, ids } = pastePiece(document, cutOut(document, ['g']), [0, 500]);
    const changed = after(document, edit);
    expect(changed.groups.at(-1)).toEqual({ id: 'g-2', title: 'Both', nodes: ['a-2', 'b-2'], collapsed: true });
    expect(ids).toEqual(['g-2']);
    expect(pieceOfGroup(document, 'nothing')).toBeUndefined();
  });

  it('is told from other text', () => {
    expect(isPiece(pieceOf(document, ['a']))).toBe(true);
    expect(isPiece(writeGraph(document))).toBe(false);
    expect(isPiece('some words')).toBe(false);
  });

  it.each([
    ['no JSON', 'ink', ['wrong-format']],
    ['JSON of something else', '{"format": "letter"}', ['wrong-format']],
    ['a whole graph', writeGraph(document), ['wrong-format']],
    ['a number', '7', ['wrong-format']],
    ['a piece of a later version', pieceOf(document, ['a']).replace('"version": 1, "graph"', '"version": 9, "graph"'), ['future-version']],
    ['a piece without a graph', '{"format":"groovewright-piece","version":1}', ['wrong-format']],
    ['a key twice', pieceOf(document, ['a']).replace('"version": 1, "graph"', '"version": 1, "version": 1, "graph"'), ['duplicate-key']],
    ['a piece with no steps', pieceOf(document, []), ['wrong-kind']],
    ['a piece whose step has no type', pieceOf(document, ['a']).replace('"type": "well"', '"typ": "well"'), ['unknown-key', 'missing-key']],
    ['a piece whose wire has no end', pieceOf(document, ['a', 'b']).replace('"to": "b.ink"', '"too": "b.ink"'), ['unknown-key', 'missing-key']],
    ['a piece with a wire of two types', pieceOf(document, ['a', 'b']).replace('"type": "well"', '"type": "ream"').replace('a.ink', 'a.paper'), ['type-mismatch']],
  ])('is refused when the text is %s', (_, text, expected) => {
    expect(codes(text)).toEqual(expect.arrayContaining(expected));
  });

  it('takes along a step of unknown type and a value out of limits, and says so', () => {
    const strange = graph({ x: 'lost', a: 'well' }, ['x.out -> a.none']);
    const held = { ...strange, wires: [], nodes: strange.nodes.map((node) => ({ ...node, params: { depth: 1000 } })) };
    const read = readPiece(pieceOf(held, ['x', 'a']), TINY);
    expect(read.ok && read.cautions.map(({ code }) => code)).toEqual(['unknown-node', 'out-of-limits']);
  });

  it('is refused where the graph would grow too large', () => {
    const full = { ...EMPTY, nodes: Array.from({ length: LIMITS.nodes }, (_, i) => ({ id: `n${i}`, type: 'well', position: [0, 0] as const, params: {} })) };
    expect(refusalOfPaste(full, cutOut(document, ['a']))).toBe('A graph holds at most 10000 steps; this one has 10000, and 1 would be added. Take some away, or divide the graph.');
    expect(refusalOfPaste(document, cutOut(document, ['a']))).toBeUndefined();
  });
});

describe('duplicate', () => {
  const document = graph({ a: 'well', b: 'thin', c: 'thin', d: 'mix' }, ['a.ink -> b.ink', 'b.ink -> c.ink', 'c.ink -> d.inks']);

  it('keeps the wires that come in, and lays none that go out', () => {
    const { edit, ids } = duplicate(document, ['b', 'c'], [0, 200]);
    const changed = after(document, edit);
    expect(ids).toEqual(['b-2', 'c-2']);
    expect(changed.wires.slice(3)).toEqual([wire('b-2.ink -> c-2.ink'), wire('a.ink -> b-2.ink')]);
    expect(changed.nodes.at(-1)!.position).toEqual([600, 200]);
  });

  it('does not copy a wire that comes from nowhere', () => {
    const torn = graph({ b: 'thin' }, ['gone.ink -> b.ink']);
    expect(after(torn, duplicate(torn, ['b']).edit).wires).toEqual(torn.wires);
  });

  it('of nothing changes nothing', () => {
    expect(after(document, duplicate(document, []).edit)).toBe(document);
    expect(after(document, duplicate(document, ['nobody']).edit)).toBe(document);
  });
});
