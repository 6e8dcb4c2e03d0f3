import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { portsThatFit } from '../../../src/editor/model/fitting.ts';
import { endText, sameEnd } from '../../../src/editor/model/graph.ts';
import { connect, disconnect, disconnectAll, refusalOfRewire, refusalOfWire, reorder, rewire, wireBetween, wiresAt } from '../../../src/editor/model/wiring.ts';
import { after } from './any-edit.ts';
import { REAL, TINY, WORLDS, anyGraph, endsOf, faults, graph, input, output, pick, wire } from './graphs.ts';

describe.each(WORLDS)('wires over %s', (_, shapes) => {
  it('are refused exactly when the graph would be at fault with them', () => {
    fc.assert(fc.property(anyGraph(shapes, 7), fc.nat(9999), fc.nat(9999), (document, a, b) => {
      const ends = endsOf(shapes, document);
      const [one, other] = [pick(ends, a), pick(ends, b)];
      if (one === undefined || other === undefined || one.side === other.side) return;
      const added = wireBetween(one, other)!;
      const several = after({ ...document, wires: [] }, (draft) => {
        connect(shapes, one, other)(draft);
        draft.wires.push({ from: 'probe.x', to: added.to });
      });
      expect(several.wires).toHaveLength(2);
      const laid = after(document, connect(shapes, one, other));
      const there = document.wires.some(({ from, to }) => from === added.from && to === added.to);
      expect(refusalOfWire(shapes, document, one, other) !== undefined).toBe(there || faults(shapes, laid).length > 0);
    }), { numRuns: 300 });
  });

  it('fit exactly the ports that are offered, nearest first', () => {
    fc.assert(fc.property(anyGraph(shapes, 7), fc.nat(9999), (document, a) => {
      const end = pick(endsOf(shapes, document), a);
      if (end === undefined) return;
      const offered = portsThatFit(shapes, document, end);
      const able = endsOf(shapes, document).filter((other) => refusalOfWire(shapes, document, end, other) === undefined);
      expect(offered.map((port) => endText(port.end)).sort()).toEqual(able.map(endText).sort());
      expect(offered.every((port) => able.some((one) => sameEnd(one, port.end)))).toBe(true);
      expect(offered.map(({ distance }) => distance)).toEqual(offered.map(({ distance }) => distance).sort((x, y) => x - y));
    }), { numRuns: 150 });
  });
});

describe('refusalOfWire', () => {
  const document = graph({ a: 'well', b: 'thin', c: 'print', r: 'ream', x: 'lost' }, ['a.ink -> b.ink', 'b.ink -> c.ink', 'r.paper -> c.paper']);
  const refusal = (from: ReturnType<typeof output>, to: ReturnType<typeof output>) => refusalOfWire(TINY, document, from, to);

  it('says both types and where what is given would fit', () => {
    expect(refusal(output('a.ink'), input('c.paper'))).toBe('Well gives number here, but Print takes text at "paper". Lead the wire to its "ink" instead.');
    expect(refusal(output('c.paper'), input('b.ink'))).toBe('Print gives text here, but Thin takes number at "ink". Take the wire from "rest" of Print instead.');
    expect(refusal(output('r.paper'), input('b.ink'))).toBe('Ream gives text here, but Thin takes number at "ink". Put the step "Print" between them: it makes number from text.');
  });

  it('names a step that makes one type from the other among the real ones', () => {
    const real = graph({ drawing: 'import-strokes', all: 'union' });
    expect(refusalOfWire(REAL, real, output('drawing.strokes'), input('all.regions'))).toMatch(/gives strokes here, but Union takes region at "regions"\. /);
  });

  it.each([
    ['a circle', output('c.rest'), input('b.ink'), 'Print works on what Thin hands on, so a wire back to Thin would go round in a circle. Take the wire from a step before Thin.'],
    ['a step to itself', output('b.ink'), input('b.ink'), 'A step cannot take its own result. Lead the wire to another step.'],
    ['two inputs', input('b.ink'), input('c.ink'), 'Both are inputs. Lead the wire from an output to an input.'],
    ['two outputs', output('b.ink'), output('a.ink'), 'Both are outputs. Lead the wire from an output to an input.'],
    ['a wire that is there', output('a.ink'), input('b.ink'), 'This wire is there already.'],
    ['an unknown port', output('a.milk'), input('b.ink'), 'Well has no output "milk".'],
    ['a port every object inherits', output('a.constructor'), input('b.ink'), 'Well has no output "constructor".'],
    ['a step that is gone', output('z.ink'), input('b.ink'), 'There is no step "z" any more.'],
    ['an unknown type', output('x.ink'), input('b.ink'), '"lost" is not a step this program knows, so its ports are unknown. Take it away, or use a version that has it.'],
  ])('refuses %s', (_, from, to, says) => {
    expect(refusal(from, to)).toBe(says);
  });

  it('does not mind which end is named first', () => {
    expect(refusal(input('c.paper'), output('a.ink'))).toBe(refusal(output('a.ink'), input('c.paper')));
    expect(refusal(input('c.ink'), output('a.ink'))).toBeUndefined();
  });
});

