import type { EditsParam, NodeShape } from '../../../src/runtime/index.ts';
import { sheet } from '../../../src/editor/sheet/store.ts';
import { editor, present } from '../../../src/editor/state/editor.ts';
import type { JunctionMap, PictureLayer } from '../../../src/values/picture.ts';
import { DOCUMENT, picture, showSample } from './samples.ts';

const act = (label: string, places: readonly [number, number], on: EditsParam['acts'][string]['on'] & object) => ({ label, doc: `${label} it.`, places, on });

/** Acts of every sort there is, under names that mean nothing to the editor. */
export const MENDS = {
  kind: 'edits', default: [], label: 'Mends', doc: 'Done by hand.',
  acts: {
    nudge: act('Nudge', [2, 2], ['stroke', 'anywhere']), marry: act('Marry', [3, 3], ['junction', 'arm', 'arm']), snip: act('Snip', [1, 1], ['stroke']),
    tie: act('Tie', [2, 2], ['end', 'end']), drop: act('Drop', [1, 1], ['piece']), draw: act('Draw', [2, 4], ['anywhere']),
  },
} as const satisfies EditsParam;

export const MENDER: NodeShape = {
  name: 'mender', title: 'Mender', doc: 'Mends.', inputs: {}, outputs: { lines: { type: 'strokes', doc: 'Strokes.' }, meets: { type: 'junctions', doc: 'Junctions.' } },
  params: { mends: MENDS }, handles: [{ kind: 'edits', param: 'mends', junctions: 'meets', doc: 'Mend the strokes.' }],
};

/** A cross of two strokes of 300 and 200 mm that meet at (250, 100). */
export const CROSS: PictureLayer = {
  kind: 'strokes', name: 'strokes',
  items: [{ d: 'M100 100L400 100', title: 'stroke 1, 300 mm' }, { d: 'M250 0L250 200', title: 'stroke 2, 200 mm' }],
};

export const CROSS_MAP: JunctionMap = {
  frame: { origin: { x: 100, y: 0 }, size: 300 },
  junctions: [{
    at: { x: 250, y: 100 }, radius: 6, pairs: [[0, 1], [2, 3]],
    arms: [{ stroke: 0, at: { x: 240, y: 100 } }, { stroke: 0, at: { x: 260, y: 100 } }, { stroke: 1, at: { x: 250, y: 90 } }, { stroke: 1, at: { x: 250, y: 110 } }],
  }],
  ends: [{ stroke: 0, at: { x: 100, y: 100 } }, { stroke: 0, at: { x: 400, y: 100 } }, { stroke: 1, at: { x: 250, y: 0 } }, { stroke: 1, at: { x: 250, y: 200 } }],
};

export const CROSS_PICTURE = picture('mend', [CROSS], { junctions: { meets: CROSS_MAP } });

/** The sample graph with a step that takes edits by hand, shown: 1 px per mm. */
export function showCross(): void {
  showSample(CROSS_PICTURE);
  editor.setState(({ shapes, history }) => ({
    shapes: new Map([...shapes, ['mender', MENDER]]),
    history: { ...history, document: { ...DOCUMENT, nodes: [...DOCUMENT.nodes, { id: 'mend', type: 'mender', position: [0, 0], params: {} }] } },
  }));
  sheet.setState({ view: { x: 250, y: 100, scale: 1 } });
}

export const mends = () => (present().nodes.find(({ id }) => id === 'mend')!.params.mends ?? []) as readonly { act: string; places: readonly { x: number; y: number }[] }[];
