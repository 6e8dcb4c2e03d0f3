import type { GraphDocument, NodeShape, Params } from '../../../src/runtime/index.ts';

/** One parameter of every kind a form has a field for, and of every way that field may look. */
export const params = {
  width: { kind: 'number', unit: 'mm', default: 10, min: 0.5, max: 100, step: 0.1, label: 'Width', doc: 'Width of the groove.' },
  feed: { kind: 'number', unit: 'mm/min', default: 900, min: 50, max: 100_000, step: 50, label: 'Feed', doc: 'Speed of cutting.' },
  flutes: { kind: 'number', unit: 'count', default: 1, min: 1, max: 8, step: 1, label: 'Flutes', doc: 'Number of cutting edges.' },
  direction: { kind: 'choice', options: ['climb', 'conventional'], default: 'climb', label: 'Direction', doc: 'Direction of cutting.' },
  pattern: { kind: 'choice', options: ['ends of strokes', 'corners', 'along the outline', 'by hand'], default: 'corners', label: 'Pattern', doc: 'Where the holes go.' },
  helical: { kind: 'switch', default: true, label: 'Helical arcs', doc: 'Whether an arc may move Z as well.' },
  name: { kind: 'text', default: 'sign', maxLength: 10, label: 'Name', doc: 'What the work is called.' },
  story: { kind: 'text', default: '', maxLength: 400, label: 'Story', doc: 'Lines for whoever cuts it.' },
  drawing: { kind: 'file', accept: ['.svg'], label: 'Drawing', doc: 'A drawing with filled shapes.' },
  places: { kind: 'points', default: [], label: 'Places', doc: 'Centres of holes.' },
} as const satisfies Params;

export const shape: NodeShape = {
  name: 'every-kind', title: 'Every kind', doc: 'Takes everything.', inputs: {}, outputs: {}, params,
  handles: [{ kind: 'places', param: 'places', doc: 'Drag a hole to where it should be.' }],
};

export function documentWith(values: Readonly<Record<string, unknown>>, type = 'every-kind'): GraphDocument {
  return {
    format: 'groovewright-graph', version: 1, title: 'Test', notes: '', wires: [], groups: [],
    inputs: [{ name: 'grooveWidth', label: 'Groove width', help: '', sets: 'one.width' }],
    nodes: [{ id: 'one', type, position: [0, 0], params: values as GraphDocument['nodes'][number]['params'] }],
  };
}
