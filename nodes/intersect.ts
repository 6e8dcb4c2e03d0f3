import '../src/values/types.ts';
import { intersectRegions } from '../src/geometry/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { rectangle } from '../src/values/examples.ts';

const square = (x: number) => rectangle(x, 0, 30, 30);

export default defineNode({
  name: 'intersect',
  title: 'Intersect',
  doc: 'Keeps what two regions have in common.',
  inputs: {
    region: { type: 'region', doc: 'One region.' },
    within: { type: 'region', doc: 'The other region.' },
  },
  outputs: { region: { type: 'region', doc: 'What both regions cover; empty when they do not meet.' } },
  params: {},
  examples: [{ title: 'two overlapping squares', inputs: { region: square(0), within: square(20) } }],
  compute({ region, within }) {
    return { ok: true, outputs: { region: intersectRegions(region, within) } };
  },
});
