import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type GraphDocument, writeGraph } from '../../../src/runtime/index.ts';
import { type History, MOST_STEPS, applyEdit, historyOf, redo, sameDocument, undo } from '../../../src/editor/model/history.ts';
import { moveSteps, setParam, setTitle } from '../../../src/editor/model/steps.ts';
import { anyPlan, editOf } from './any-edit.ts';
import { EMPTY, WORLDS, anyGraph, graph } from './graphs.ts';

const text = ({ document }: History) => writeGraph(document);

describe.each(WORLDS)('history over %s', (_, shapes) => {
  const move = fc.record({ turn: fc.constantFrom('edit', 'edit', 'edit', 'gesture', 'undo', 'redo'), plan: anyPlan });

  it('gives back the same bytes whatever is done, undone and done again', () => {
    fc.assert(fc.property(anyGraph(shapes, 8), fc.array(move, { maxLength: 12 }), (document, moves) => {
      let history = historyOf(document);
      let texts = [text(history)];
      let at = 0;
      for (const { turn, plan } of moves) {
        if (turn === 'undo') [history, at] = [undo(history), Math.max(0, at - 1)];
        else if (turn === 'redo') [history, at] = [redo(history), Math.min(texts.length - 1, at + 1)];
        else {
          const joins = turn === 'gesture' && history.past.at(-1)?.gesture === 'drag' && history.future.length === 0;
          const next = applyEdit(history, 'do', editOf(shapes, history.document, plan), turn === 'gesture' ? 'drag' : undefined);
          if (next !== history) {
            if (!joins) at += 1;
            texts = [...texts.slice(0, at), text(next)];
          }
          history = next;
        }
        expect(text(history)).toBe(texts[at]);
      }
      while (history.past.length > 0) history = undo(history);
      expect(text(history)).toBe(texts[0]);
      expect(sameDocument(history.document, document)).toBe(true);
      while (history.future.length > 0) history = redo(history);
      expect(text(history)).toBe(texts.at(-1));
    }), { numRuns: 120 });
  });
});

describe('history', () => {
  const start = historyOf(graph({ a: 'well', b: 'thin' }, ['a.ink -> b.ink']));
  const slide = (history: History, depth: number, gesture = 'slide') => applyEdit(history, 'set depth', setParam('a', 'depth', depth), gesture);

  it('makes all edits of one gesture one step', () => {
    const slid = [1, 2, 3, 4].reduce((history, depth) => slide(history, depth), start);
    expect(slid.past).toHaveLength(1);
    expect(text(undo(slid))).toBe(text(start));
    expect(undo(slid).document.nodes[0]!.params).toEqual({});
    expect(redo(undo(slid)).document.nodes[0]!.params).toEqual({ depth: 4 });
  });

  it('keeps two gestures, and an edit between, apart', () => {
    const slid = slide(applyEdit(slide(start, 1), 'title', setTitle('x')), 2);
    expect(slid.past).toHaveLength(3);
    expect(slide(slid, 3, 'another').past).toHaveLength(4);
  });

  it('does not grow with the length of a gesture that sets one thing again and again', () => {
    let history = start;
    for (let i = 0; i < 300; i++) history = applyEdit(history, 'drag', moveSteps(['a', 'b'], 1, 1), 'drag');
    expect(history.past[0]!.forward.length).toBeLessThanOrEqual(2);
    expect(history.past[0]!.back.length).toBeLessThanOrEqual(2);
    expect(text(undo(history))).toBe(text(start));
    expect(text(redo(undo(history)))).toBe(text(history));
  });

  it('brings back all that one gesture took from the end of a list', () => {
    const wired = historyOf(graph({ a: 'well', m: 'mix', t: 'thin' }, ['a.ink -> m.inks', 'a.ink -> t.ink', 'm.ink -> t.ink']));
    const shorter = [1, 2, 3].reduce((history) => applyEdit(history, 'take', (draft) => void draft.wires.pop(), 'take'), wired);
    expect(shorter.document.wires).toEqual([]);
    expect(text(undo(shorter))).toBe(text(wired));
    expect(text(redo(undo(shorter)))).toBe(text(shorter));
  });

  it('starts a new step when the gesture goes on after it was undone', () => {
    const again = slide(undo(slide(slide(start, 1, 'first'), 2)), 3);
    expect(again.past).toHaveLength(2);
    expect(again.future).toHaveLength(0);
  });

  it('makes no step of an edit that changes nothing', () => {
    const set = slide(start, 7);
    expect(slide(set, 7, 'other')).toBe(set);
    expect(applyEdit(set, 'nothing', () => undefined)).toBe(set);
    expect(applyEdit(set, 'move', moveSteps(['a'], 0, 0))).toBe(set);
    const points = applyEdit(historyOf(graph({ r: 'ream' })), 'mark', setParam('r', 'marks', [{ x: 1, y: 2 }]));
    expect(applyEdit(points, 'mark', setParam('r', 'marks', [{ x: 1, y: 2 }]))).toBe(points);
  });

  it('is left as it was by an edit that throws', () => {
    const before = text(start);
    expect(() => applyEdit(start, 'break', (draft) => {
      draft.title = 'half done';
      throw new Error('broken');
    })).toThrow('broken');
    expect(text(start)).toBe(before);
    expect(start.past).toEqual([]);
  });

  it(`forgets the oldest of more than ${MOST_STEPS} steps`, () => {
    let history = start;
    for (let i = 0; i < MOST_STEPS + 3; i++) history = applyEdit(history, `${i}`, setTitle(`title ${i}`));
    expect(history.past).toHaveLength(MOST_STEPS);
    expect(history.past[0]!.says).toBe('3');
  });

  it('has nothing to undo or redo at its ends', () => {
    const history = historyOf(EMPTY);
    expect(undo(history)).toBe(history);
    expect(redo(history)).toBe(history);
  });
});

describe('sameDocument', () => {
  it('tells by content, not by identity', () => {
    const one: GraphDocument = graph({ a: 'well' });
    expect(sameDocument(one, structuredClone(one))).toBe(true);
    expect(sameDocument(one, { ...one, title: 'other' })).toBe(false);
    expect(sameDocument(one, one)).toBe(true);
  });
});