describe('connect', () => {
  const document = graph({ a: 'well', b: 'well', t: 'thin', m: 'mix', h: 'hang' }, ['a.ink -> m.inks', 'a.ink -> t.ink', 'a.ink -> h.label']);

  it('replaces the wire of an input that takes one, in its place', () => {
    expect(after(document, connect(TINY, input('t.ink'), output('b.ink'))).wires).toEqual(['a.ink -> m.inks', 'b.ink -> t.ink', 'a.ink -> h.label'].map(wire));
  });

  it('adds to an input that takes several, after the others', () => {
    expect(after(document, connect(TINY, output('b.ink'), input('m.inks'))).wires.at(-1)).toEqual(wire('b.ink -> m.inks'));
  });

  it('changes nothing for a wire that is there, and for two ends of one side', () => {
    expect(after(document, connect(TINY, output('a.ink'), input('t.ink')))).toBe(document);
    expect(after(document, connect(TINY, input('t.ink'), input('m.inks')))).toBe(document);
  });
});

describe('wires that are there', () => {
  const document = graph({ a: 'well', b: 'well', c: 'well', m: 'mix', t: 'thin' }, ['a.ink -> m.inks', 'b.ink -> m.inks', 'c.ink -> m.inks']);
  const sources = (changed: typeof document) => changed.wires.map(({ from }) => from);

  it('are taken away one by one or all of an end', () => {
    expect(sources(after(document, disconnect(wire('b.ink -> m.inks'))))).toEqual(['a.ink', 'c.ink']);
    expect(after(document, disconnectAll(input('m.inks'))).wires).toEqual([]);
    expect(after(document, disconnectAll(output('t.ink')))).toBe(document);
    expect(wiresAt(document, input('m.inks'))).toEqual(document.wires);
    expect(wiresAt(document, output('b.ink'))).toEqual([document.wires[1]]);
  });

  it('keep their turn when their start is taken elsewhere, and lose it with their end', () => {
    const more = graph({ a: 'well', b: 'well', d: 'well', m: 'mix', t: 'thin' }, ['a.ink -> m.inks', 'b.ink -> m.inks']);
    expect(sources(after(more, rewire(TINY, wire('a.ink -> m.inks'), output('d.ink'))))).toEqual(['d.ink', 'b.ink']);
    expect(after(more, rewire(TINY, wire('a.ink -> m.inks'), input('t.ink'))).wires).toEqual(['b.ink -> m.inks', 'a.ink -> t.ink'].map(wire));
  });

  it('are refused a place by the same sentences as new ones, but for their own', () => {
    expect(refusalOfRewire(TINY, document, document.wires[0]!, input('m.inks'))).toBeUndefined();
    expect(refusalOfRewire(TINY, document, document.wires[0]!, output('b.ink'))).toBe('This wire is there already.');
  });

  it('can be put in another order', () => {
    expect(sources(after(document, reorder(input('m.inks'), 2, 0)))).toEqual(['c.ink', 'a.ink', 'b.ink']);
    expect(sources(after(document, reorder(input('m.inks'), 0, 2)))).toEqual(['b.ink', 'c.ink', 'a.ink']);
    expect(after(document, reorder(input('m.inks'), 7, 0))).toBe(document);
  });
});
