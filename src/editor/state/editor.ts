import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';
import { GRAPH_FORMAT, GRAPH_VERSION, type GraphDocument, type GraphProblem, type Shapes } from '../../runtime/index.ts';
import { type Edit, type History, applyEdit, historyOf, redo, sameDocument, undo } from '../model/history.ts';
import type { NodePicture, NodeReport, Outcome } from '../worker/protocol.ts';

/** Where the document came from and what of it is kept elsewhere. */
export interface OpenFile {
  readonly name: string;
  /** Where saving writes to without asking; absent until the person chose a place, or where the browser offers none. */
  readonly handle?: FileSystemFileHandle;
  /** The document as it was last saved or opened: while the present one says the same there is nothing to lose. */
  readonly saved: GraphDocument | undefined;
  /** The text of a damaged file, kept whole, and what is wrong with it. */
  readonly damage?: { readonly text: string; readonly problems: readonly GraphProblem[] };
}

/** A sentence the page tells without being asked. */
export interface Notice {
  readonly id: number;
  readonly kind: 'done' | 'caution' | 'failed';
  readonly says: string;
  readonly action?: { readonly label: string; readonly run: () => void };
}

/** A place on the sheet to look at, and what is to be seen there. */
export interface Spot {
  readonly at: readonly [number, number];
  readonly says: string;
  readonly status: 'pass' | 'caution' | 'fail';
  /** The node it belongs to. */
  readonly node: string;
}

/** An entry of a list of edits that a person points at, whose places the sheet marks. */
export interface Pointed {
  readonly node: string;
  readonly param: string;
  readonly index: number;
  /** The sheet goes there, too. */
  readonly goes: boolean;
}

/** How far the newest evaluation is. */
export interface Running {
  readonly revision: number;
  readonly state: 'computing' | 'done' | 'cancelled';
  /** The node at work and how far it is, from 0 to 1. */
  readonly node?: string;
  readonly done: number;
  /** How long the last finished evaluation took. */
  readonly milliseconds: number;
}

/** All the page shows is a function of this. Values stay in the worker; what comes from it here are reports and pictures. */
export interface EditorState {
  readonly shapes: Shapes;
  readonly history: History;
  readonly file: OpenFile;
  /** Ids of the chosen nodes and collapsed groups, in the order they were chosen: the last one is the one that keys act on. */
  readonly chosen: readonly string[];
  /** Cards that are opened in place. */
  readonly opened: readonly string[];
  /** The node whose values the sheet shows; undefined lets the page choose the one with most to show. */
  readonly shown: string | undefined;
  /** The sheet keeps showing what it shows, whatever is chosen. */
  readonly pinned: boolean;
  readonly spot: Spot | undefined;
  readonly pointed: Pointed | undefined;
  /** Cards in view: only their thumbnails are computed while something is dragged. */
  readonly seen: readonly string[];
  /** A gesture is under way: only what is seen is computed, the rest when it ends. */
  readonly gesturing: boolean;
  readonly reports: ReadonlyMap<string, NodeReport>;
  readonly picture: NodePicture | undefined;
  readonly outcome: Outcome | undefined;
  readonly running: Running;
  readonly notices: readonly Notice[];
}

const EMPTY: GraphDocument = { format: GRAPH_FORMAT, version: GRAPH_VERSION, title: 'Untitled', notes: '', nodes: [], wires: [], inputs: [], groups: [] };

export const initialState: EditorState = {
  shapes: new Map(), history: historyOf(EMPTY), file: { name: 'untitled.json', saved: EMPTY },
  chosen: [], opened: [], shown: undefined, pinned: false, spot: undefined, pointed: undefined, seen: [], gesturing: false,
  reports: new Map(), picture: undefined, outcome: undefined,
  running: { revision: 0, state: 'done', done: 1, milliseconds: 0 }, notices: [],
};

/** The one store of the page. */
export const editor = createStore<EditorState>()(() => initialState);

/** Reads a part of the state in a component, which renders again when that part changes. */
export const useEditor = <T>(pick: (state: EditorState) => T): T => useStore(editor, pick);

export const present = (): GraphDocument => editor.getState().history.document;

/** Changes the document as one undoable step named by `says`; all edits with the same `gesture` in a row are one step. */
export function edit(says: string, change: Edit, gesture?: string): void {
  editor.setState(({ history, ...state }) => withoutGone({ ...state, history: applyEdit(history, says, change, gesture) }));
}

export function undoStep(): void {
  editor.setState(({ history, ...state }) => withoutGone({ ...state, history: undo(history) }));
}

export function redoStep(): void {
  editor.setState(({ history, ...state }) => withoutGone({ ...state, history: redo(history) }));
}

/** What was chosen or opened and is no longer in the document is let go. */
function withoutGone(state: EditorState): Partial<EditorState> {
  const { nodes, groups } = state.history.document;
  const there = new Set([...nodes, ...groups].map(({ id }) => id));
  const kept = (ids: readonly string[]) => (ids.every((id) => there.has(id)) ? ids : ids.filter((id) => there.has(id)));
  return { history: state.history, chosen: kept(state.chosen), opened: kept(state.opened), shown: state.shown !== undefined && there.has(state.shown) ? state.shown : undefined };
}

/** Puts a document in the place of the present one, with nothing to undo. */
export function openDocument(document: GraphDocument, file: OpenFile): void {
  editor.setState({
    history: historyOf(document), file, chosen: [], opened: [], shown: undefined, pinned: false, spot: undefined, pointed: undefined,
    reports: new Map(), picture: undefined, outcome: undefined,
  });
}

/** Whether closing the page now would lose something: not after undoing back to what was saved. */
export const hasUnsaved = ({ history, file }: EditorState): boolean => file.saved === undefined || !sameDocument(history.document, file.saved);

export function choose(ids: readonly string[]): void {
  editor.setState({ chosen: ids });
}

/** Has the sheet show a node because it was chosen: not while what it shows is pinned. Undefined lets the page choose. */
export function show(node: string | undefined): void {
  if (!editor.getState().pinned) editor.setState({ shown: node });
}

/** Begins or ends a gesture such as dragging a slider; see `gesturing`. */
export function setGesturing(gesturing: boolean): void {
  editor.setState({ gesturing });
}

let lastNotice = 0;

/** Tells the person something; what went wrong stays until it is taken away, the rest fades by itself. */
export function notify(notice: Omit<Notice, 'id'>): void {
  lastNotice += 1;
  const id = lastNotice;
  editor.setState(({ notices }) => ({ notices: [...notices, { ...notice, id }] }));
}

export function dismiss(id: number): void {
  editor.setState(({ notices }) => ({ notices: notices.filter((notice) => notice.id !== id) }));
}
