import '../src/values/types.ts';
import { throughDepth } from '../src/machining/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { atLeast } from '../src/values/check.ts';
import { EXAMPLE_CHANNEL, EXAMPLE_CUTTER, EXAMPLE_STOCK } from '../src/values/examples.ts';

export default defineNode({
  name: 'check-cutter',
  title: 'Check cutter',
  doc: 'Compares the cutter with the work: it must fit the groove, and its cutting edge must be longer than the deepest cut, which goes through the sheet.',
  inputs: {
    channel: { type: 'channel', doc: 'The groove.' },
    cutter: { type: 'cutter', doc: 'The cutter.' },
    stock: { type: 'stock', doc: 'The sheet.' },
  },
  outputs: { checks: { type: 'checks', doc: 'Room beside the cutter in the groove, and its length beyond the deepest cut.' } },
  params: {},
  examples: [{
    title: 'a 6 mm cutter in a 10 mm groove',
    inputs: { channel: EXAMPLE_CHANNEL, cutter: EXAMPLE_CUTTER, stock: EXAMPLE_STOCK },
  }],
  compute({ channel, cutter, stock }) {
    return {
      ok: true,
      outputs: {
        checks: [
          atLeast({ check: 'cutter-fits-groove', value: channel.width - cutter.diameter, limit: 0, unit: 'mm', subject: 'Groove width beyond the cutter\'s diameter', advice: 'Take a smaller cutter or a wider groove.' }),
          atLeast({ check: 'cutter-length', value: cutter.cuttingLength, limit: throughDepth(stock), unit: 'mm', subject: 'Length of the cutting edge, for the deepest cut', advice: 'Take a longer cutter or a thinner sheet.' }),
        ],
      },
    };
  },
});
