import type { GraphDocument, NodeShape } from '../../../src/runtime/index.ts';
import { editor, initialState, openDocument } from '../../../src/editor/state/editor.ts';
import { initialSheet, sheet } from '../../../src/editor/sheet/store.ts';
import type { NodePicture } from '../../../src/editor/worker/protocol.ts';
import type { PictureLayer, PictureSetUps } from '../../../src/values/picture.ts';

export const SHAPES: readonly NodeShape[] = [
  { name: 'sheet-maker', title: 'Sheet', doc: 'Makes a sheet.', inputs: {}, outputs: { stock: { type: 'stock', doc: 'Sheet.' } }, params: {} },
  {
    name: 'shifter', title: 'Shifter', doc: 'Shifts.', inputs: { stock: { type: 'stock', doc: 'Sheet.' } }, outputs: { strokes: { type: 'strokes', doc: 'Strokes.' } },
    params: {
      right: { kind: 'number', unit: 'mm', default: 0, min: -100, max: 100, step: 1, label: 'Right', doc: 'Right.' },
      up: { kind: 'number', unit: 'mm', default: 5, min: -100, max: 100, step: 1, label: 'Up', doc: 'Up.' },
    },
    handles: [{ kind: 'move', outputs: ['strokes'], x: 'right', y: 'up', doc: 'Drag the strokes.' }],
  },
  {
    name: 'driller', title: 'Driller', doc: 'Drills.', inputs: { strokes: { type: 'strokes', doc: 'Strokes.' } }, outputs: { holes: { type: 'holes', doc: 'Holes.' } },
    params: {
      pattern: { kind: 'choice', options: ['corners', 'by hand'], default: 'corners', label: 'Pattern', doc: 'Pattern.' },
      places: { kind: 'points', default: [], label: 'Places', doc: 'Places.' },
    },
    handles: [{ kind: 'places', param: 'places', from: 'holes', sets: { pattern: 'by hand' }, doc: 'Drag a hole.' }],
  },
  {
    name: 'fencer', title: 'Fencer', doc: 'Fences.', inputs: {}, outputs: { tiling: { type: 'tiling', doc: 'Fences.' } },
    params: {
      upright: { kind: 'points', default: [], label: 'Fences up', doc: 'Up.' },
      level: { kind: 'points', default: [], label: 'Fences along', doc: 'Along.' },
    },
    handles: [{ kind: 'places', param: 'upright', from: 'tiling.x', doc: 'Drag one.' }, { kind: 'places', param: 'level', from: 'tiling.y', doc: 'Drag one.' }],
  },
  {
    name: 'pinner', title: 'Pinner', doc: 'Pins.', inputs: { stock: { type: 'stock', doc: 'Sheet.' } }, outputs: { registration: { type: 'registration', doc: 'Pins.' }, holding: { type: 'holding', doc: 'Screws.' } },
    params: {
      pins: { kind: 'points', default: [], label: 'Pins', doc: 'Pins.' }, screws: { kind: 'points', default: [], label: 'Screws', doc: 'Screws.' }, lines: { kind: 'points', default: [], label: 'Lines', doc: 'Lines.' },
    },
    handles: [
      { kind: 'places', param: 'pins', from: 'registration', on: 'machine', doc: 'Drag a pin.' }, { kind: 'places', param: 'screws', from: 'holding.down', doc: 'Drag a screw.' },
      { kind: 'places', param: 'lines', from: 'holding.x', axis: 'x', doc: 'Drag a line.' },
    ],
  },
  { name: 'reader', title: 'Reader', doc: 'Reads.', inputs: {}, outputs: { strokes: { type: 'strokes', doc: 'Strokes.' } }, params: {} },
];

export const DOCUMENT: GraphDocument = {
  format: 'groovewright-graph', version: 1, title: 'Stall', notes: '', inputs: [], groups: [],
  nodes: [
    { id: 'file', type: 'reader', position: [0, 0], params: {} },
    { id: 'sheet', type: 'sheet-maker', position: [0, 0], params: {} },
    { id: 'place', type: 'shifter', position: [0, 0], params: {} },
    { id: 'holes', type: 'driller', title: 'Corner holes', position: [0, 0], params: {} },
    { id: 'fences', type: 'fencer', position: [0, 0], params: {} },
    { id: 'pins', type: 'pinner', position: [0, 0], params: {} },
  ],
  wires: [{ from: 'sheet.stock', to: 'place.stock' }, { from: 'place.strokes', to: 'holes.strokes' }, { from: 'sheet.stock', to: 'pins.stock' }],
};

