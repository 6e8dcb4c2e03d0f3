import { expect, it } from 'vitest';
import checkBoard from '../../nodes/check-board.ts';
import { applyToPoint, type Region, regionFromLoops, rotation, subtractRegion } from '../../src/geometry/index.ts';
import { outputsOf } from '../support/run-node.ts';
import { channelOf, cutter, rectangle } from '../support/shapes.ts';

const channel = channelOf(rectangle(30, 30, 100, 10));
const angled = (degrees: number): Region => {
  // A board with one inner corner at the origin: the angle of the missing wedge is given.
  const along = (angle: number) => applyToPoint(rotation(angle), { x: 400, y: 0 });
  return regionFromLoops([[{ x: 0, y: 0 }, along(degrees / 2), { x: 300, y: 500 }, { x: -600, y: 500 }, { x: -600, y: -500 }, { x: 300, y: -500 }, along(-degrees / 2)]], 'nonzero');
};
const checksOf = (board: Region, params = {}, diameter = 6) => Object.fromEntries(outputsOf(checkBoard, { board, channel, cutter: { ...cutter, diameter } }, params).checks.map((one) => [one.check, one]));

it('holds the groove to its margin, and refuses one that leaves the board', () => {
  expect(checksOf(rectangle(0, 0, 200, 100), { margin: 30 })['board-margin']).toMatchObject({ status: 'pass', value: 30 });
  expect(checksOf(rectangle(0, 0, 200, 100), { margin: 31 })['board-margin']).toMatchObject({ status: 'caution', value: 30, limit: 31 });
  expect(checksOf(rectangle(0, 0, 120, 100))['board-margin']).toMatchObject({ status: 'fail', value: -10 });
});

// Elementary geometry: a disc of radius r in a corner of angle a keeps r (1 / sin(a / 2) - 1) away from its apex.
it.each([[90, 6], [60, 6], [120, 6], [90, 3.175]])('tells what is left in a corner of %d degrees by a cutter of %d mm', (degrees, diameter) => {
  const check = checksOf(angled(degrees), {}, diameter)['board-corners']!;
  expect(check).toMatchObject({ status: 'caution', at: [expect.closeTo(0, 3), expect.closeTo(0, 3)] });
  expect(check.value).toBeCloseTo((diameter / 2) * (1 / Math.sin((degrees * Math.PI) / 360) - 1), 1);
  expect(check.says).toContain('rounded: 1');
});

it('counts the corners of a cut-out, and none of a board without inner corners', () => {
  const frame = subtractRegion(rectangle(0, 0, 200, 100), rectangle(150, 40, 30, 30));
  expect(checksOf(frame)['board-corners']!.says).toContain('rounded: 4');
  expect(checksOf(rectangle(0, 0, 200, 100))['board-corners']).toMatchObject({ status: 'pass', value: 0 });
});

it('passes inner corners that are round enough', () => {
  const round = (radius: number) => subtractRegion(rectangle(0, 0, 200, 100), { loops: [Array.from({ length: 400 }, (_, i) => ({ x: 165 + radius * Math.cos((i * Math.PI) / 200), y: 55 + radius * Math.sin((i * Math.PI) / 200) }))] });
  expect(checksOf(round(3.2))['board-corners']!.status).toBe('pass');
  expect(checksOf(round(2.5))['board-corners']!.status).toBe('caution');
});
