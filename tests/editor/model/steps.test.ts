import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bridgesOver, removeAndBridge } from '../../../src/editor/model/bridging.ts';
import { GAP, CARD, cardBoxes, freePlace, overlap } from '../../../src/editor/model/boxes.ts';
import { freshId } from '../../../src/editor/model/ids.ts';
import { fitsOnWire, insertOnWire, wireTitle } from '../../../src/editor/model/inserting.ts';
import { addStep, addStepAt, moveSteps, removeSteps, renameStep, resetParam, setNote, setParam, setTitle } from '../../../src/editor/model/steps.ts';
import { LIMITS } from '../../../src/runtime/index.ts';
import { isId } from '../../../src/runtime/names.ts';
import { after } from './any-edit.ts';
import { EMPTY, TINY, WORLDS, anyGraph, faults, graph, output, pick, wire } from './graphs.ts';

describe('freshId', () => {
  it('counts on from the name wanted', () => {
    expect(freshId(new Set(), 'thin')).toBe('thin');
    expect(freshId(new Set(['thin']), 'thin')).toBe('thin-2');
    expect(freshId(new Set(['thin', 'thin-2', 'thin-3']), 'thin-2')).toBe('thin-4');
  });

  it('always gives an id that may be one and is no one else\'s', () => {
    const name = fc.stringMatching(/^[a-z][a-z0-9]{0,30}(-[a-z0-9]{1,30}){0,2}$/).filter((text) => text.length <= LIMITS.nameLength);
    fc.assert(fc.property(name, fc.nat(30), (wanted, times) => {
      const taken = new Set<string>();
      for (let i = 0; i <= times; i++) {
        const id = freshId(taken, wanted);
        expect(isId(id), id).toBe(true);
        expect(taken.has(id)).toBe(false);
        taken.add(id);
      }
    }), { numRuns: 60 });
  });
});

describe('steps', () => {
  it('are added with readable ids that no group has either', () => {
    const document = { ...graph({ thin: 'thin' }), groups: [{ id: 'thin-2', title: 'G', nodes: ['thin'], collapsed: false }] };
    const { edit, id } = addStep(document, 'thin', [5, 6]);
    expect(id).toBe('thin-3');
    expect(after(document, edit).nodes.at(-1)).toEqual({ id: 'thin-3', type: 'thin', position: [5, 6], params: {} });
  });

  it('are added with a wire to the end it was let go from', () => {
    const { edit } = addStepAt(TINY, graph({ a: 'well' }), 'mix', [0, 0], { port: 'inks', to: output('a.ink') });
    expect(after(graph({ a: 'well' }), edit).wires).toEqual([wire('a.ink -> mix.inks')]);
  });

  it('go with their wires, the inputs that set them and groups left empty', () => {
    const document = {
      ...graph({ a: 'well', b: 'thin', c: 'thin' }, ['a.ink -> b.ink', 'b.ink -> c.ink']),
      inputs: [{ name: 'depth', label: 'Depth', help: '', sets: 'a.depth' }, { name: 'word', label: 'Word', help: '', sets: 'c.word' }],
      groups: [{ id: 'g', title: 'G', nodes: ['a'], collapsed: true }, { id: 'h', title: 'H', nodes: ['b', 'c'], collapsed: false }],
    };
    const left = after(document, removeSteps(['g', 'b']));
    expect(left.nodes.map(({ id }) => id)).toEqual(['c']);
    expect(left.wires).toEqual([]);
    expect(left.inputs.map(({ name }) => name)).toEqual(['word']);
    expect(left.groups).toEqual([{ id: 'h', title: 'H', nodes: ['c'], collapsed: false }]);
  });

  it('move with all that a folded group holds', () => {
    const document = { ...graph({ a: 'well', b: 'thin' }), groups: [{ id: 'g', title: 'G', nodes: ['a', 'b'], collapsed: true }] };
    expect(after(document, moveSteps(['g', 'a'], 10, -5)).nodes.map(({ position }) => position)).toEqual([[10, -5], [310, -5]]);
  });

  it('have parameters set and reset, titles and notes given and taken away', () => {
    const document = graph({ a: 'well' });
    const set = after(document, setParam('a', 'depth', 9));
    expect(set.nodes[0]!.params).toEqual({ depth: 9 });
    expect(after(set, resetParam('a', 'depth'))).toEqual(document);
    expect(after(document, resetParam('a', 'depth'))).toBe(document);
    const named = after(document, (draft) => {
      renameStep('a', '  Deep well ')(draft);
      setNote('a', 'mind')(draft);
    });
    expect(named.nodes[0]).toMatchObject({ title: 'Deep well', note: 'mind' });
    const cleared = after(named, (draft) => {
      renameStep('a', ' ')(draft);
      setNote('a', '\n')(draft);
    });
    expect(cleared).toEqual(document);
    expect(Object.keys(cleared.nodes[0]!)).not.toContain('title');
    expect(after(document, setTitle('  '))).toBe(document);
    expect(after(document, setParam('nobody', 'depth', 1))).toBe(document);
  });
});

