import { expect, it } from 'vitest';
import checkStrokes from '../../nodes/check-strokes.ts';
import setWidth from '../../nodes/set-width.ts';
import type { Path } from '../../src/geometry/index.ts';
import { outputsOf } from '../support/run-node.ts';
import { circle, line } from '../support/shapes.ts';

function checksOf(...paths: Path[]) {
  const { channel } = outputsOf(setWidth, { strokes: paths.map((path) => ({ path })) }, { width: 10 });
  return Object.fromEntries(outputsOf(checkStrokes, { channel }).checks.map((check) => [check.check, check]));
}

it('passes strokes that cross, meet or keep apart', () => {
  const checks = checksOf(line([0, 0], [100, 0]), line([50, -50], [50, 50]), line([0, 40], [40, 40]), line([100, 0], [150, 30]));
  expect(Object.values(checks).map(({ status }) => status)).toEqual(['pass', 'pass', 'pass']);
});

it('finds an end that stops just short of another groove', () => {
  expect(checksOf(line([0, 0], [100, 0]), line([50, 11.5], [50, 60]))['strokes-nearly-touch']).toMatchObject({ status: 'caution', value: 1, at: [50, expect.closeTo(5.75, 6)] });
});

it('counts a place once, however long grooves run beside each other and from whichever side it is seen', () => {
  const along = [line([0, 0], [300, 0]), line([300, 11.5], [0, 11.5])];
  expect(checksOf(...along)['strokes-nearly-touch']!.value).toBe(1);
  expect(checksOf(...along, line([0, 100], [300, 100]), line([50, 111.5], [50, 160]), line([90, 111.5], [90, 160]))['strokes-nearly-touch']!.value).toBe(3);
  const slanting = (x: number, y: number) => [x * Math.cos(0.3) - y * Math.sin(0.3), x * Math.sin(0.3) + y * Math.cos(0.3)] as const;
  expect(checksOf(line(slanting(0, 0), slanting(300, 0)), line(slanting(0, 11.5), slanting(300, 11.5)))['strokes-nearly-touch']!.value).toBe(1);
});

it('finds a line drawn twice, and leaves alone an arch that leaves its stem', () => {
  const twice = checksOf(line([0, 0], [100, 0]), line([20, 1], [70, 1.5]))['strokes-overlap']!;
  expect(twice.status).toBe('caution');
  expect(twice.value).toBeGreaterThanOrEqual(50);
  expect(twice.value).toBeLessThan(60);
  const arch: Path = { start: { x: 0, y: 60 }, segments: [{ kind: 'cubic', control1: { x: 2, y: 95 }, control2: { x: 20, y: 120 }, end: { x: 45, y: 120 } }], closed: false };
  expect(checksOf(line([0, 0], [0, 120]), arch)['strokes-overlap']!.status).toBe('pass');
});

it('finds an island too small to stand', () => {
  expect(checksOf(circle(0, 0, 6)).crumbs).toMatchObject({ status: 'caution', value: 1, at: [expect.closeTo(0, 1), expect.closeTo(0, 1)] });
  expect(checksOf(circle(0, 0, 12)).crumbs).toMatchObject({ status: 'pass', value: 0 });
});
