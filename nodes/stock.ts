import '../src/values/types.ts';
import { defineNode } from '../src/runtime/index.ts';

export default defineNode({
  name: 'stock',
  title: 'Sheet',
  doc: 'The sheet on the bench, its lower left corner at the drawing\'s origin. Measure its thickness where it will be cut: a cast sheet sold as 10 mm may be 8.6 to 11.4 mm thick (ISO 7823-1).',
  inputs: {},
  outputs: { stock: { type: 'stock', doc: 'The sheet.' } },
  params: {
    width: { kind: 'number', unit: 'mm', default: 1200, min: 1, max: 20000, step: 1, label: 'Sheet width', doc: 'Size of the sheet along X.' },
    height: { kind: 'number', unit: 'mm', default: 600, min: 1, max: 20000, step: 1, label: 'Sheet height', doc: 'Size of the sheet along Y.' },
    thickness: { kind: 'number', unit: 'mm', default: 12, min: 0.5, max: 100, step: 0.1, label: 'Sheet thickness', doc: 'Thickness as measured.' },
    thicknessTolerance: { kind: 'number', unit: 'mm', default: 0.2, min: 0, max: 5, step: 0.05, label: 'Thickness tolerance', doc: 'How much thinner or thicker the sheet may be elsewhere.' },
    density: { kind: 'number', unit: 'kg/m3', default: 1190, min: 100, max: 10000, step: 1, label: 'Density', doc: 'Density of the sheet; cast acrylic has 1180 to 1190.' },
    breakthrough: { kind: 'number', unit: 'mm', default: 0.3, min: 0, max: 10, step: 0.1, label: 'Breakthrough', doc: 'How far cuts through the sheet may enter the spoilboard, below the thickest sheet.' },
  },
  examples: [{ title: 'a 12 mm sheet', inputs: {}, params: { width: 1200, height: 600, thickness: 12 } }],
  compute(_inputs, params) {
    return { ok: true, outputs: { stock: params } };
  },
});
