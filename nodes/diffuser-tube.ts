import '../src/values/types.ts';
import { defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_TUBE } from '../src/values/examples.ts';

export default defineNode({
  name: 'diffuser-tube',
  title: 'Diffuser tube',
  doc: 'The tube of silicone that covers the strip and spreads its light. Make the groove as wide as the tube, with the fit you want. The figures it starts with are common practice.',
  inputs: {},
  outputs: { tube: { type: 'tube', doc: 'The tube.' } },
  params: {
    width: { kind: 'number', unit: 'mm', default: EXAMPLE_TUBE.width, min: 1, max: 200, step: 0.5, label: 'Tube width', doc: 'Outer width.' },
    height: { kind: 'number', unit: 'mm', default: EXAMPLE_TUBE.height, min: 1, max: 200, step: 0.5, label: 'Tube height', doc: 'Outside, from back to front.' },
    leastBend: { kind: 'number', unit: 'mm', default: EXAMPLE_TUBE.leastBend, min: 0, max: 1000, step: 1, label: 'Least bend radius', doc: 'Tightest bend the tube allows, at its centre line.' },
    wall: { kind: 'number', unit: 'mm', default: EXAMPLE_TUBE.wall, min: 0.1, max: 20, step: 0.1, label: 'Wall', doc: 'Thickness of its wall: what is inside must hold the strip.' },
  },
  examples: [{ title: 'a tube 8 mm wide', inputs: {}, params: { width: 8 } }],
  compute(_inputs, params) {
    const { width, height, wall } = params;
    if (2 * wall >= Math.min(width, height))
      return { ok: false, problems: [{ place: 'wall', expected: `under half the tube's ${Math.min(width, height)} mm`, found: `${wall} mm`, advice: 'Leave room inside the tube for the strip.' }] };
    return { ok: true, outputs: { tube: params } };
  },
});
