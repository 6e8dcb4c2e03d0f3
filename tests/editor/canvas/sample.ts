import type { GraphDocument, NodeShape, Shapes } from '../../../src/runtime/index.ts';

const doc = 'Does something. Then more.';
const strokes = { type: 'strokes', doc } as never;
const region = { type: 'region', doc } as never;
const shape = (name: string, title: string, inputs: object, outputs: object): [string, NodeShape] =>
  [name, { name, title, doc, inputs, outputs, params: {} } as NodeShape];

/** A drawing gives strokes, smoothing takes and gives them, a groove makes a region of them, a board takes regions. */
export const SHAPES: Shapes = new Map([
  shape('drawing', 'Drawing', {}, { strokes }),
  shape('smooth', 'Smooth', { strokes }, { strokes }),
  shape('groove', 'Groove', { strokes }, { region }),
  shape('board', 'Board', { region, extra: { type: 'region', doc, many: true, optional: true } as never }, { board: region }),
]);

export const DOCUMENT: GraphDocument = {
  format: 'groovewright-graph', version: 1, title: 'Sample', notes: '',
  nodes: [
    { id: 'pen', type: 'drawing', position: [0, 0], params: {} },
    { id: 'cut', type: 'groove', title: 'Cut', position: [400, 0], params: {} },
    { id: 'edge', type: 'board', position: [800, 0], params: {} },
    { id: 'other', type: 'smooth', position: [400, 400], params: {} },
  ],
  wires: [{ from: 'pen.strokes', to: 'cut.strokes' }, { from: 'cut.region', to: 'edge.region' }],
  inputs: [], groups: [],
};
