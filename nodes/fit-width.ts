import '../src/values/types.ts';
import { arrangementBox, transformArrangement } from '../src/artwork/index.ts';
import { scaling } from '../src/geometry/index.ts';
import { defineNode } from '../src/runtime/index.ts';

export default defineNode({
  name: 'fit-width',
  title: 'Fit to width',
  doc: 'Brings the lettering to its finished width. The box of all centre lines and outlines is scaled evenly, about the drawing\'s origin.',
  inputs: {
    strokes: { type: 'strokes', optional: true, doc: 'Strokes to scale.' },
    outlines: { type: 'outlines', optional: true, doc: 'Outlines to scale by the same factor.' },
  },
  outputs: {
    strokes: { type: 'strokes', doc: 'The strokes at their finished size.' },
    outlines: { type: 'outlines', doc: 'The outlines at their finished size.' },
  },
  params: {
    finishedWidth: {
      kind: 'number', unit: 'mm', default: 0, min: 0, max: 20000, step: 1, label: 'Finished width',
      doc: 'Overall width of the lettering, centre line to centre line. 0 leaves it as drawn.',
    },
  },
  examples: [{
    title: 'a 10 mm line becomes 200 mm long',
    inputs: { strokes: [{ path: { start: { x: 0, y: 0 }, segments: [{ kind: 'line', end: { x: 10, y: 0 } }], closed: false } }], outlines: undefined },
    params: { finishedWidth: 200 },
  }],
  compute({ strokes = [], outlines = [] }, { finishedWidth }) {
    const arrangement = { strokes, outlines };
    const box = arrangementBox(arrangement);
    if (!box) return { ok: false, problems: [{ expected: 'strokes or outlines', found: 'neither', advice: 'Wire some lettering to this node.' }] };
    if (finishedWidth === 0) return { ok: true, outputs: arrangement };
    const width = box.maxX - box.minX;
    if (width > 1e-6) return { ok: true, outputs: transformArrangement(arrangement, scaling(finishedWidth / width, finishedWidth / width)) };
    return {
      ok: false,
      problems: [{ place: 'finishedWidth', expected: 'lettering with some width', found: 'lettering 0 mm wide', advice: 'Set the finished width to 0 to leave the drawing at its own size.' }],
    };
  },
});
