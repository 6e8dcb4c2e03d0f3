import type { GraphDocument, NodeShape, Shapes } from '../../../src/runtime/index.ts';
import type { NodeReport, PlacedCheck } from '../../../src/editor/worker/protocol.ts';
import type { Looked } from '../../../src/editor/checks/findings.ts';

const shape = (name: string, title: string): NodeShape => ({ name, title, doc: `${title}.`, inputs: {}, outputs: {}, params: {} });
export const SHAPES: Shapes = new Map([shape('set-width', 'Set width'), shape('emit', 'Emit program')].map((each) => [each.name, each]));

export const DOCUMENT: GraphDocument = {
  format: 'groovewright-graph', version: 1, title: 'Market hall', notes: '', wires: [], inputs: [], groups: [],
  nodes: [
    { id: 'groove', type: 'set-width', title: 'Groove', position: [0, 0], params: {} },
    { id: 'emit', type: 'emit', position: [300, 0], params: {} },
    { id: 'last', type: 'gone-type', position: [600, 0], params: {} },
  ],
};

export const check = (parts: Partial<PlacedCheck>): PlacedCheck =>
  ({ node: 'groove', check: 'bend-radius', status: 'pass', value: 31, limit: 30, unit: 'mm', says: 'Tightest bend: 31 mm, at least 30 mm.', ...parts });
export const report = (parts: Partial<NodeReport>): NodeReport =>
  ({ state: 'ready', says: '', thumbnail: { layers: [], lines: [] }, problems: [], cautions: [], missing: [], milliseconds: 1, ...parts });

export const PROBLEM = { place: 'width', expected: 'a width above 0 mm', found: '-3 mm', advice: 'Enter a larger width.' };
export const TIGHT = check({ status: 'caution', value: 27.4, at: [412.345, -0.01], says: 'Tightest bend: 27.4 mm, at least 30 mm. Widen the bend.' });
export const WRONG = check({ node: 'emit', check: 'wrong-cut', status: 'fail', value: 4, limit: 0, unit: 'mm2', at: [1, 2], says: 'Wrong cut: 4 mm2, at most 0 mm2. Use a thinner cutter.' });

export const looked = (parts: Partial<Looked> & { readonly checks?: readonly PlacedCheck[] } = {}): Looked => {
  const { checks = [], ...rest } = parts;
  return {
    document: DOCUMENT, shapes: SHAPES, reports: new Map(), damage: [],
    outcome: { status: 'pass', checks, quantities: { cutLength: { value: 12.5, unit: 'm' }, 'emit.minutes': { value: 38, unit: 'min' } }, files: [], keptBack: [] }, ...rest,
  };
};
