import '../src/values/types.ts';
import type { Region } from '../src/geometry/index.ts';
import { boardPieces, contourBoard, drawnBoard, rectangleBoard } from '../src/machining/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_CHANNEL } from '../src/values/examples.ts';

export default defineNode({
  name: 'board-outline',
  title: 'Board outline',
  doc: 'Draws the board around the groove: a contour that follows the lettering at a margin, its bays smoothed, a rectangle, or an outline that was drawn.',
  inputs: {
    region: { type: 'region', doc: 'What the board must carry, usually the groove.' },
    drawn: { type: 'outlines', optional: true, doc: 'For a drawn board: one closed outline, and in it what is to be cut out. It stays where it is; “Place on sheet” moves it with the lettering.' },
  },
  outputs: { board: { type: 'region', doc: 'The board, without holes for cables and fixings.' } },
  params: {
    shape: { kind: 'choice', options: ['contour', 'rectangle', 'drawn'], default: 'contour', label: 'Shape', doc: 'Whether the outline follows the lettering, is a rectangle, or is the drawn one; a drawn one is held against the margin by “Check board”.' },
    margin: { kind: 'number', unit: 'mm', default: 40, min: 1, max: 1000, step: 1, label: 'Margin', doc: 'Distance from the groove to the edge of the board.' },
    bayRadius: { kind: 'number', unit: 'mm', default: 60, min: 0, max: 2000, step: 5, label: 'Bay radius', doc: 'Least radius of the contour\'s inward curves; narrower bays are filled.' },
    cornerRadius: { kind: 'number', unit: 'mm', default: 20, min: 0, max: 1000, step: 1, label: 'Corner radius', doc: 'Radius of the rectangle\'s corners.' },
    tolerance: { kind: 'number', unit: 'mm', default: 0.002, min: 0.001, max: 0.5, step: 0.001, label: 'Tolerance', doc: 'Greatest chord deviation of the outline; half the fit tolerance of the passes or less lets them find its arcs.' },
  },
  examples: [{ title: 'a contour around one groove', inputs: { region: EXAMPLE_CHANNEL.region, drawn: undefined }, params: { margin: 30 } }],
  compute({ region, drawn = [] }, { shape, margin, bayRadius, cornerRadius, tolerance }) {
    const shapes: Record<typeof shape, () => Region> = {
      contour: () => contourBoard(region, { margin, bayRadius, tolerance }),
      rectangle: () => rectangleBoard(region, { margin, cornerRadius, tolerance }),
      drawn: () => drawnBoard(drawn.flatMap(({ paths }) => paths), tolerance),
    };
    const board = shapes[shape]();
    const pieces = boardPieces(board);
    if (pieces === 1) return { ok: true, outputs: { board } };
    return { ok: false, problems: [shape === 'drawn' ? notDrawn(pieces) : notOne(pieces)] };
  },
});

function notOne(pieces: number): Problem {
  return {
    place: 'margin', expected: 'one board', found: pieces === 0 ? 'no groove to draw a board around' : `${pieces} separate boards`,
    advice: pieces === 0 ? 'Wire a groove to this node.' : 'Raise the margin or the bay radius until the parts join, or choose a rectangle.',
  };
}

function notDrawn(pieces: number): Problem {
  return {
    place: 'drawn', expected: 'one closed outline', found: pieces === 0 ? 'none' : `${pieces} that lie beside each other`,
    advice: pieces === 0 ? 'Wire the outlines of a drawing to this node, the board as a filled shape.' : 'Leave one outline in the drawing; shapes inside it become cut-outs.',
  };
}
