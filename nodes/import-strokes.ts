import '../src/values/types.ts';
import { defineNode } from '../src/runtime/index.ts';
import { drawingFile } from '../src/values/drawing-file.ts';

const EXAMPLE = '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40"><path d="M10 30C10 5 50 5 50 30" fill="none" stroke="black"/></svg>';

export default defineNode({
  name: 'import-strokes',
  title: 'Import strokes',
  doc: 'Reads the centre lines a pen drew from an SVG drawing. Open paths and paths drawn as lines become strokes, in millimetres, y up from the page\'s lower left corner; filled shapes are left to “Import outlines”.',
  inputs: {},
  outputs: { strokes: { type: 'strokes', doc: 'One stroke per line of the drawing.' } },
  params: {
    artwork: { kind: 'file', accept: ['.svg'], label: 'Drawing', doc: 'An SVG file whose open (or unfilled closed) paths are centre lines.' },
  },
  examples: [{ title: 'one arch', inputs: {}, params: { artwork: { name: 'arch.svg', text: EXAMPLE } } }],
  compute(_inputs, { artwork }) {
    const reading = drawingFile(artwork, 'artwork');
    if (!reading.ok) return reading;
    const { strokes, outlines, cautions } = reading.drawing;
    if (strokes.length > 0) return { ok: true, outputs: { strokes }, cautions };
    return {
      ok: false,
      problems: [{
        place: 'artwork', expected: 'at least one open or stroked path', found: `${outlines.length} filled shapes and no stroke`,
        advice: 'Draw the centre lines as lines without fill, or trace filled lettering first.',
      }],
    };
  },
});
