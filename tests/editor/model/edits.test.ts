import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type GraphDocument, readGraph, writeGraph } from '../../../src/runtime/index.ts';
import { idsOf } from '../../../src/editor/model/ids.ts';
import { EDITS, after, anyPlan, editOf } from './any-edit.ts';
import { EMPTY, WORLDS, anyGraph, faults, graph } from './graphs.ts';

describe.each(WORLDS)('every edit over %s', (_, shapes) => {
  it.each(Object.keys(EDITS))('%s brings no new fault into a graph but inputs that lack a wire', (name) => {
    const what = Object.keys(EDITS).indexOf(name);
    fc.assert(fc.property(anyGraph(shapes), anyPlan, (document, plan) => {
      const changed = after(document, editOf(shapes, document, { ...plan, what }));
      expect(faults(shapes, changed)).toEqual([]);
      expect(idsOf(changed).size).toBe(changed.nodes.length + changed.groups.length);
    }), { numRuns: 25 });
  });

  it('keeps graphs such as can be written and read again', () => {
    fc.assert(fc.property(anyGraph(shapes), fc.array(anyPlan, { maxLength: 6 }), (document, plans) => {
      const changed = plans.reduce((now, plan) => after(now, editOf(shapes, now, plan)), document);
      const text = writeGraph(changed);
      const read = readGraph(text, shapes);
      if (read.ok) expect(writeGraph(read.document)).toBe(text);
      else expect(read.problems.every(({ code }) => code === 'missing-input')).toBe(true);
    }), { numRuns: 25 });
  });

  it('leaves the document it is made for as it is', () => {
    fc.assert(fc.property(anyGraph(shapes), anyPlan, (document, plan) => {
      const before = writeGraph(document);
      after(document, editOf(shapes, document, plan));
      expect(writeGraph(document)).toBe(before);
    }), { numRuns: 40 });
  });
});

describe('every edit', () => {
  const shapes = WORLDS[0]![1];
  const unknown: GraphDocument = graph({ a: 'well', x: 'not-there', b: 'thin' }, ['a.ink -> x.any', 'x.other -> b.ink', 'gone.ink -> b.none']);

  it.each([['an empty graph', EMPTY], ['a graph with unknown types and wires to nothing', unknown]])('can be made of %s', (_, document) => {
    fc.assert(fc.property(anyPlan, (plan) => {
      const before = faults(shapes, document).length;
      const changed = after(document, editOf(shapes, document, plan));
      const copied = changed.nodes.filter(({ type }) => type === 'not-there').length;
      // A copied step of unknown type has that fault again; nothing else comes in.
      expect(faults(shapes, changed).length).toBeLessThanOrEqual(before + Math.max(0, copied - 1) * 2);
    }), { numRuns: 100 });
  });
});
