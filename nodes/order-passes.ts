import '../src/values/types.ts';
import { orderPasses } from '../src/machining/index.ts';
import { defineNode } from '../src/runtime/index.ts';

export default defineNode({
  name: 'order-passes',
  title: 'Order of passes',
  doc: 'Puts passes in the order they run: grooves, then holes, the outline last, so that the sheet stays whole as long as it can. Within each kind the way between passes is made short; layers keep their order.',
  inputs: { passes: { type: 'passes', many: true, doc: 'All passes of a set-up.' } },
  outputs: { passes: { type: 'passes', doc: 'The passes in their running order.' } },
  params: {},
  examples: [{ title: 'nothing to order', inputs: { passes: [] } }],
  compute({ passes }) {
    return { ok: true, outputs: { passes: orderPasses(passes.flat(), { x: 0, y: 0 }) } };
  },
});
