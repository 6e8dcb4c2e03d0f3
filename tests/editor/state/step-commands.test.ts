// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { writeGraph } from '../../../src/runtime/index.ts';
import { choose, edit, editor, hasUnsaved, initialState, openDocument, present } from '../../../src/editor/state/editor.ts';
import { stepCommands } from '../../../src/editor/state/step-commands.ts';
import { provide } from '../../../src/editor/state/step-surroundings.ts';
import { setParam } from '../../../src/editor/model/steps.ts';
import { TINY, graph, wire } from '../model/graphs.ts';

const document = graph({ a: 'well', b: 'thin', c: 'thin' }, ['a.ink -> b.ink', 'b.ink -> c.ink']);
const command = (id: string) => stepCommands.find((one) => one.id === id)!;
const run = async (id: string) => {
  expect(command(id).refusal?.()).toBeUndefined();
  await command(id).run();
};
const label = (id: string) => command(id).labelNow?.() ?? command(id).label;
const ids = () => present().nodes.map(({ id }) => id);
const says = () => editor.getState().notices.map((notice) => notice.says);
const clipboard = (part: Partial<Clipboard>) => vi.stubGlobal('navigator', { clipboard: part });
let clean: (() => void)[] = [];

beforeEach(() => {
  editor.setState({ ...initialState, shapes: TINY });
  openDocument(document, { name: 'test.json', saved: document });
  let text = '';
  clipboard({ writeText: async (written: string) => void (text = written), readText: async () => text });
});
afterEach(() => {
  for (const undo of clean) undo();
  clean = [];
  vi.unstubAllGlobals();
});

