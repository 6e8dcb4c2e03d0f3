import { expect, it } from 'vitest';
import checkBendRadius from '../../nodes/check-bend-radius.ts';
import { outputsOf } from '../support/run-node.ts';
import { channelOf, circle, line } from '../support/shapes.ts';

const checksOf = (...paths: Parameters<typeof circle>[] | ReturnType<typeof line>[]) =>
  outputsOf(checkBendRadius, { channel: channelOf({ loops: [] }, ...(paths as ReturnType<typeof line>[])) }, { leastBend: 15 }).checks;

it('states the tightest of all bends', () => {
  expect(checksOf(circle(0, 0, 40), circle(200, 0, 22)).map(({ value, status }) => [Math.round(value * 1e6) / 1e6, status])).toEqual([[22, 'pass'], [22, 'pass']]);
});

it('cautions where the tube cannot follow, and again where the groove overlaps itself', () => {
  expect(checksOf(circle(0, 0, 12)).map(({ status }) => status)).toEqual(['caution', 'pass']);
  expect(checksOf(circle(0, 0, 4)).map(({ status }) => status)).toEqual(['caution', 'caution']);
});

it('counts a corner as radius 0 and says where it is', () => {
  expect(checksOf(line([0, 0], [50, 0], [50, 50]))[0]).toMatchObject({ value: 0, status: 'caution', at: [50, 0] });
});

it('keeps a number, a very large one, for lettering without bends', () => {
  const [tube] = checksOf(line([0, 0], [50, 0]));
  expect(tube).toMatchObject({ status: 'pass', value: 1e6, says: 'Tightest bend: none, all centre lines are straight.' });
  expect(tube).not.toHaveProperty('at');
});

// Ellipse with half-axes a 50 and b 20: least radius of curvature b^2/a = 8 (do Carmo, Differential Geometry of Curves and Surfaces).
it('finds the least radius of an ellipse drawn with cubics', () => {
  const k = (4 / 3) * (Math.SQRT2 - 1);
  const quarter = (sx: number, sy: number, first: 'x' | 'y') => first === 'x'
    ? { kind: 'cubic' as const, control1: { x: sx * 50, y: sy * 20 * k }, control2: { x: sx * 50 * k, y: sy * 20 }, end: { x: 0, y: sy * 20 } }
    : { kind: 'cubic' as const, control1: { x: sx * 50 * k, y: sy * 20 }, control2: { x: sx * 50, y: sy * 20 * k }, end: { x: sx * 50, y: 0 } };
  const ellipse = { start: { x: 50, y: 0 }, segments: [quarter(1, 1, 'x'), quarter(-1, 1, 'y'), quarter(-1, -1, 'x'), quarter(1, -1, 'y')], closed: true };
  expect(checksOf(ellipse)[0]!.value).toBeCloseTo(8, 0);
});
