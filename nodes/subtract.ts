import '../src/values/types.ts';
import { subtractRegion, unionRegions } from '../src/geometry/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { rectangle } from '../src/values/examples.ts';

const square = (x: number) => rectangle(x, 0, 30, 30);

export default defineNode({
  name: 'subtract',
  title: 'Subtract',
  doc: 'Takes any number of regions away from one.',
  inputs: {
    region: { type: 'region', doc: 'The region to take from.' },
    without: { type: 'region', many: true, doc: 'The regions to take away.' },
  },
  outputs: { region: { type: 'region', doc: 'What is left; empty when everything was taken.' } },
  params: {},
  examples: [{ title: 'a square bitten by another', inputs: { region: square(0), without: [square(20)] } }],
  compute({ region, without }) {
    return { ok: true, outputs: { region: subtractRegion(region, unionRegions(without)) } };
  },
});