describe('bridging', () => {
  it('wires what came in to what took the result', () => {
    const document = graph({ a: 'well', b: 'thin', c: 'thin', d: 'thin' }, ['a.ink -> b.ink', 'b.ink -> c.ink', 'c.ink -> d.ink']);
    expect(after(document, removeAndBridge(TINY, document, ['b', 'c']).edit).wires).toEqual([wire('a.ink -> d.ink')]);
  });

  it('bridges nothing where the types differ or nothing comes in', () => {
    const document = graph({ r: 'ream', h: 'hang', t: 'thin', a: 'well' }, ['r.paper -> h.paper', 'a.ink -> t.ink']);
    expect(bridgesOver(TINY, document, ['r'])).toEqual([]);
    expect(bridgesOver(TINY, document, ['t'])).toEqual([]);
  });

  it('takes what is fewest steps away', () => {
    const document = graph({ far: 'well', near: 'well', r: 'ream', t: 'thin', p: 'mix', end: 'thin' },
      ['far.ink -> t.ink', 't.ink -> p.inks', 'near.ink -> p.inks', 'p.ink -> end.ink']);
    expect(bridgesOver(TINY, document, ['t', 'p'])).toEqual([wire('near.ink -> end.ink')]);
  });

  it.each(WORLDS)('follows ways that were there: over %s every bridge leads from what the target depended on', (_, shapes) => {
    fc.assert(fc.property(anyGraph(shapes), fc.array(fc.nat(99), { maxLength: 3 }), (document, some) => {
      const ids = some.flatMap((number) => pick(document.nodes, number)?.id ?? []);
      const { edit, bridges } = removeAndBridge(shapes, document, ids);
      const changed = after(document, edit);
      expect(faults(shapes, changed)).toEqual([]);
      for (const bridge of bridges) expect(changed.wires).toContainEqual(bridge);
    }), { numRuns: 100 });
  });
});

