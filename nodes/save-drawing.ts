import '../src/values/types.ts';
import { writeDrawing } from '../src/artwork/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { signGroups } from '../src/values/draw.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_STOCK } from '../src/values/examples.ts';

export default defineNode({
  name: 'save-drawing',
  title: 'Save drawing',
  doc: 'Draws the sign on its sheet, to scale in millimetres, as an SVG file with the groups artwork, strokes, channel, board, holes and seams.',
  inputs: {
    strokes: { type: 'strokes', optional: true, doc: 'The lettering as strokes, on the sheet.' },
    outlines: { type: 'outlines', optional: true, doc: 'The lettering as outlines, on the sheet.' },
    channel: { type: 'channel', optional: true, doc: 'The groove.' },
    board: { type: 'region', optional: true, doc: 'The board.' },
    holes: { type: 'holes', many: true, doc: 'All holes.' },
    tiling: { type: 'tiling', optional: true, doc: 'The set-ups: their seams are drawn.' },
    stock: { type: 'stock', doc: 'The sheet: the size of the page.' },
  },
  outputs: { files: { type: 'files', doc: 'The drawing.' } },
  params: {
    file: { kind: 'text', default: 'drawing.svg', maxLength: 80, label: 'File name', doc: 'Name of the drawing\'s file.' },
  },
  examples: [{
    title: 'a groove on its board',
    inputs: { strokes: undefined, outlines: undefined, channel: EXAMPLE_CHANNEL, board: EXAMPLE_BOARD, holes: [], tiling: undefined, stock: EXAMPLE_STOCK },
  }],
  compute({ strokes = [], outlines = [], channel, board, holes, tiling, stock }, { file }) {
    const groups = signGroups({ artwork: { strokes, outlines }, channel, board, holes: holes.flat(), tiling });
    return { ok: true, outputs: { files: [{ path: file, text: writeDrawing({ size: stock, groups }) }] } };
  },
});
