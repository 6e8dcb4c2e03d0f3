import { expect, it } from 'vitest';
import orderPasses from '../../nodes/order-passes.ts';
import type { Pass } from '../../src/machining/index.ts';
import { outputsOf } from '../support/run-node.ts';
import { cutter } from '../support/shapes.ts';

const pass = (kind: Pass['kind'], name: string, x: number): Pass => ({
  kind, name, cutter, start: { x, y: 0, z: 2 }, moves: [{ kind: 'line', to: { x, y: 0, z: -3 }, feed: 300 }, { kind: 'line', to: { x: x + 5, y: 0, z: -3 }, feed: 900 }],
});

it('cuts grooves, then holes, the outline last, whatever the way costs', () => {
  const passes = [[pass('outline', 'outline 1', 0)], [pass('hole', 'hole 1', 900), pass('groove', 'groove 1', 500)], [pass('hole', 'hole 2', 1)]];
  expect(outputsOf(orderPasses, { passes }).passes.map(({ kind }) => kind)).toEqual(['groove', 'hole', 'hole', 'outline']);
});

it('goes to near passes first', () => {
  const passes = [[900, 100, 500, 300, 700].map((x, i) => pass('hole', `hole ${i + 1}`, x))];
  expect(outputsOf(orderPasses, { passes }).passes.map(({ start }) => start.x)).toEqual([100, 300, 500, 700, 900]);
});
