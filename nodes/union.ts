import '../src/values/types.ts';
import { unionRegions } from '../src/geometry/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { rectangle } from '../src/values/examples.ts';

const square = (x: number) => rectangle(x, 0, 30, 30);

export default defineNode({
  name: 'union',
  title: 'Union',
  doc: 'Joins any number of regions into one that covers them all.',
  inputs: { regions: { type: 'region', many: true, doc: 'The regions to join.' } },
  outputs: { region: { type: 'region', doc: 'All that at least one of the regions covers.' } },
  params: {},
  examples: [{ title: 'two overlapping squares', inputs: { regions: [square(0), square(20)] } }],
  compute({ regions }) {
    return { ok: true, outputs: { region: unionRegions(regions) } };
  },
});
