import '../src/values/types.ts';
import { offsetRegion } from '../src/geometry/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_BOARD } from '../src/values/examples.ts';

export default defineNode({
  name: 'offset-region',
  title: 'Offset',
  doc: 'Moves the boundary of a region outward (positive distance) or inward (negative). An inward offset may leave nothing.',
  inputs: { region: { type: 'region', doc: 'The region to offset.' } },
  outputs: { region: { type: 'region', doc: 'The offset region; empty when nothing is left.' } },
  params: {
    distance: { kind: 'number', unit: 'mm', default: 1, min: -1000, max: 1000, step: 0.1, label: 'Distance', doc: 'Signed offset distance, outward positive.' },
    join: { kind: 'choice', options: ['round', 'miter', 'bevel'], default: 'round', label: 'Join', doc: 'Shape of the new boundary at convex vertices.' },
    miterLimit: { kind: 'number', unit: 'ratio', default: 4, min: 1, max: 20, step: 0.5, label: 'Miter limit', doc: 'Greatest length of a miter, in offset distances, before it is bevelled.' },
    tolerance: { kind: 'number', unit: 'mm', default: 0.005, min: 0.001, max: 0.1, step: 0.001, label: 'Tolerance', doc: 'Greatest chord deviation of round joins.' },
  },
  examples: [{ title: 'a square grows by 5 mm', inputs: { region: EXAMPLE_BOARD }, params: { distance: 5 } }],
  compute({ region }, { distance, join, miterLimit, tolerance }) {
    return { ok: true, outputs: { region: offsetRegion(region, distance, { join, miterLimit, tolerance }) } };
  },
});
