import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { endText } from '../../../src/editor/model/graph.ts';
import { groupSteps, groupsOf, renameGroup, setCollapsed, ungroup } from '../../../src/editor/model/groups.ts';
import { portsOfGroup, portsOfNode, positionOfGroup, visibleGraph } from '../../../src/editor/model/visible.ts';
import { after } from './any-edit.ts';
import { EMPTY, REAL, TINY, WORLDS, anyGraph, endsOf, graph } from './graphs.ts';

describe.each(WORLDS)('the graph as it is seen, over %s', (_, shapes) => {
  it('has every node on exactly one card and every wire between ports that its cards show', () => {
    fc.assert(fc.property(anyGraph(shapes), (document) => {
      const { cards, wires } = visibleGraph(shapes, document);
      const shown = cards.flatMap((card) => (card.kind === 'node' ? [card.id] : card.group.nodes));
      expect([...shown].sort()).toEqual(document.nodes.map(({ id }) => id).sort());
      for (const { from, to } of wires) {
        expect(cards.find(({ id }) => id === from.card)!.outputs.map(({ key }) => key)).toContain(endText(from));
        expect(cards.find(({ id }) => id === to.card)!.inputs.map(({ key }) => key)).toContain(endText(to));
      }
      for (const { inputs, outputs } of cards) for (const ports of [inputs, outputs]) expect(new Set(ports.map(({ label }) => label)).size).toBe(ports.length);
      const hidden = document.groups.filter(({ collapsed }) => collapsed).map(({ nodes }) => nodes);
      const within = document.wires.filter(({ from, to }) => hidden.some((nodes) => nodes.some((id) => from.startsWith(`${id}.`)) && nodes.some((id) => to.startsWith(`${id}.`))));
      expect(wires.length).toBe(document.wires.length - within.length);
    }), { numRuns: 80 });
  });

  it('shows all wires and every port when nothing is folded', () => {
    fc.assert(fc.property(anyGraph(shapes), (document) => {
      const open = after(document, (draft) => draft.groups.forEach((group) => setCollapsed(group.id, false)(draft)));
      const { cards, wires } = visibleGraph(shapes, open);
      expect(wires.map(({ wire }) => wire)).toEqual(document.wires);
      expect(cards.flatMap(({ inputs, outputs }) => [...inputs, ...outputs]).map((port) => `${port.side} ${port.key}`).sort())
        .toEqual(endsOf(shapes, document).map((end) => `${end.side} ${endText(end)}`).sort());
    }), { numRuns: 40 });
  });
});

describe('a group', () => {
  const document = { ...graph({ a: 'well', b: 'print', c: 'thin', r: 'ream', d: 'thin' }, ['a.ink -> b.ink', 'b.rest -> c.ink', 'r.paper -> b.paper', 'c.ink -> d.ink']) };
  const group = { id: 'g', title: 'G', nodes: ['b', 'c'], collapsed: true };
  const grouped = { ...document, groups: [group] };

  it('has the ports of its nodes that are open to the outside', () => {
    const { inputs, outputs } = portsOfGroup(TINY, grouped, group);
    expect(inputs.map(({ key }) => key)).toEqual(['b.ink', 'b.paper']);
    expect(outputs.map(({ key }) => key)).toEqual(['b.paper', 'c.ink']);
  });

  it('tells ports of the same name apart by their cards, and cards of the same title by their ids', () => {
    const twins = graph({ a: 'thin', b: 'thin', c: 'mix' });
    const { inputs } = portsOfGroup(TINY, twins, { id: 'g', title: 'G', nodes: ['a', 'b', 'c'], collapsed: true });
    expect(inputs.map(({ label }) => label)).toEqual(['ink, Thin (a)', 'ink, Thin (b)', 'inks']);
  });

  it('has its wires end at its own ports, and lies at the upper left corner of its members', () => {
    const { cards, wires } = visibleGraph(TINY, grouped);
    expect(cards.map(({ id }) => id)).toEqual(['a', 'r', 'd', 'g']);
    expect(wires.map(({ from, to }) => `${from.card} ${to.card}`)).toEqual(['a g', 'r g', 'g d']);
    expect(positionOfGroup(grouped, group)).toEqual([300, 0]);
    expect(cards.at(-1)!.position).toEqual([300, 0]);
  });

  it('is made of steps of other groups, which lose them, and of groups, which dissolve into it', () => {
    const first = groupSteps(document, ['a', 'b'], '');
    const one = after(document, first.edit);
    const second = groupSteps(one, ['b', 'c'], ' Two ');
    const two = after(one, second.edit);
    expect(two.groups).toEqual([{ id: 'group', title: 'Group', nodes: ['a'], collapsed: false }, { id: 'group-2', title: 'Two', nodes: ['b', 'c'], collapsed: false }]);
    const all = after(two, groupSteps(two, ['group', 'group-2', 'd'], 'All').edit);
    expect(all.groups).toEqual([{ id: 'group-3', title: 'All', nodes: ['a', 'b', 'c', 'd'], collapsed: false }]);
    expect(after(document, groupSteps(document, [], 'None').edit)).toBe(document);
  });

  it('is renamed, folded, found and dissolved', () => {
    expect(after(grouped, renameGroup('g', 'New')).groups[0]!.title).toBe('New');
    expect(after(grouped, renameGroup('g', ' '))).toBe(grouped);
    expect(after(grouped, setCollapsed('g', true))).toBe(grouped);
    expect(groupsOf(grouped, ['c'])).toEqual([group]);
    expect(groupsOf(grouped, ['a'])).toEqual([]);
    expect(after(grouped, ungroup('g'))).toEqual(document);
  });
});

describe('cards of what is not known', () => {
  const strange = graph({ a: 'well', x: 'lost', b: 'thin' }, ['a.ink -> x.any', 'x.other -> b.ink', 'a.milk -> b.none', 'gone.ink -> b.ink']);

  it('have the ports that wires tell of', () => {
    const { inputs, outputs } = portsOfNode(TINY, strange, strange.nodes[1]!);
    expect([...inputs, ...outputs].map(({ key, type }) => [key, type])).toEqual([['x.any', undefined], ['x.other', undefined]]);
    expect(portsOfNode(TINY, strange, strange.nodes[2]!).inputs.map(({ key }) => key)).toEqual(['b.ink', 'b.none']);
  });

  it('leave out wires to nothing, and empty graphs and groups', () => {
    expect(visibleGraph(TINY, strange).wires).toHaveLength(3);
    expect(visibleGraph(TINY, EMPTY)).toEqual({ cards: [], wires: [] });
    expect(visibleGraph(TINY, { ...EMPTY, groups: [{ id: 'g', title: 'G', nodes: ['gone'], collapsed: true }] }).cards).toEqual([]);
  });

  it('tell doubled wires apart', () => {
    const doubled = graph({ a: 'well', m: 'mix' }, ['a.ink -> m.inks', 'a.ink -> m.inks']);
    expect(new Set(visibleGraph(TINY, doubled).wires.map(({ key }) => key)).size).toBe(2);
  });
});

it('calls ports by words, and by their type where they are named after it', () => {
  const card = visibleGraph(REAL, graph({ p: 'prove-cut' })).cards[0]!;
  expect(card.inputs.map(({ label }) => label)).toContain('set-ups');
});
