import { describe, expect, it } from 'vitest';
import { createStore } from 'zustand/vanilla';
import { applyEdit, historyOf } from '../../../src/editor/model/history.ts';
import { type EditorState, initialState } from '../../../src/editor/state/editor.ts';
import { followState } from '../../../src/editor/state/evaluating.ts';
import type { FromWorker, NodePicture, NodeReport, Outcome, ToWorker } from '../../../src/editor/worker/protocol.ts';
import { catalogue, graph } from '../../runtime/arithmetic.ts';

type Evaluate = Extract<ToWorker, { kind: 'evaluate' }>;

const report = (says: string): NodeReport => ({ state: 'ready', says, thumbnail: { layers: [], lines: [] }, problems: [], cautions: [], missing: [], milliseconds: 1 });
const picture = (node: string): NodePicture => ({ node, outputs: { layers: [], lines: [] }, inputs: [], spots: {}, junctions: {}, playable: false });
const outcome: Outcome = { status: 'pass', checks: [], quantities: {}, files: [], keptBack: [] };

/** A store that is followed, with frames and time in the test's hands. */
function following(newest?: Int32Array) {
  const store = createStore<EditorState>()(() => ({ ...initialState, shapes: catalogue, history: historyOf(graph({ a: ['constant'], b: ['sum'] }, ['a.value -> b.terms'])) }));
  const sent: ToWorker[] = [];
  let calls: (() => void)[] = [];
  let time = 0;
  let changes = 0;
  store.subscribe(() => { changes += 1; });
  const evaluating = followState({ store, newest, send: (message) => void sent.push(message), soon: (call) => void calls.push(call), now: () => time });
  const frame = (milliseconds = 16) => {
    time += milliseconds;
    const due = calls;
    calls = [];
    for (const call of due) call();
  };
  const edit = (id: string, value: number) => {
    store.setState(({ history }) => ({ history: applyEdit(history, 'set', (draft) => { draft.nodes.find((node) => node.id === id)!.params = { value }; }) }));
  };
  const tell = (...messages: FromWorker[]) => { for (const message of messages) evaluating.receive(message); };
  const asked = () => sent.filter((message): message is Evaluate => message.kind === 'evaluate');
  const done = (revision: number, rest: Partial<Extract<FromWorker, { kind: 'done' }>> = {}): FromWorker => ({ kind: 'done', revision, cancelled: false, executed: ['a'], milliseconds: 7, ...rest });
  frame();
  return { store, sent, asked, frame, edit, tell, done, evaluating, changes: () => changes };
}

describe('an evaluation is asked for', () => {
  it('at the start, whole, once the node types are known', () => {
    const { asked, store } = following();
    expect(asked()).toMatchObject([{ revision: 1, whole: true, seen: [], forget: true, graph: 'untitled.json' }]);
    expect(store.getState().running).toMatchObject({ revision: 1, state: 'computing' });
    const early = createStore<EditorState>()(() => initialState);
    const sent: ToWorker[] = [];
    followState({ store: early, newest: undefined, send: (message) => void sent.push(message), soon: (call) => { call(); }, now: () => 0 });
    expect(sent).toEqual([]);
  });

  it('once a frame, however many edits there were, with the last document', () => {
    const { asked, edit, frame, store } = following();
    for (const value of [2, 3, 4]) edit('a', value);
    expect(asked()).toHaveLength(1);
    frame();
    frame();
    expect(asked()).toHaveLength(2);
    expect(asked()[1]!.document).toBe(store.getState().history.document);
  });

  it.each<[string, Partial<EditorState>]>([
    ['seen', { seen: ['b'] }], ['shown', { shown: 'a' }], ['gesturing', { gesturing: true }],
  ])('when %s changes, and not when it is set to the same', (_key, change) => {
    const { asked, frame, store, tell, done } = following();
    tell(done(1));
    frame();
    store.setState(change);
    frame();
    expect(asked()).toHaveLength(2);
    expect(asked()[1]).toMatchObject({ forget: false, whole: change.gesturing !== true, seen: change.seen ?? [] });
    store.setState(change.seen ? { seen: [...change.seen] } : change);
    frame();
    expect(asked()).toHaveLength(2);
  });

  it('not when cards are moved, chosen or annotated, or the document is retitled', () => {
    const { asked, frame, store } = following();
    store.setState(({ history }) => ({
      chosen: ['a'], opened: ['a'],
      history: applyEdit(history, 'move', (draft) => { draft.nodes[0]!.position = [9, 9]; draft.nodes[0]!.note = 'Here.'; draft.title = 'New'; draft.groups.push({ id: 'g', title: '', nodes: ['a'], collapsed: false }); }),
    }));
    frame();
    expect(asked()).toHaveLength(1);
  });

  it('when a node is titled: others name it', () => {
    const { asked, frame, store } = following();
    store.setState(({ history }) => ({ history: applyEdit(history, 'title', (draft) => { draft.nodes[0]!.title = 'A'; }) }));
    frame();
    expect(asked()).toHaveLength(2);
  });

  it('by a number that earlier ones can see before the message comes', () => {
    const newest = new Int32Array(new SharedArrayBuffer(4));
    const { edit, frame } = following(newest);
    edit('a', 2);
    frame();
    expect(newest[0]).toBe(2);
  });
});

