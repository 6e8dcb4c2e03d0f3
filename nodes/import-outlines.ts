import '../src/values/types.ts';
import { defineNode } from '../src/runtime/index.ts';
import { drawingFile } from '../src/values/drawing-file.ts';

const EXAMPLE = '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40"><path d="M5 5H35V35H5Z"/></svg>';

export default defineNode({
  name: 'import-outlines',
  title: 'Import outlines',
  doc: 'Reads the filled shapes of an SVG drawing. Lines without fill are left to “Import strokes”.',
  inputs: {},
  outputs: {
    outlines: { type: 'outlines', doc: 'One outline per filled shape, with its curves and its fill rule.' },
  },
  params: {
    artwork: { kind: 'file', accept: ['.svg'], label: 'Drawing', doc: 'An SVG file with filled shapes.' },
  },
  examples: [{ title: 'one square', inputs: {}, params: { artwork: { name: 'square.svg', text: EXAMPLE } } }],
  compute(_inputs, { artwork }) {
    const reading = drawingFile(artwork, 'artwork');
    if (!reading.ok) return reading;
    const { outlines, strokes, cautions } = reading.drawing;
    if (outlines.length > 0) return { ok: true, outputs: { outlines }, cautions };
    return {
      ok: false,
      problems: [{
        place: 'artwork', expected: 'at least one filled shape', found: `${strokes.length} strokes and no filled shape`,
        advice: 'Fill the shapes in the drawing, or use “Import strokes” for lines.',
      }],
    };
  },
});