describe('the commands on steps', () => {
  it('have ids and labels of their own', () => {
    expect(new Set(stepCommands.map(({ id }) => id)).size).toBe(stepCommands.length);
    expect(new Set(stepCommands.map((one) => one.label)).size).toBe(stepCommands.length);
  });

  it('say why they cannot be done when nothing is chosen and nothing was done', () => {
    openDocument({ ...document, nodes: [], wires: [] }, { name: 'x', saved: undefined });
    for (const one of stepCommands.filter(({ id }) => id !== 'paste')) expect(one.refusal?.(), one.id).toMatch(/^[A-Z].*\.$/);
  });

  it('undo and redo, named after what was done, back to what is saved', async () => {
    edit('set depth', setParam('a', 'depth', 9));
    expect(label('undo')).toBe('Undo: set depth');
    expect(hasUnsaved(editor.getState())).toBe(true);
    await run('undo');
    expect(hasUnsaved(editor.getState())).toBe(false);
    expect(label('redo')).toBe('Redo: set depth');
    await run('redo');
    expect(present().nodes[0]!.params).toEqual({ depth: 9 });
    expect(command('redo').refusal?.()).toBe('There is nothing to do again.');
  });

  it('delete what is chosen, and let it go from what is chosen', async () => {
    choose(['b']);
    expect(label('delete')).toBe('Delete “Thin”');
    await run('delete');
    expect(ids()).toEqual(['a', 'c']);
    expect(editor.getState().chosen).toEqual([]);
    await run('undo');
    expect(writeGraph(present())).toBe(writeGraph(document));
  });

  it('delete and close the gap, or say why it stays open', async () => {
    choose(['b']);
    await run('delete-bridge');
    expect(present().wires).toEqual([wire('a.ink -> c.ink')]);
    choose(['a']);
    expect(command('delete-bridge').refusal?.()).toBe('Nothing that comes into “Well” is of the kind that goes out. Delete it and wire the rest by hand.');
  });

  it('delete the chosen wire when no card is chosen', async () => {
    clean.push(provide({ wire: () => document.wires[0] }));
    expect(label('delete')).toBe('Take the wire away');
    await run('delete');
    expect(present().wires).toEqual([document.wires[1]]);
  });

  it('copy, cut and paste, clear of what is there', async () => {
    choose(['a', 'b']);
    await run('copy');
    await run('paste');
    expect(ids()).toEqual(['a', 'b', 'c', 'a-2', 'b-2']);
    expect(editor.getState().chosen).toEqual(['a-2', 'b-2']);
    expect(present().wires.at(-1)).toEqual(wire('a-2.ink -> b-2.ink'));
    await run('cut');
    expect(ids()).toEqual(['a', 'b', 'c']);
    await run('paste');
    await run('paste');
    const places = present().nodes.map(({ position }) => position.join());
    expect(new Set(places).size).toBe(places.length);
  });

  it.each([
    ['forbidden', { writeText: () => Promise.reject(new Error('no')), readText: () => Promise.reject(new Error('no')) }],
    ['not there', undefined],
  ])('paste within the page where the system\'s clipboard is %s', async (_, part) => {
    vi.stubGlobal('navigator', { clipboard: part });
    choose(['c']);
    await run('copy');
    await run('paste');
    expect(ids()).toEqual(['a', 'b', 'c', 'c-2']);
  });

  it('say what is wrong with a clipboard that holds no steps, or damaged ones', async () => {
    choose(['a']);
    await run('copy');
    clipboard({ readText: async () => 'a letter' });
    await run('paste');
    clipboard({ readText: async () => '{ "format": "groovewright-piece", "version": 1, "graph": { } }' });
    await run('paste');
    expect(ids()).toEqual(['a', 'b', 'c']);
    expect(says()[0]).toBe('What was copied is no steps. Choose steps on the bench and copy them, then paste.');
    expect(says()[1]).toMatch(/^These steps cannot be put in: format: expected/);
  });

  it('paste where the person looks', async () => {
    clean.push(provide({ place: () => [5000, 6000] }));
    choose(['a']);
    await run('copy');
    await run('paste');
    expect(present().nodes.at(-1)!.position).toEqual([5000, 6000]);
  });

  it('duplicate with the wires that come in', async () => {
    choose(['b']);
    await run('duplicate');
    expect(ids()).toEqual(['a', 'b', 'c', 'b-2']);
    expect(present().wires.at(-1)).toEqual(wire('a.ink -> b-2.ink'));
    expect(editor.getState().chosen).toEqual(['b-2']);
  });

  it('choose all, group, fold, unfold and dissolve', async () => {
    await run('choose-all');
    expect(editor.getState().chosen).toEqual(['a', 'b', 'c']);
    await run('group');
    expect(present().groups).toMatchObject([{ title: 'Group 1', nodes: ['a', 'b', 'c'], collapsed: false }]);
    expect(label('fold-group')).toBe('Fold the group “Group 1”');
    await run('fold-group');
    expect(present().groups[0]!.collapsed).toBe(true);
    expect(editor.getState().chosen).toEqual(['group']);
    await run('fold-group');
    expect(editor.getState().chosen).toEqual(['a', 'b', 'c']);
    await run('ungroup');
    expect(present().groups).toEqual([]);
    expect(editor.getState().chosen).toEqual(['a', 'b', 'c']);
  });

  it('keep a group where there is a place to keep it', async () => {
    choose(['a', 'b']);
    await run('group');
    const kept: string[] = [];
    clean.push(provide({ pieces: { keep: async (title, text) => kept.push(title, text), kept: async () => [] } }));
    await run('keep-group');
    expect(kept[0]).toBe('Group 1');
    expect(kept[1]).toContain('groovewright-piece');
    expect(says()).toEqual(['The group “Group 1” is kept. Find it where steps are added, in any graph.']);
  });

  it('line up and lay out in one step each', async () => {
    choose(['a', 'b', 'c']);
    await run('align-left');
    expect(new Set(present().nodes.map(({ position }) => position[0]))).toEqual(new Set([0]));
    choose([]);
    await run('lay-out');
    const xs = present().nodes.map(({ position }) => position[0]);
    expect(xs).toEqual([...xs].sort((x, y) => x - y));
    expect(editor.getState().history.past.map((step) => step.says)).toEqual(['line up left edges', 'lay out all steps']);
    choose(['a', 'b']);
    expect(command('align-spread-x').refusal?.()).toBe('Choose 3 or more steps on the bench first.');
  });

  it('rename through the bench', async () => {
    choose(['a', 'b']);
    expect(command('rename').refusal?.()).toMatch(/Open the bench/);
    const renamed: string[] = [];
    clean.push(provide({ rename: (card) => renamed.push(card) }));
    await run('rename');
    expect(renamed).toEqual(['b']);
  });
});

it('what a room provides goes with the room, whichever goes first', async () => {
  const first = provide({ wire: () => document.wires[0] });
  const second = provide({ wire: () => document.wires[1] });
  first();
  await run('delete');
  expect(present().wires).toEqual([document.wires[0]]);
  second();
  expect(command('delete').refusal?.()).toMatch(/No step is chosen/);
});
