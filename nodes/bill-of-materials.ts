import '../src/values/types.ts';
import { billOf, billTable, totalOf } from '../src/costing/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_LIGHTING, EXAMPLE_STOCK } from '../src/values/examples.ts';

export default defineNode({
  name: 'bill-of-materials',
  title: 'Bill of materials',
  doc: 'Lists what goes into the sign: sheet with its waste, strip by run, tube, wire, supplies, fixings, minutes of the machine, weight. What is not wired in is left out.',
  inputs: {
    stock: { type: 'stock', doc: 'The sheet.' },
    board: { type: 'region', doc: 'The board.' },
    channel: { type: 'channel', optional: true, doc: 'The groove, which takes weight away.' },
    holes: { type: 'holes', many: true, optional: true, doc: 'All holes: a fixing is counted for each one for mounting.' },
    lighting: { type: 'lighting', optional: true, doc: 'The light, wired to its supplies.' },
    setups: { type: 'set-ups', optional: true, doc: 'The programs, for minutes and cutters.' },
  },
  outputs: {
    materials: { type: 'materials', doc: 'The list, for a price.' },
    files: { type: 'files', doc: 'The list as a table of comma-separated values.' },
    quantities: { type: 'quantities', doc: 'Totals of what is bought, and the minutes.' },
  },
  params: {
    filling: { kind: 'number', unit: 'kg/m', default: 0.1, min: 0, max: 10, step: 0.01, label: 'Tube and strip', doc: 'What lies in the groove, by its length; 100 g/m for a tube of some 10 mm with its strip (common practice, no source).' },
    file: { kind: 'text', default: 'bill-of-materials.csv', maxLength: 80, label: 'File name', doc: 'Name of the file.' },
  },
  examples: [{ title: 'a small lit board', inputs: { stock: EXAMPLE_STOCK, board: EXAMPLE_BOARD, channel: EXAMPLE_CHANNEL, holes: [], lighting: EXAMPLE_LIGHTING, setups: undefined } }],
  compute({ holes, setups, ...sign }, { filling, file }) {
    const materials = billOf({ ...sign, holes: holes.flat(), setups: setups ?? [], filling });
    const total = (part: Parameters<typeof totalOf>[1]) => totalOf(materials, part);
    return {
      ok: true,
      outputs: {
        materials, files: [{ path: file, text: billTable(materials) }],
        quantities: {
          sheetBought: { value: total('sheet'), unit: 'm2' }, machineMinutes: { value: total('machine'), unit: 'min' }, fixingsBought: { value: total('fixing'), unit: 'count' },
          ...(sign.lighting && { stripBought: { value: total('strip'), unit: 'm' }, tubeBought: { value: total('tube'), unit: 'm' }, wirePairs: { value: total('wire'), unit: 'm' } }),
        },
      },
    };
  },
});
