import '../src/values/types.ts';
import { arrangementBox, transformArrangement } from '../src/artwork/index.ts';
import { type Box, multiply, rotation, translation } from '../src/geometry/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_STOCK } from '../src/values/examples.ts';

export default defineNode({
  name: 'place',
  title: 'Place on sheet',
  doc: 'Turns the lettering and puts it on the sheet. Its box is centred on the sheet, or its lower left corner is put at the sheet\'s lower left corner; then it is shifted.',
  inputs: {
    strokes: { type: 'strokes', optional: true, doc: 'Strokes to place.' },
    outlines: { type: 'outlines', optional: true, doc: 'Outlines to place together with the strokes.' },
    stock: { type: 'stock', doc: 'The sheet to place them on.' },
  },
  outputs: {
    strokes: { type: 'strokes', doc: 'The strokes in sheet coordinates.' },
    outlines: { type: 'outlines', doc: 'The outlines in sheet coordinates.' },
  },
  params: {
    anchor: { kind: 'choice', options: ['sheet centre', 'lower left corner'], default: 'sheet centre', label: 'Put at', doc: 'Where the lettering\'s box goes before it is shifted.' },
    turn: { kind: 'number', unit: 'deg', default: 0, min: -180, max: 180, step: 1, label: 'Turn', doc: 'Angle to turn the lettering by, counter-clockwise.' },
    right: { kind: 'number', unit: 'mm', default: 0, min: -10000, max: 10000, step: 1, label: 'Shift right', doc: 'Distance to shift to the right; negative shifts to the left.' },
    up: { kind: 'number', unit: 'mm', default: 0, min: -10000, max: 10000, step: 1, label: 'Shift up', doc: 'Distance to shift up the sheet; negative shifts down.' },
  },
  handles: [{ kind: 'move', outputs: ['strokes', 'outlines'], x: 'right', y: 'up', doc: 'Drag the lettering to shift it on the sheet.' }],
  examples: [{
    title: 'a line in the middle of a sheet',
    inputs: {
      strokes: [{ path: { start: { x: 0, y: 0 }, segments: [{ kind: 'line', end: { x: 100, y: 0 } }], closed: false } }],
      outlines: undefined,
      stock: EXAMPLE_STOCK,
    },
  }],
  compute({ strokes = [], outlines = [], stock }, { anchor, turn, right, up }) {
    const turned = transformArrangement({ strokes, outlines }, rotation(turn));
    const box = arrangementBox(turned);
    if (!box) return { ok: false, problems: [{ expected: 'strokes or outlines', found: 'neither', advice: 'Wire some lettering to this node.' }] };
    const corner = anchor === 'sheet centre' ? centred(box, stock) : { x: 0, y: 0 };
    const shift = multiply(translation(corner.x + right, corner.y + up), translation(-box.minX, -box.minY));
    return { ok: true, outputs: transformArrangement(turned, shift) };
  },
});

function centred(box: Box, sheet: { readonly width: number; readonly height: number }) {
  return { x: (sheet.width - (box.maxX - box.minX)) / 2, y: (sheet.height - (box.maxY - box.minY)) / 2 };
}
