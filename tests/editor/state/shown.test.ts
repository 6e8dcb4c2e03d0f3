import { describe, expect, it } from 'vitest';
import { programsToPlay, signToShow } from '../../../src/editor/state/shown.ts';
import type { GraphDocument, NodeShape } from '../../../src/runtime/index.ts';
import { graph } from '../../runtime/arithmetic.ts';
import { catalogue, shippedGraph } from '../../support/shipped-run.ts';

const shapes: ReadonlyMap<string, NodeShape> = catalogue;
const shown = (nodes: Parameters<typeof graph>[0], wires: readonly string[] = []) => signToShow(graph(nodes, wires), shapes);

describe('the node shown while nobody chose one', () => {
  it('is the one whose inputs and outputs draw most of the sign, whatever is known of its cutting', () => {
    expect(shown({ sheet: ['stock'], place: ['place'], read: ['import-strokes'] }, ['sheet.stock -> place.stock', 'read.strokes -> place.strokes'])).toBe('place');
    expect(signToShow(shippedGraph('drawn-strokes.json'), shapes)).toBe('drawing');
  });

  it('is the first along the wires of several, wherever it stands in the document', () => {
    const nodes = { b: ['offset-region'], a: ['board-outline'], c: ['union'] } as const;
    expect(shown(nodes, ['c.region -> b.region', 'b.region -> a.region'])).toBe('b');
    expect(shown(nodes, ['a.board -> b.region', 'b.region -> c.regions'])).toBe('b');
  });

  it('is none where nothing is drawn', () => {
    expect(shown({})).toBeUndefined();
    expect(shown({ cutter: ['cutter'], odd: ['never-seen'] })).toBeUndefined();
    expect(signToShow(graph({ sheet: ['stock'] }), new Map())).toBeUndefined();
  });

  it('counts no wire that leads from or to nowhere', () => {
    expect(shown({ sheet: ['stock'], check: ['check-travel'] }, ['gone.stock -> check.stock', 'sheet.gone -> check.machine', 'bad -> check.machine'])).toBe('sheet');
  });

  it('is found in a cycle as well, and for many nodes', () => {
    expect(shown({ a: ['offset-region'], b: ['offset-region'] }, ['a.region -> b.region', 'b.region -> a.region'])).toBe('a');
    const ids = Array.from({ length: 300 }, (_, i) => `n${i}`);
    const chain: GraphDocument = graph(Object.fromEntries(ids.map((id) => [id, ['offset-region'] as const])), ids.slice(1).map((id, i) => `${ids[i]}.region -> ${id}.region`));
    expect(signToShow({ ...chain, nodes: [...chain.nodes].reverse() }, shapes)).toBe('n1');
  });
});

describe('the node whose programs are played', () => {
  it('is the one with programs that draws most', () => {
    expect(programsToPlay(shippedGraph('drawn-strokes.json'), shapes)).toBe('proof');
    expect(programsToPlay(graph({ write: ['emit-program'], read: ['import-strokes'] }), shapes)).toBe('write');
  });

  it('is none where there are no programs, whatever else is drawn', () => {
    expect(programsToPlay(graph({ sheet: ['stock'], passes: ['groove-passes'] }), shapes)).toBeUndefined();
  });
});

