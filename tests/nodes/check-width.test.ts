import { expect, it } from 'vitest';
import checkWidth from '../../nodes/check-width.ts';
import setWidth from '../../nodes/set-width.ts';
import { offsetRegion } from '../../src/geometry/index.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';
import { circle, line } from '../support/shapes.ts';

const { channel } = outputsOf(setWidth, { strokes: [{ path: line([0, 0], [80, 0]) }, { path: circle(40, 0, 30) }, { path: line([0, -40], [80, 40]) }] }, { width: 10 });
const statuses = (changed: typeof channel) => outputsOf(checkWidth, { channel: changed }).checks.map(({ status }) => status);

it('passes a groove of one width, crossings and all, and states least and largest', () => {
  const [least, largest] = outputsOf(checkWidth, { channel }).checks;
  expect(least).toMatchObject({ check: 'groove-width-least', status: 'pass', limit: 9.95 });
  expect(largest).toMatchObject({ check: 'groove-width-largest', status: 'pass', limit: 10.05 });
  expect(least!.value).toBeGreaterThan(9.98);
  expect(largest!.value).toBeLessThan(10.02);
});

it('fails a region that is too narrow, or too wide, for the width it claims', () => {
  const grownBy = (distance: number) => ({ ...channel, region: offsetRegion(channel.region, distance, { join: 'round', miterLimit: 2, tolerance: 0.005 }) });
  expect(statuses(grownBy(-0.1))).toEqual(['fail', 'pass']);
  expect(statuses(grownBy(0.1))).toEqual(['pass', 'fail']);
});

it('fails a groove that misses a piece of its centre line', () => {
  const missing = { ...channel, centreLines: [...channel.centreLines, line([200, 0], [220, 0])] };
  expect(outputsOf(checkWidth, { channel: missing }).checks[0]).toMatchObject({ status: 'fail', value: 0, at: [200, 0] });
});

it('refuses to measure nothing', () => {
  expect(problemsOf(checkWidth, { channel: { ...channel, centreLines: [], region: { loops: [] } } })[0]).toMatchObject({ place: 'channel' });
});

it('measures a dot at its boundary', () => {
  const dot = outputsOf(setWidth, { strokes: [{ path: { start: { x: 5, y: 5 }, segments: [], closed: false } }] }, { width: 10 }).channel;
  expect(outputsOf(checkWidth, { channel: dot }).checks.map(({ status }) => status)).toEqual(['pass', 'pass']);
});

it('passes corners, sharp ones too, whose joins are round', () => {
  const corners = outputsOf(setWidth, { strokes: [{ path: line([60, 70], [140, 70], [140, 30], [100, 70], [60, 30], [140, 30], [140, 70]) }] }, { width: 10 }).channel;
  const [least, largest] = outputsOf(checkWidth, { channel: corners }).checks;
  expect(least!.value).toBeGreaterThan(9.98);
  expect(largest!.value).toBeLessThan(10.02);
});

it('is not fooled by a bend far tighter than the groove', () => {
  const path = { start: { x: 0, y: 0 }, segments: [{ kind: 'cubic' as const, control1: { x: 60, y: 8 }, control2: { x: -5, y: 8.1 }, end: { x: 40, y: -30 } }], closed: false };
  const bent = outputsOf(setWidth, { strokes: [{ path }] }, { width: 10 }).channel;
  const [least, largest] = outputsOf(checkWidth, { channel: bent }).checks;
  expect(least!.value).toBeGreaterThan(9.98);
  expect(largest!.value).toBeLessThan(10.02);
});