export const SHEET_LAYER: PictureLayer = { kind: 'sheet', name: 'sheet', items: [{ d: 'M0 0L1000 0L1000 500L0 500Z', title: 'sheet' }] };

export const STROKES: PictureLayer = {
  kind: 'strokes', name: 'strokes',
  items: [
    { d: 'M100 100L400 100', title: 'stroke 1, 300 mm', start: { at: [100, 100], along: [1, 0] } },
    { d: 'M100 300C200 400 300 400 400 300', title: 'stroke 2, 345 mm', start: { at: [100, 300], along: [Math.SQRT1_2, Math.SQRT1_2] } },
  ],
};

const circleAt = (x: number, y: number, r: number): string => `M${x + r} ${y}A${r} ${r} 0 0 1 ${x} ${y + r}A${r} ${r} 0 0 1 ${x - r} ${y}A${r} ${r} 0 0 1 ${x} ${y - r}A${r} ${r} 0 0 1 ${x + r} ${y}Z`;

export const HOLES: PictureLayer = {
  kind: 'holes', name: 'holes', items: [{ d: circleAt(50, 50, 3), title: 'mounting hole 1, 6 mm' }, { d: circleAt(950, 450, 3), title: 'mounting hole 2, 6 mm' }],
};

export const picture = (node: string, layers: readonly PictureLayer[], more: Partial<NodePicture> = {}): NodePicture =>
  ({ node, outputs: { layers, lines: [] }, inputs: [], spots: {}, junctions: {}, playable: false, ...more });

export const STROKES_PICTURE = picture('place', [STROKES], { inputs: [SHEET_LAYER] });
export const FENCES_PICTURE = picture('fences', [], { spots: { 'tiling.x': [[400, 250]], 'tiling.y': [[500, 200], [500, 300]] } });
export const HOLES_PICTURE = picture('holes', [HOLES], { spots: { holes: [[50, 50], [950, 450]] } });

const strip = (minX: number, maxX: number, lap: number) => ({ minX: Math.max(0, minX - lap), minY: 0, maxX: Math.min(1000, maxX + lap), maxY: 500 });
const setUpAt = (place: number, from: number, to: number, shift: readonly [number, number]) => ({ name: `set-up ${place}`, shift, core: strip(from, to, 0), window: strip(from, to, 10) });

/** The sheet in three set-ups, each moved by 300 mm. */
export const SET_UPS: PictureSetUps = {
  list: [setUpAt(1, 0, 300, [0, 0]), setUpAt(2, 300, 700, [300, 0]), setUpAt(3, 700, 1000, [600, -20])],
  reach: { minX: -10, minY: 0, maxX: 410, maxY: 520 }, bed: { minX: -50, minY: -50, maxX: 450, maxY: 560 },
};

export const PINS_PICTURE = picture('pins', [
  { kind: 'pins', name: 'pins', items: [{ d: circleAt(50, 40, 3), fixed: true, label: 'pin 1' }] },
  { kind: 'passes', name: 'passes', items: [{ d: 'M10 10L20 20', setUps: [0] }, { d: 'M400 10L420 20', setUps: [1] }, { d: 'M800 10L820 20', setUps: [2] }] },
], {
  inputs: [SHEET_LAYER, STROKES], setUps: SET_UPS,
  spots: { registration: [[50, 40]], 'holding.down': [[100, 450, [0]], [500, 450, [1, 2]], [20, 480]], 'holding.x': [[700, 250]] },
});

/** The store as after opening the sample graph, with a picture shown in a window of 1024 by 524 pixels: 1 px per mm, the place (500, 250) in the middle. */
export function showSample(shown: NodePicture): void {
  editor.setState({ ...initialState, shapes: new Map(SHAPES.map((shape) => [shape.name, shape])) }, true);
  openDocument(DOCUMENT, { name: 'stall.json', saved: DOCUMENT });
  editor.setState({ picture: shown });
  sheet.setState({ ...initialSheet, size: { width: 1024, height: 524 }, view: { x: 500, y: 250, scale: 1 } }, true);
}
