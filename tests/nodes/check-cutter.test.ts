import { expect, it } from 'vitest';
import checkCutter from '../../nodes/check-cutter.ts';
import { outputsOf } from '../support/run-node.ts';
import { channelOf, cutter, rectangle, stock } from '../support/shapes.ts';

const channel = channelOf(rectangle(0, 0, 100, 10));
const statuses = (change: Partial<typeof cutter>) => outputsOf(checkCutter, { channel, cutter: { ...cutter, ...change }, stock }).checks.map(({ check, status }) => [check, status]);

it('passes a cutter as wide as the groove, not a wider one', () => {
  expect(statuses({ diameter: 10 })[0]).toEqual(['cutter-fits-groove', 'pass']);
  expect(statuses({ diameter: 10.1 })[0]).toEqual(['cutter-fits-groove', 'fail']);
});

it('wants an edge as long as the cut through the thickest sheet, breakthrough included', () => {
  expect(statuses({ cuttingLength: 12.5 })[1]).toEqual(['cutter-length', 'pass']);
  expect(statuses({ cuttingLength: 12.4 })[1]).toEqual(['cutter-length', 'fail']);
});