describe('while a gesture lasts', () => {
  it('lets an evaluation on its way finish, then asks for the last value', () => {
    const { asked, edit, frame, store, tell, done } = following();
    tell(done(1));
    store.setState({ gesturing: true });
    edit('a', 2);
    frame();
    for (const value of [3, 4, 5]) { edit('a', value); frame(); }
    expect(asked()).toHaveLength(2);
    tell(done(2));
    frame();
    frame();
    expect(asked().slice(2).map(({ document, whole }) => [document.nodes[0]!.params['value'], whole])).toEqual([[5, false]]);
  });

  it('gives up an evaluation that takes too long', () => {
    const { asked, edit, frame, store } = following();
    frame(1000);
    store.setState({ gesturing: true });
    edit('a', 2);
    frame();
    edit('a', 3);
    frame(100);
    expect(asked()).toHaveLength(2);
    frame(200);
    expect(asked()).toHaveLength(3);
  });

  it('sends what is new at once when a question must not be answered from what was', () => {
    const { asked, edit, frame, store, evaluating } = following();
    store.setState({ gesturing: true });
    edit('a', 2);
    frame();
    expect(asked()).toHaveLength(1);
    evaluating.hurry();
    expect(asked().at(-1)!.document).toBe(store.getState().history.document);
    evaluating.hurry();
    expect(asked()).toHaveLength(2);
  });

  it('asks for the whole at once when it ends', () => {
    const { asked, edit, frame, store } = following();
    frame(1000);
    store.setState({ gesturing: true });
    edit('a', 2);
    frame();
    store.setState({ gesturing: false });
    frame();
    expect(asked().at(-1)).toMatchObject({ whole: true });
  });
});