describe('insertOnWire', () => {
  const document = graph({ a: 'well', b: 'thin', c: 'thin' }, ['a.ink -> b.ink', 'b.ink -> c.ink']);

  it('leads the wire through the new step and moves what comes after it on', () => {
    const done = insertOnWire(TINY, document, wire('a.ink -> b.ink'), { type: 'mix' });
    expect(done.ok && done.id).toBe('mix');
    const changed = after(document, done.ok ? done.edit : () => undefined);
    expect(changed.wires).toEqual(['mix.ink -> b.ink', 'b.ink -> c.ink', 'a.ink -> mix.inks'].map(wire));
    const at = (id: string) => changed.nodes.find((node) => node.id === id)!.position[0];
    expect(at('mix')).toBe(CARD.width + GAP.x);
    expect(at('b')).toBe(at('mix') + CARD.width + GAP.x);
    expect(at('c') - at('b')).toBe(300);
    expect(at('a')).toBe(0);
  });

  it('puts it in the middle and moves nothing where there is room', () => {
    const wide = { ...document, nodes: document.nodes.map((node, i) => ({ ...node, position: [i * 900, 0] as const })) };
    const done = insertOnWire(TINY, wide, wire('a.ink -> b.ink'), { type: 'thin' });
    const changed = after(wide, done.ok ? done.edit : () => undefined);
    expect(changed.nodes.map(({ position }) => position[0])).toEqual([0, 900, 1800, 450]);
  });

  it('keeps the turn of the wire among several', () => {
    const several = graph({ a: 'well', b: 'well', m: 'mix' }, ['a.ink -> m.inks', 'b.ink -> m.inks']);
    const done = insertOnWire(TINY, several, wire('a.ink -> m.inks'), { type: 'thin' });
    const changed = after(several, done.ok ? done.edit : () => undefined);
    expect(changed.wires.filter(({ to }) => to === 'm.inks').map(({ from }) => from)).toEqual(['thin.ink', 'b.ink']);
  });

  it('joins the group that both ends are in', () => {
    const grouped = { ...document, groups: [{ id: 'g', title: 'G', nodes: ['a', 'b'], collapsed: true }] };
    const done = insertOnWire(TINY, grouped, wire('a.ink -> b.ink'), { type: 'thin' });
    expect(after(grouped, done.ok ? done.edit : () => undefined).groups[0]!.nodes).toEqual(['a', 'b', 'thin']);
  });

  it.each([
    ['takes nothing of the kind', { type: 'ream' }, 'Ream does not take number, which this wire carries. It takes nothing.'],
    ['gives nothing of the kind', { type: 'hang' }, 'Hang does not give number, which this wire carries on. It gives nothing.'],
    ['is unknown', { type: 'lost' }, '"lost" is not a step this program knows.'],
    ['is at the end of the wire', { id: 'b' }, 'Thin has its wire for number already. Take that one away first.'],
    ['would close a circle', { id: 'c' }, 'Thin has its wire for number already. Take that one away first.'],
    ['is gone', { id: 'z' }, 'This wire or this step is not there any more.'],
  ])('says why a step that %s does not go there', (_, what, refusal) => {
    expect(insertOnWire(TINY, document, wire('a.ink -> b.ink'), what)).toEqual({ ok: false, refusal });
  });

  it('refuses a step that works on what the wire leads to', () => {
    const back = graph({ a: 'well', b: 'thin', m: 'mix', x: 'mix' }, ['a.ink -> b.ink', 'b.ink -> m.inks']);
    expect(insertOnWire(TINY, back, wire('a.ink -> b.ink'), { id: 'm' })).toMatchObject({ ok: false, refusal: expect.stringContaining('circle') as string });
    expect(insertOnWire(TINY, back, wire('a.ink -> b.ink'), { id: 'x' })).toMatchObject({ ok: true, id: 'x' });
  });

  it('offers only what goes there, and calls the wire by what it carries', () => {
    expect(fitsOnWire(TINY, document, wire('a.ink -> b.ink'))).toEqual(['mix', 'thin', 'print']);
    expect(fitsOnWire(TINY, document, wire('a.milk -> b.ink'))).toEqual([]);
    expect(wireTitle(TINY, document, wire('a.ink -> b.ink'))).toBe('number from Well to Thin');
  });
});

describe('freePlace', () => {
  it('finds a clear place near the one wanted', () => {
    fc.assert(fc.property(anyGraph(TINY, 12), fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 }), (document, x, y) => {
      const boxes = [...cardBoxes(document, new Map()).values()];
      const [left, top] = freePlace(boxes, { ...CARD, x, y });
      expect(boxes.some((box) => overlap(box, { ...CARD, x: left, y: top }))).toBe(false);
    }), { numRuns: 60 });
    expect(freePlace([], { ...CARD, x: 3, y: 4 })).toEqual([3, 4]);
    expect(cardBoxes(EMPTY, new Map()).size).toBe(0);
  });
});
