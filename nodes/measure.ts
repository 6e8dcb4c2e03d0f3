import '../src/values/types.ts';
import { pathLength, regionArea, regionPerimeter } from '../src/geometry/index.ts';
import { boardMass } from '../src/machining/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_STOCK } from '../src/values/examples.ts';

export default defineNode({
  name: 'measure',
  title: 'Measure',
  doc: 'Lengths, areas and weight of the work.',
  inputs: {
    channel: { type: 'channel', doc: 'The groove.' },
    board: { type: 'region', doc: 'The board.' },
    holes: { type: 'holes', many: true, doc: 'All holes through the board.' },
    stock: { type: 'stock', doc: 'The sheet.' },
  },
  outputs: { quantities: { type: 'quantities', doc: 'Stroke length and count, groove area and volume, board area, outline length, weight, share of the sheet used.' } },
  params: {},
  examples: [{
    title: 'a plain board with one groove',
    inputs: { channel: EXAMPLE_CHANNEL, board: EXAMPLE_BOARD, holes: [], stock: EXAMPLE_STOCK },
  }],
  compute({ channel, board, holes, stock }) {
    const groove = regionArea(channel.region);
    const area = regionArea(board);
    const bored = holes.flat();
    return {
      ok: true,
      outputs: {
        quantities: {
          strokes: { value: channel.centreLines.length, unit: 'count' },
          strokeLength: { value: channel.centreLines.reduce((sum, path) => sum + pathLength(path), 0), unit: 'mm' },
          grooveArea: { value: groove, unit: 'mm2' },
          grooveVolume: { value: groove * channel.depth, unit: 'mm3' },
          boardArea: { value: area, unit: 'mm2' },
          outlineLength: { value: regionPerimeter(board), unit: 'mm' },
          holes: { value: bored.length, unit: 'count' },
          boardWeight: { value: boardMass({ board, channel, holes: bored, stock }).kg, unit: 'kg' },
          sheetWeight: { value: stock.width * stock.height * stock.thickness * 1e-9 * stock.density, unit: 'kg' },
          sheetUsed: { value: area / (stock.width * stock.height), unit: 'ratio' },
        },
      },
    };
  },
});
