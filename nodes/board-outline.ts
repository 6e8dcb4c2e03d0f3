import '../src/values/types.ts';
import { boardPieces, contourBoard, rectangleBoard } from '../src/machining/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_CHANNEL } from '../src/values/examples.ts';

export default defineNode({
  name: 'board-outline',
  title: 'Board outline',
  doc: 'Draws the board around the groove: a contour that follows the lettering at a margin, its bays smoothed, or a rectangle.',
  inputs: { region: { type: 'region', doc: 'What the board must carry, usually the groove.' } },
  outputs: { board: { type: 'region', doc: 'The board, without holes.' } },
  params: {
    shape: { kind: 'choice', options: ['contour', 'rectangle'], default: 'contour', label: 'Shape', doc: 'Whether the outline follows the lettering or is a rectangle.' },
    margin: { kind: 'number', unit: 'mm', default: 40, min: 1, max: 1000, step: 1, label: 'Margin', doc: 'Distance from the groove to the edge of the board.' },
    bayRadius: { kind: 'number', unit: 'mm', default: 60, min: 0, max: 2000, step: 5, label: 'Bay radius', doc: 'Least radius of the contour\'s inward curves; narrower bays are filled.' },
    cornerRadius: { kind: 'number', unit: 'mm', default: 20, min: 0, max: 1000, step: 1, label: 'Corner radius', doc: 'Radius of the rectangle\'s corners.' },
    tolerance: { kind: 'number', unit: 'mm', default: 0.002, min: 0.001, max: 0.5, step: 0.001, label: 'Tolerance', doc: 'Greatest chord deviation of the outline; half the fit tolerance of the passes or less lets them find its arcs.' },
  },
  examples: [{ title: 'a contour around one groove', inputs: { region: EXAMPLE_CHANNEL.region }, params: { margin: 30 } }],
  compute({ region }, { shape, margin, bayRadius, cornerRadius, tolerance }) {
    const board = shape === 'contour' ? contourBoard(region, { margin, bayRadius, tolerance }) : rectangleBoard(region, { margin, cornerRadius, tolerance });
    const pieces = boardPieces(board);
    if (pieces === 1) return { ok: true, outputs: { board } };
    return {
      ok: false,
      problems: [{
        place: 'margin', expected: 'one board', found: pieces === 0 ? 'no groove to draw a board around' : `${pieces} separate boards`,
        advice: pieces === 0 ? 'Wire a groove to this node.' : 'Raise the margin or the bay radius until the parts join, or choose a rectangle.',
      }],
    };
  },
});