describe('what the worker tells', () => {
  it('reaches the state in one change a frame', () => {
    const { tell, done, frame, store, changes } = following();
    const before = changes();
    tell({ kind: 'progress', revision: 1, node: 'a', done: 0 }, { kind: 'report', revision: 1, node: 'a', report: report('one') }, { kind: 'report', revision: 1, node: 'b', report: report('two') },
      { kind: 'picture', revision: 1, picture: picture('b') }, done(1, { outcome }));
    expect(changes()).toBe(before);
    frame();
    expect(changes()).toBe(before + 1);
    const { reports, running, ...state } = store.getState();
    expect([...reports.keys()]).toEqual(['a', 'b']);
    expect(running).toEqual({ revision: 1, state: 'done', done: 1, milliseconds: 7 });
    expect(state).toMatchObject({ picture: { node: 'b' }, outcome });
  });

  it('keeps the time of the last evaluation when all that was asked for was known', () => {
    const { tell, done, frame, store } = following();
    tell(done(1));
    frame();
    tell(done(1, { executed: [], milliseconds: 1 }));
    frame();
    expect(store.getState().running.milliseconds).toBe(7);
  });

  it('leaves a report standing until the next one comes', () => {
    const { tell, edit, frame, store, done } = following();
    tell({ kind: 'report', revision: 1, node: 'a', report: report('old') }, done(1, { outcome }));
    frame();
    edit('a', 2);
    frame();
    expect(store.getState().reports.get('a')!.says).toBe('old');
    expect(store.getState().outcome).toBe(outcome);
    tell({ kind: 'report', revision: 2, node: 'a', report: report('new') });
    frame();
    expect(store.getState().reports.get('a')!.says).toBe('new');
  });

  it('counts also when a newer evaluation was asked for meanwhile', () => {
    const { tell, edit, frame, store } = following();
    edit('a', 2);
    frame();
    tell({ kind: 'report', revision: 1, node: 'a', report: report('one') }, { kind: 'done', revision: 1, cancelled: true, executed: [], milliseconds: 0 });
    frame();
    expect(store.getState().reports.get('a')!.says).toBe('one');
    expect(store.getState().running).toMatchObject({ revision: 2, state: 'computing' });
  });

  it('shows how far a node is', () => {
    const { tell, frame, store } = following();
    tell({ kind: 'progress', revision: 1, node: 'b', done: 0 }, { kind: 'progress', revision: 1, node: 'b', done: 0.4 });
    frame();
    expect(store.getState().running).toMatchObject({ state: 'computing', node: 'b', done: 0.4 });
  });

  it('is let go for nodes that are gone, with the picture of one', () => {
    const { tell, frame, store, done } = following();
    tell({ kind: 'report', revision: 1, node: 'b', report: report('two') }, { kind: 'picture', revision: 1, picture: picture('b') }, done(1));
    frame();
    store.setState(({ history }) => ({ history: applyEdit(history, 'delete', (draft) => { draft.nodes.pop(); draft.wires.pop(); }) }));
    frame();
    tell({ kind: 'report', revision: 1, node: 'b', report: report('late') }, done(2));
    frame();
    expect([...store.getState().reports.keys()]).toEqual([]);
    expect(store.getState().picture).toBeUndefined();
  });

  it('about another document is passed over when one was opened, and everything is asked for anew', () => {
    const { tell, frame, store, asked, done } = following();
    tell({ kind: 'report', revision: 1, node: 'a', report: report('old') });
    store.setState({ history: historyOf(graph({ a: ['constant'] })), reports: new Map(), picture: undefined, outcome: undefined });
    frame();
    expect(store.getState().reports.size).toBe(0);
    expect(asked().at(-1)).toMatchObject({ forget: true, revision: 2 });
    tell({ kind: 'report', revision: 1, node: 'a', report: report('old') }, done(1, { outcome }), { kind: 'report', revision: 2, node: 'a', report: report('new') });
    frame();
    expect(store.getState().reports.get('a')!.says).toBe('new');
    expect(store.getState().outcome).toBeUndefined();
  });
});

describe('stopping', () => {
  it('cancels what is computed and stays so until the document changes', () => {
    const { evaluating, sent, store, frame, edit, asked } = following();
    evaluating.cancel();
    expect(sent.at(-1)).toEqual({ kind: 'cancel', revision: 2 });
    expect(store.getState().running.state).toBe('cancelled');
    frame();
    store.setState({ seen: ['a'] });
    frame();
    expect(asked()).toHaveLength(1);
    edit('a', 2);
    frame();
    expect(asked()).toHaveLength(2);
  });

  it('leaves what is done alone', () => {
    const { evaluating, sent, tell, done, frame, store } = following();
    tell(done(1));
    frame();
    evaluating.cancel();
    expect(sent.filter(({ kind }) => kind === 'cancel')).toEqual([]);
    expect(store.getState().running.state).toBe('done');
  });

  it('is undone by computing again', () => {
    const { evaluating, asked, frame } = following();
    evaluating.cancel();
    evaluating.recompute();
    frame();
    expect(asked().at(-1)).toMatchObject({ revision: 3, whole: true, forget: false });
  });

  it('of the worker makes its successor tell everything', () => {
    const { evaluating, asked, frame, tell, done } = following();
    tell(done(1));
    frame();
    evaluating.restart();
    frame();
    expect(asked().at(-1)).toMatchObject({ revision: 2, forget: true });
  });
});
