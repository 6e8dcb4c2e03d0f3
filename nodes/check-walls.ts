import '../src/values/types.ts';
import { grooveStrands, leastEdgeDistance, sheetMargin, thinWalls } from '../src/machining/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { atLeast, atLeastGraded } from '../src/values/check.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_STOCK } from '../src/values/examples.ts';

export default defineNode({
  name: 'check-walls',
  title: 'Check walls and floor',
  doc: 'Measures what is left standing: walls between grooves, from grooves to the edge of the board, the floor under the groove where the sheet is thinnest, and the board on its sheet. The limits are common practice for cast acrylic.',
  inputs: {
    channel: { type: 'channel', doc: 'The groove.' },
    board: { type: 'region', doc: 'The board.' },
    stock: { type: 'stock', doc: 'The sheet.' },
  },
  outputs: { checks: { type: 'checks', doc: 'Thinnest wall, thinnest edge, floor, and the board\'s margin on the sheet.' } },
  params: {
    refuseWall: { kind: 'number', unit: 'mm', default: 3, min: 0, max: 100, step: 0.5, label: 'Refuse walls under', doc: 'A thinner wall fails the check.' },
    cautionWall: { kind: 'number', unit: 'mm', default: 5, min: 0, max: 100, step: 0.5, label: 'Caution under', doc: 'A thinner wall is worth a caution.' },
    leastFloor: { kind: 'number', unit: 'mm', default: 3, min: 0, max: 100, step: 0.5, label: 'Least floor', doc: 'Least thickness under the groove, at the worst of the thickness tolerance.' },
  },
  examples: [{
    title: 'one groove in a board',
    inputs: { channel: EXAMPLE_CHANNEL, board: EXAMPLE_BOARD, stock: EXAMPLE_STOCK },
  }],
  compute({ channel, board, stock }, { refuseWall, cautionWall, leastFloor }) {
    const limits = { refuse: refuseWall, caution: cautionWall };
    const [wall] = thinWalls(grooveStrands(channel.centreLines, channel.width), channel.width, Math.max(cautionWall, channel.width));
    const edge = leastEdgeDistance(channel.region, board);
    const margin = sheetMargin(board, stock);
    const floor = stock.thickness - stock.thicknessTolerance - channel.depth;
    return {
      ok: true,
      outputs: {
        checks: [
          ...(wall ? [atLeastGraded({ check: 'wall-between-grooves', value: wall.thickness, unit: 'mm', at: wall.at, subject: 'Thinnest wall between grooves', advice: 'Move the strokes apart or make the lettering larger.' }, limits)] : []),
          ...(edge ? [atLeastGraded({ check: 'wall-to-edge', value: edge.distance, unit: 'mm', at: edge.at, subject: 'Thinnest wall from a groove to the edge', advice: 'Widen the board\'s margin.' }, limits)] : []),
          atLeast({ check: 'floor', value: floor, limit: leastFloor, unit: 'mm', subject: 'Floor under the groove at the thinnest sheet', advice: 'Cut a shallower groove or take a thicker sheet.' }),
          ...(margin ? [atLeast({ check: 'board-on-sheet', value: margin.distance, limit: 0, unit: 'mm', at: margin.at, subject: 'Least distance from the board to the edge of the sheet', advice: 'Take a larger sheet, a narrower margin, or move the lettering.' })] : []),
        ],
      },
    };
  },
});
